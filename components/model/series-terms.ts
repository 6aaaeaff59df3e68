import type { Cabin } from '../../src/cabin/cabin.ts';
import type { SeriesOptions } from '../../src/series/index.ts';
import type { Options } from './source-terms.ts';

/** Confidences that can be asked for. */
export const confidences = [0.9, 0.95, 0.99, 0.9973] as const;

/** A whole number above zero, or none. */
const whole = (text: string | undefined): number | undefined => (text !== undefined && /^\d{1,4}$/.test(text) && Number(text) > 0 ? Number(text) : undefined);

/** Lots that cannot be built, by part: `part:lot` with commas between them, each written as in an address. */
export const lotsOut = (options: Options): ReadonlyMap<string, ReadonlySet<string>> => {
  const out = new Map<string, Set<string>>();
  for (const pair of (options['out'] ?? '').split(',')) {
    const [part, lot] = pair.split(':').map(plain);
    if (part && lot) out.set(part, (out.get(part) ?? new Set()).add(lot));
  }
  return out;
};

function plain(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return '';
  }
}

/** The options with a lot of a part taken out, or put back. */
export function withLot(options: Options, part: string, lot: string, there: boolean): Options {
  const pairs = [...lotsOut(options)].flatMap(([each, lots]) => [...lots].map((one) => [each, one] as const)).filter(([each, one]) => each !== part || one !== lot);
  return { ...options, out: [...pairs, ...(there ? [] : [[part, lot] as const])].map((pair) => pair.map(encodeURIComponent).join(':')).join(',') };
}

/** The terms of a series that an address asks for; what makes no sense, or is not in the cabin, is left out. */
export function seriesTerms(options: Options, cabin: Cabin): SeriesOptions {
  const confidence = confidences.find((one) => String(one) === options['confidence']);
  const [base, ahead] = [whole(options['first']), whole(options['ahead'])];
  const against = options['against'];
  const out = lotsOut(options);
  const available = Object.fromEntries(cabin.parts.filter(({ id }) => out.has(id)).map(({ id, sources }) => [
    id, [...new Set(sources.flatMap(({ specimens }) => specimens.flatMap(({ lot }) => (lot === undefined || out.get(id)?.has(lot.id) === true ? [] : [lot.id]))))],
  ]));
  return {
    ...(confidence === undefined ? {} : { confidence }), ...(base === undefined ? {} : { base }), ...(ahead === undefined ? {} : { aheadDays: ahead }),
    ...(against === 'lots' || against === 'master' ? { reference: against } : {}), ...(out.size === 0 ? {} : { available }),
  };
}
