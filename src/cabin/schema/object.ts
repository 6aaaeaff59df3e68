import { describeValue } from './describe-value.ts';
import type { Faults } from './faults.ts';
import { isPlainObject, jsonValue, ownKeys } from './json-value.ts';
import { nearestName } from './nearest-name.ts';
import type { Schema } from './schema.ts';

interface RequiredField<V> {
  readonly presence: 'required' | 'default';
  readonly schema: Schema<V>;
  readonly fallback?: V;
}
interface OptionalField<V> {
  readonly presence: 'optional';
  readonly schema: Schema<V>;
}

export const required = <V>(schema: Schema<V>): RequiredField<V> => ({ presence: 'required', schema });
export const optional = <V>(schema: Schema<V>): OptionalField<V> => ({ presence: 'optional', schema });
/** A field that a file may leave out and the document always has. */
export const withDefault = <V>(schema: Schema<V>, fallback: V): RequiredField<V> => ({ presence: 'default', schema, fallback });

/** One field for every member of the type, so that a member without a check does not compile. */
export type Fields<T> = {
  readonly [K in keyof T]-?: object extends Pick<T, K> ? OptionalField<Exclude<T[K], undefined>> : RequiredField<T[K]>;
};

/**
 * An object with known fields. `null` stands for a field left out only where it may be left out, with a warning.
 * Members that are not known are kept, with a warning that names the closest known one.
 */
export function object<T extends object>(what: string, fields: Fields<T>): Schema<T> {
  const known = Object.entries<RequiredField<unknown> | OptionalField<unknown>>(fields);
  const names = new Set(known.map(([key]) => key));
  return {
    expected: what,
    read(value, faults) {
      if (!isPlainObject(value)) {
        faults.add('wrong-type', { expected: what, found: describeValue(value) });
        return undefined;
      }
      const result: Record<string, unknown> = {};
      const others = ownKeys(value, faults, Object.keys(value).filter((key) => !names.has(key)));
      const at = faults.path.length;
      for (const [key, field] of known) {
        faults.path[at] = key;
        const own = valueOf(value, key);
        const read = own === undefined ? missing(field, faults) : readField(own, field, faults);
        if (read !== undefined) result[key] = read;
      }
      for (const key of others) {
        faults.path[at] = key;
        const nearest = nearestName(key, [...names].filter((candidate) => valueOf(value, candidate) === undefined));
        faults.add('unknown-field', {
          severity: 'warning', expected: `a field of ${what}`, found: describeValue(key),
          hint: nearest === undefined ? 'It is kept as it is and not used.' : `Did you mean ${JSON.stringify(nearest)}? It is kept as it is and not used.`,
        });
        const kept = unknownMember.read(value[key], faults);
        if (kept !== undefined) result[key] = kept;
      }
      faults.path.length = at;
      return result as T;
    },
    arrange(value) {
      if (!isPlainObject(value)) return value;
      const result: Record<string, unknown> = {};
      for (const [key, field] of known) if (Object.hasOwn(value, key)) result[key] = field.schema.arrange(value[key]);
      for (const key of Object.keys(value)) if (!names.has(key)) result[key] = value[key];
      return result;
    },
  };
}

const valueOf = (value: Readonly<Record<string, unknown>>, key: string): unknown => (Object.hasOwn(value, key) ? value[key] : undefined);

const unknownMember = jsonValue();

function readField(value: unknown, field: RequiredField<unknown> | OptionalField<unknown>, faults: Faults): unknown {
  if (value === null && field.presence !== 'required') {
    faults.add('null-field', { severity: 'warning', expected: field.schema.expected, found: 'null', hint: 'It is read as left out.' });
    return field.presence === 'default' ? field.fallback : undefined;
  }
  return field.schema.read(value, faults);
}

function missing(field: RequiredField<unknown> | OptionalField<unknown>, faults: Faults): unknown {
  if (field.presence === 'default') return field.fallback;
  if (field.presence === 'required') faults.add('missing-field', { expected: field.schema.expected, found: 'nothing' });
  return undefined;
}
