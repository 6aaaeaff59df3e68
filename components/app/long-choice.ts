import { html } from 'lit';
import type { TemplateResult } from 'lit';
import type { Argument } from '../../src/actions/argument.ts';
import type { LongChoice } from '../model/argument-options.ts';
import './adjoin-choice.ts';

/** What a field of a form is and does, where it chooses one of very many. */
export interface LongChoiceField {
  readonly long: LongChoice;
  readonly argument: Argument;
  /** Id of what is chosen, empty where nothing is. */
  readonly value: string;
  /** What the empty field says. */
  readonly hint: string;
  readonly locked?: boolean;
  readonly fault?: string | undefined;
  readonly set: (id: string) => void;
}

/** The control of such a field: searched in, and the thousands of names made only once they are wanted. */
export const longChoice = ({ long, argument, value, hint, locked = false, fault, set }: LongChoiceField): TemplateResult => html`<adjoin-choice
  keeps .label=${argument.label} .hint=${hint} .count=${long.count} .choices=${long.choices} .given=${value === '' ? undefined : { id: value, name: long.nameOf(value) }}
  ?clears=${argument.presence !== 'needed'} ?disabled=${locked} ?invalid=${fault !== undefined} .fault=${fault ?? ''} @adjoin-chosen=${(event: CustomEvent<string>) => set(event.detail)}></adjoin-choice>`;
