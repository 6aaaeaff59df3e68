import type { MapPoint } from '../cabin/cabin.ts';
import type { NumberRange, Schema } from '../cabin/schema/index.ts';
import { boolean, date, list, name, number, oneOf, remark, tuple } from '../cabin/schema/index.ts';
import { expression } from '../rules/expression-schema.ts';
import type { Expression } from '../rules/rule-book.ts';
import type { ReferenceKind } from './references.ts';

/** How a form asks for a value: `structure` is JSON of the document's own shape, for example a whole reading; `formula` a number or a formula of the rule book. */
export type ArgumentKind =
  'name' | 'text' | 'number' | 'choice' | 'flag' | 'date' | 'reference' | 'references' | 'names' | 'point' | 'points' | 'numbers' | 'places' | 'structure' | 'formula';

/** One value that an action asks for: the words, the kind of field, and the check. */
export interface Asked<T> {
  readonly label: string;
  readonly kind: ArgumentKind;
  readonly schema: Schema<T>;
  readonly choices?: readonly (string | number)[];
  readonly refersTo?: ReferenceKind;
  readonly range?: NumberRange;
}

/**
 * `needed` must be given; `optional` may be left out; `clearable` may be left out, and `null` takes the field out of the document.
 */
export type Presence = 'needed' | 'optional' | 'clearable';

export interface Argument<T = unknown, P extends Presence = Presence> extends Asked<T> {
  readonly presence: P;
}

export type Arguments = Readonly<Record<string, Argument>>;

type Value<A> = A extends Argument<infer T> ? T : never;
type KeysOf<A extends Arguments, P extends Presence> = { [K in keyof A]: A[K] extends Argument<unknown, P> ? K : never }[keyof A];

/** The values that belong to what is asked. */
export type ValuesOf<A extends Arguments> =
  & { readonly [K in KeysOf<A, 'needed'>]: Value<A[K]> }
  & { readonly [K in KeysOf<A, 'optional'>]?: Value<A[K]> }
  & { readonly [K in KeysOf<A, 'clearable'>]?: Value<A[K]> | null };

export const needed = <T>(asked: Asked<T>): Argument<T, 'needed'> => ({ ...asked, presence: 'needed' });
export const optional = <T>(asked: Asked<T>): Argument<T, 'optional'> => ({ ...asked, presence: 'optional' });
export const clearable = <T>(asked: Asked<T>): Argument<T, 'clearable'> => ({ ...asked, presence: 'clearable' });

export const aName = (label: string): Asked<string> => ({ label, kind: 'name', schema: name() });
export const aText = (label: string): Asked<string> => ({ label, kind: 'text', schema: remark() });
export const aNumber = (label: string, range: NumberRange = {}): Asked<number> => ({ label, kind: 'number', schema: number(range), range });
export const aFlag = (label: string): Asked<boolean> => ({ label, kind: 'flag', schema: boolean() });
export const aDate = (label: string): Asked<string> => ({ label, kind: 'date', schema: date() });

export const aChoice = <const T extends string | number>(label: string, choices: readonly T[]): Asked<T> =>
  ({ label, kind: 'choice', schema: oneOf(choices), choices });

/** The id of something in the cabin; the selection fills it in where it has one of the kind. */
export const aReference = (label: string, refersTo: ReferenceKind): Asked<string> =>
  ({ label, kind: 'reference', schema: name(`the id of a ${refersTo}`), refersTo });

export const references = (label: string, refersTo: ReferenceKind, size: { readonly min: number; readonly max: number }): Asked<readonly string[]> =>
  ({ label, kind: 'references', schema: list(name(`the id of a ${refersTo}`), { ...size, items: `${refersTo}s` }), refersTo });

const coordinate = number({ min: -1e6, max: 1e6, unit: 'mm' });
const mapPoint = tuple<MapPoint>('a point x, y', coordinate, coordinate);

/** Several words of the user's own, such as roles. */
export const names = (label: string, item: string, max: number): Asked<readonly string[]> =>
  ({ label, kind: 'names', schema: list(name(item), { max, items: label.toLowerCase() }) });

export const aPoint = (label: string): Asked<MapPoint> => ({ label, kind: 'point', schema: mapPoint });
export const points = (label: string): Asked<readonly MapPoint[]> =>
  ({ label, kind: 'points', schema: list(mapPoint, { min: 2, max: 5000, items: 'points' }) });
export const numbers = (label: string, range: NumberRange, max: number): Asked<readonly number[]> =>
  ({ label, kind: 'numbers', schema: list(number(range), { min: 1, max, items: 'numbers' }), range });

/** A limit or factor of the rule book: a number, or a formula over its documented variables. */
export const aFormula = (label: string, options: { readonly positive: boolean }): Asked<Expression> => ({ label, kind: 'formula', schema: expression(options) });

/** Place in a list of the document, from 0. */
export const aPlace = (label: string): Asked<number> => aNumber(label, { min: 0, max: 1e6, whole: true });
export const places = (label: string): Asked<readonly number[]> =>
  ({ label, kind: 'places', schema: list(number({ min: 0, max: 1e6, whole: true }), { min: 1, max: 10_000, items: 'places' }) });

/** A value with a shape of its own, read by that shape. */
export const structure = <T>(label: string, schema: Schema<T>): Asked<T> => ({ label, kind: 'structure', schema });
