import { describeValue } from './describe-value.ts';
import type { Schema } from './schema.ts';

export interface ListSize {
  readonly min?: number;
  readonly max: number;
  /** Words for the items, for example `parts`. */
  readonly items: string;
}

/** A list of like items. Faulty items leave a gap in the result, so that the indices of the others stay. */
export function list<T>(item: Schema<T>, size: ListSize): Schema<readonly T[]> {
  const { min = 0, max, items } = size;
  return {
    expected: `a list of ${items}`,
    read(value, faults) {
      if (!Array.isArray(value)) {
        faults.add('wrong-type', { expected: `a list of ${items}`, found: describeValue(value) });
        return undefined;
      }
      if (value.length > max) {
        faults.add('too-many', { expected: `at most ${max} ${items}`, found: String(value.length) });
        return undefined;
      }
      if (value.length < min) {
        faults.add('too-few', { expected: `at least ${min} ${items}`, found: String(value.length) });
        return undefined;
      }
      const result: T[] = [];
      const at = faults.path.length;
      for (let index = 0; index < value.length; index += 1) {
        faults.path[at] = index;
        const read = item.read(value[index], faults);
        if (read !== undefined) result[index] = read;
      }
      faults.path.length = at;
      result.length = value.length;
      return result;
    },
    arrange: (value) => (Array.isArray(value) ? value.map((entry) => item.arrange(entry)) : value),
  };
}
