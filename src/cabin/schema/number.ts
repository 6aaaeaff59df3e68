import { describeValue } from './describe-value.ts';
import type { Schema } from './schema.ts';
import { plain } from './schema.ts';

export interface NumberRange {
  readonly min?: number;
  readonly max?: number;
  /** The lowest value itself is not allowed. */
  readonly above?: number;
  readonly whole?: boolean;
  readonly unit?: string;
  readonly hint?: string;
}

export function rangeText({ min, max, above, whole, unit }: NumberRange): string {
  const kind = whole === true ? 'a whole number' : 'a number';
  const low = above === undefined ? (min === undefined ? '' : ` from ${min}`) : ` above ${above}`;
  const high = max === undefined ? '' : `${low === '' ? '' : ' and'} up to ${max}`;
  return `${kind}${low}${high}${unit === undefined ? '' : ` ${unit}`}`;
}

/**
 * A finite number in a range, ends included unless `above` is used. Texts that look like numbers are not taken as numbers.
 * Numbers that overflow a double (`1e999` in JSON) are `not-finite`; below the range is `negative` where the range begins at 0.
 */
export function number(range: NumberRange = {}): Schema<number> {
  const expected = rangeText(range);
  return plain(expected, (value, faults) => {
    if (typeof value !== 'number') {
      const looksNumeric = typeof value === 'string' && value.trim() !== '' && value.length < 40 && Number.isFinite(Number(value.replace(',', '.')));
      faults.add('wrong-type', {
        expected,
        found: describeValue(value), ...(looksNumeric ? { hint: 'Write the number without quotation marks, with a point.' } : {}),
      });
      return undefined;
    }
    const hint = range.hint === undefined ? {} : { hint: range.hint };
    if (!Number.isFinite(value)) {
      faults.add('not-finite', { expected, found: describeValue(value), hint: 'Leave out a value that is missing.' });
      return undefined;
    }
    if (range.whole === true && !Number.isInteger(value)) {
      faults.add('not-whole', { expected, found: String(value), ...hint });
      return undefined;
    }
    const { min = -Infinity, max = Infinity, above = -Infinity } = range;
    if (value < min || value <= above || value > max) {
      const negative = value < 0 && (range.min === 0 || range.above === 0);
      faults.add(negative ? 'negative' : 'out-of-range', { expected, found: String(value), ...hint });
      return undefined;
    }
    return value;
  });
}
