import type { Argument, Arguments } from './argument.ts';
import { setFields } from './edit.ts';

/** A field that an action sets inside nested objects: where it lies, and how it is asked for. */
export interface PathField<A extends Argument = Argument> {
  readonly path: readonly [string, ...string[]];
  readonly asked: A;
}

export type PathFields = Readonly<Record<string, PathField>>;

type ArgumentsOf<F extends PathFields> = { readonly [K in keyof F]: F[K]['asked'] };

export const at = <A extends Argument>(asked: A, ...path: readonly [string, ...string[]]): PathField<A> => ({ path, asked });

/** What an action asks for to set these fields. */
export const argumentsOf = <const F extends PathFields>(fields: F): ArgumentsOf<F> =>
  Object.fromEntries(Object.entries(fields).map(([key, { asked }]) => [key, asked])) as Arguments as ArgumentsOf<F>;

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === 'object' && value !== null && !Array.isArray(value);

function put(item: object, [key, ...rest]: readonly string[], value: unknown): object {
  if (key === undefined) return item;
  const changes = (next: unknown): object => setFields(item as Record<string, unknown>, { [key]: next });
  if (rest.length === 0) return changes(value);
  const inner = (item as Readonly<Record<string, unknown>>)[key];
  if (inner === undefined && value === null) return item;
  const edited = put(isObject(inner) ? inner : {}, rest, value);
  return changes(Object.keys(edited).length === 0 ? null : edited);
}

/** The item with values set at their paths: absent leaves a field as it is, `null` takes it out, and what it leaves empty goes with it. */
export function setAtPaths<T extends object>(item: T, fields: PathFields, values: Readonly<Record<string, unknown>>): T {
  return Object.entries(fields).reduce<object>((edited, [key, { path }]) => (values[key] === undefined ? edited : put(edited, path, values[key])), item) as T;
}

/** What the fields hold now, by their names. */
export function readAtPaths(item: object, fields: PathFields): Readonly<Record<string, unknown>> {
  return Object.fromEntries(Object.entries(fields).map(([key, { path }]) =>
    [key, path.reduce<unknown>((value, step) => (isObject(value) ? value[step] : undefined), item)]));
}
