import type { Schema } from '../schema/index.ts';
import { describeValue, plain } from '../schema/index.ts';

/** Above this a reflectance factor is taken for a percentage; strongly fluorescing samples stay below it. */
export const highestReflectance = 1.5;
const most = 1000;

export const percentHint = 'The values look like per cent. Divide them by 100, or declare the scale where the file is read in; nothing is guessed.';

/** Reflectance factors, 0 to 1.5. One issue for each kind of fault of a spectrum, at the first value that has it. */
export const reflectances = (): Schema<readonly number[]> => plain('a list of reflectance factors', (value, faults) => {
  const expected = `reflectance factors from 0 to ${highestReflectance}, where 1 is the perfect reflecting diffuser`;
  if (!Array.isArray(value)) {
    faults.add('wrong-type', { expected: 'a list of reflectance factors', found: describeValue(value) });
    return undefined;
  }
  if (value.length < 2 || value.length > most) {
    faults.add(value.length < 2 ? 'too-few' : 'too-many', { expected: `2 to ${most} reflectance factors`, found: String(value.length) });
    return undefined;
  }
  const first = new Map<string, { index: number; count: number }>();
  for (let index = 0; index < value.length; index += 1) {
    const code = reflectanceFault(value[index]);
    if (code === undefined) continue;
    const met = first.get(code);
    if (met === undefined) first.set(code, { index, count: 1 });
    else met.count += 1;
  }
  for (const [code, { index, count }] of first) {
    faults.path.push(index);
    faults.add(code, {
      expected,
      found: count === 1 ? describeValue(value[index]) : `${describeValue(value[index])} and ${count - 1} more in this spectrum`,
      ...(code === 'reflectance-percent' ? { hint: percentHint } : {}),
    });
    faults.path.pop();
  }
  return first.size === 0 ? (value as readonly unknown[] as readonly number[]).slice() : undefined;
});

function reflectanceFault(value: unknown): string | undefined {
  if (typeof value !== 'number') return 'wrong-type';
  if (value >= 0 && value <= highestReflectance) return undefined;
  if (!Number.isFinite(value)) return 'not-finite';
  return value < 0 ? 'negative' : 'reflectance-percent';
}
