import { noChange } from 'lit';
import { directive, Directive, PartType } from 'lit/directive.js';
import type { PartInfo, PropertyPart } from 'lit/directive.js';

type Field = HTMLInputElement | HTMLTextAreaElement;

class TypedValue extends Directive {
  constructor(info: PartInfo) {
    super(info);
    if (info.type !== PartType.PROPERTY) throw new Error('typedValue() is for the property value of a field');
  }

  private field: Field | undefined;
  private isTyped = false;
  private given: readonly unknown[] = [];

  override render(_value: string, _of?: unknown): unknown {
    return noChange;
  }

  override update({ element }: PropertyPart, [value, of]: [string, unknown?]): unknown {
    const field = element as Field;
    if (field !== this.field) {
      this.field = field;
      this.isTyped = false;
      field.addEventListener('input', () => { this.isTyped = true; });
      // What hears of the change may draw the field anew at once.
      field.addEventListener('change', () => { this.isTyped = false; }, { capture: true });
    }
    const isAnother = value !== this.given[0] || of !== this.given[1];
    this.given = [value, of];
    const hasFocus = (field.getRootNode() as Document | ShadowRoot).activeElement === field;
    if (this.isTyped && hasFocus && !isAnother) return noChange;
    this.isTyped = false;
    if (field.value !== value) field.value = value;
    return noChange;
  }
}

/**
 * The value of a text field that is taken when it is left: what was not taken gives way to it, but what is just being typed stays whatever else
 * is drawn anew meanwhile, as a verdict that arrives or another field's edit. Where the value itself becomes another one, or that of another
 * thing (`of`), what was typed was meant for what is gone, and goes too.
 */
export const typedValue = directive(TypedValue);
