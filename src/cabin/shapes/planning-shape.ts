import type { PartMend, Planning, Reach } from '../cabin.ts';
import type { Schema } from '../schema/index.ts';
import { boolean, number, object, optional, patternText, record, refine, required } from '../schema/index.ts';

/** A currency by ISO 4217. */
export const currencyText = patternText(/^[A-Z]{3}$/u, 'bad-currency', 'a currency as three capital letters (ISO 4217)');

/** Largest reach on each axis: the range of L* and gloss units, and more than any pigment moves a* or b*. */
const span = number({ min: 0, max: 200 });

export const reachShape: Schema<Reach> = object<Reach>('a reach', { L: required(span), a: required(span), b: required(span), gloss: required(span) });

export const partMendShape: Schema<PartMend> = object<PartMend>('what a mend keeps to', {
  locked: optional(boolean()),
  cost: optional(number({ min: 0, max: 1e12 })),
  reach: optional(reachShape),
});

const rates = refine(record('an object of rates by currency', number({ above: 0, max: 1e9 })), (known, faults) => {
  for (const code of Object.keys(known)) {
    if (/^[A-Z]{3}$/u.test(code)) continue;
    faults.path.push(code);
    faults.add('bad-currency', { expected: 'a currency as three capital letters (ISO 4217)', found: JSON.stringify(code) });
    faults.path.length -= 1;
  }
});

export const planningShape: Schema<Planning> = object<Planning>('what plans go by', {
  reach: optional(record('an object of reaches by material', reachShape)),
  timeLimitS: optional(number({ above: 0, max: 86_400, unit: 's' })),
  currency: optional(currencyText),
  rates: optional(rates),
});
