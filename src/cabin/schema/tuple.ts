import { describeValue } from './describe-value.ts';
import type { Schema } from './schema.ts';
import { plain } from './schema.ts';

type Values<T extends readonly unknown[]> = { readonly [K in keyof T]: Schema<T[K]> };

/** A list of a fixed length, each place with its own schema. Undefined where any place is faulty. */
export function tuple<const T extends readonly unknown[]>(expected: string, ...places: Values<T>): Schema<T> {
  return plain(expected, (value, faults) => {
    if (!Array.isArray(value)) {
      faults.add('wrong-type', { expected, found: describeValue(value) });
      return undefined;
    }
    if (value.length !== places.length) {
      faults.add('wrong-length', { expected: `${expected}: ${places.length} values`, found: String(value.length) });
      return undefined;
    }
    const at = faults.path.length;
    const before = faults.errors();
    const result = places.map((place, index) => {
      faults.path[at] = index;
      return place.read(value[index], faults);
    });
    faults.path.length = at;
    return faults.errors() === before ? (result as readonly unknown[] as T) : undefined;
  });
}
