import { describeValue } from './describe-value.ts';
import { nameHint } from './nearest-name.ts';
import type { Schema } from './schema.ts';
import { plain } from './schema.ts';

/** One of a closed list of words or numbers; `code` names the fault where the general `unknown-value` says too little. */
export function oneOf<const T extends string | number>(values: readonly T[], code = 'unknown-value'): Schema<T> {
  const expected = `one of ${values.join(', ')}`;
  return plain(expected, (value, faults) => {
    const found = values.find((candidate) => candidate === value);
    if (found !== undefined) return found;
    const hint = typeof value === 'string' && typeof values[0] === 'string' ? nameHint(value, values.map(String)) : undefined;
    faults.add(typeof value === typeof values[0] ? code : 'wrong-type', {
      expected, found: describeValue(value), ...(hint === undefined || hint.startsWith('Known') ? {} : { hint }),
    });
    return undefined;
  });
}
