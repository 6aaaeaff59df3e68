import type { TextPosition } from '../cabin/text-position.ts';
import { textPositions } from '../cabin/text-position.ts';
import type { TableFaults } from './table-faults.ts';
import { collectTableFaults } from './table-faults.ts';
import type { XmlFault } from './xml-scanner.ts';
import { scanXml } from './xml-scanner.ts';

/** Most that is read of one document. */
export const xmlLimits = { depth: 64, elements: 2_000_000, attributes: 100 } as const;

export interface XmlAttribute {
  /** With its prefix, if it has one. */
  readonly name: string;
  readonly value: string;
  /** Where the value begins. */
  readonly offset: number;
}

/** An element that knows where it stood. */
export interface XmlElement {
  /** Without its prefix. */
  readonly name: string;
  /** Empty where none is declared. */
  readonly namespace: string;
  readonly offset: number;
  readonly attributes: readonly XmlAttribute[];
  readonly children: readonly XmlElement[];
  /** All text of the element itself, its children's left out. */
  readonly text: string;
  /** Where the text begins in the file. */
  readonly textOffset: number;
}

interface Building {
  name: string;
  namespace: string;
  offset: number;
  attributes: readonly XmlAttribute[];
  children: XmlElement[];
  text: string;
  textOffset: number;
  readonly scope: ReadonlyMap<string, string>;
}

const noScope: ReadonlyMap<string, string> = new Map([['xml', 'http://www.w3.org/XML/1998/namespace']]);

export interface XmlDocument {
  /** Undefined where the text is refused. */
  readonly root: XmlElement | undefined;
  readonly faults: TableFaults;
  readonly position: (offset: number) => TextPosition;
}

/**
 * Reads a text of XML 1.0 with namespaces into a tree. Refused: what is not well-formed, any document type declaration (and with
 * it every entity declaration, internal or external), entities other than the five of XML, nesting deeper and documents larger
 * than `xmlLimits`. Nothing outside the text is ever fetched.
 */
export function readXml(text: string, file?: string): XmlDocument {
  const position = textPositions(text);
  const faults = collectTableFaults(position, file);
  const stack: Building[] = [];
  const document: { root: XmlElement | undefined } = { root: undefined };
  let elements = 0;
  const refuse = (code: string, offset: number, expected: string, found: string): XmlFault => ({ code, offset, expected, found });
  const fault = scanXml(text, {
    open(name, offset, attributes) {
      elements += 1;
      if (elements > xmlLimits.elements) return refuse('too-many', offset, `at most ${xmlLimits.elements} elements`, 'more');
      if (stack.length >= xmlLimits.depth) return refuse('too-deep', offset, `at most ${xmlLimits.depth} levels`, 'more');
      if (attributes.length > xmlLimits.attributes) return refuse('too-many', offset, `at most ${xmlLimits.attributes} attributes`, String(attributes.length));
      const scope = scopeOf(attributes, stack.at(-1)?.scope ?? noScope);
      const [prefix, local] = splitName(name);
      const namespace = scope.get(prefix);
      if (namespace === undefined && prefix !== '') return refuse('xml-syntax', offset, `a declaration of the prefix ${prefix}`, 'none');
      const repeated = attributes.find((attribute, index) => index > 0 && attributes.findIndex((other) => other.name === attribute.name) < index);
      if (repeated !== undefined) return refuse('xml-syntax', repeated.offset, 'each attribute once', JSON.stringify(repeated.name.slice(0, 60)));
      const element: Building = {
        name: local, namespace: namespace ?? '', offset, attributes, children: [], text: '', textOffset: offset, scope,
      };
      const parent = stack.at(-1);
      if (parent === undefined) document.root = element;
      else parent.children.push(element);
      stack.push(element);
      return undefined;
    },
    close() {
      stack.pop();
    },
    text(value, offset) {
      const element = stack.at(-1);
      if (element === undefined) return;
      if (element.text === '') element.textOffset = offset;
      element.text += value;
    },
  });
  if (fault === undefined) return { root: document.root, faults, position };
  const { code, offset, ...what } = fault;
  faults.add(code, offset, what);
  return { root: undefined, faults, position };
}

function splitName(name: string): [prefix: string, local: string] {
  const colon = name.indexOf(':');
  return colon < 0 ? ['', name] : [name.slice(0, colon), name.slice(colon + 1)];
}

function scopeOf(attributes: readonly { readonly name: string; readonly value: string }[], outer: ReadonlyMap<string, string>): ReadonlyMap<string, string> {
  if (!attributes.some(({ name }) => name.startsWith('xmlns'))) return outer;
  const declared = attributes.filter(({ name }) => name === 'xmlns' || name.startsWith('xmlns:'));
  const scope = new Map(outer);
  for (const { name, value } of declared) scope.set(name === 'xmlns' ? '' : name.slice(6), value);
  return scope;
}

/** The attribute of a name without a prefix. */
export const attributeOf = (element: XmlElement | undefined, name: string): XmlAttribute | undefined => element?.attributes.find((attribute) => attribute.name === name);

/** The first child of a name in the element's own namespace. */
export const childOf = (element: XmlElement | undefined, name: string): XmlElement | undefined =>
  element?.children.find((child) => child.name === name && child.namespace === element.namespace);

/** All children of a name in the element's own namespace. */
export const childrenOf = (element: XmlElement | undefined, name: string): readonly XmlElement[] =>
  element?.children.filter((child) => child.name === name && child.namespace === element.namespace) ?? [];

/** The text of a child, blanks at its ends left out; undefined where there is no child or no text. */
export const childText = (element: XmlElement | undefined, name: string): string | undefined => childOf(element, name)?.text.trim() || undefined;
