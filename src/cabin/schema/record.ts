import { describeValue } from './describe-value.ts';
import { isPlainObject, ownKeys } from './json-value.ts';
import type { Schema } from './schema.ts';
import { name } from './text.ts';

/** An object whose keys are names of the user's own, all members alike. */
export function record<V>(expected: string, member: Schema<V>, max = 1000): Schema<Readonly<Record<string, V>>> {
  const keySchema = name('a name as key');
  return {
    expected,
    read(value, faults) {
      if (!isPlainObject(value)) {
        faults.add('wrong-type', { expected, found: describeValue(value) });
        return undefined;
      }
      const keys = ownKeys(value, faults);
      if (keys.length > max) {
        faults.add('too-many', { expected: `at most ${max} members`, found: String(keys.length) });
        return undefined;
      }
      const result: Record<string, V> = {};
      const at = faults.path.length;
      for (const key of keys) {
        faults.path[at] = key;
        if (keySchema.read(key, faults) === undefined) continue;
        const read = member.read(value[key], faults);
        if (read !== undefined) result[key] = read;
      }
      faults.path.length = at;
      return result;
    },
    arrange: (value) => (isPlainObject(value) ? Object.fromEntries(Object.entries(value).map(([key, entry]) => [key, member.arrange(entry)])) : value),
  };
}
