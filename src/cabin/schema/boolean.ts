import { describeValue } from './describe-value.ts';
import type { Schema } from './schema.ts';
import { plain } from './schema.ts';

export const boolean = (): Schema<boolean> => plain('true or false', (value, faults) => {
  if (typeof value === 'boolean') return value;
  faults.add('wrong-type', { expected: 'true or false', found: describeValue(value) });
  return undefined;
});
