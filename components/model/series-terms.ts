import type { SeriesOptions } from '../../src/series/index.ts';
import type { Options } from './source-terms.ts';

/** Confidences that can be asked for. */
export const confidences = [0.9, 0.95, 0.99, 0.9973] as const;

/** A whole number above zero, or none. */
const whole = (text: string | undefined): number | undefined => (text !== undefined && /^\d{1,4}$/.test(text) && Number(text) > 0 ? Number(text) : undefined);

/** The terms of a series that an address asks for; what makes no sense is left out. */
export function seriesTerms(options: Options): SeriesOptions {
  const confidence = confidences.find((one) => String(one) === options['confidence']);
  const [base, ahead] = [whole(options['first']), whole(options['ahead'])];
  const against = options['against'];
  return {
    ...(confidence === undefined ? {} : { confidence }), ...(base === undefined ? {} : { base }), ...(ahead === undefined ? {} : { aheadDays: ahead }),
    ...(against === 'lots' || against === 'master' ? { reference: against } : {}),
  };
}
