import type { Cabin } from '../../src/cabin/cabin.ts';
import type { ChooseOptions, Share } from '../../src/plan/index.ts';

/** Choices of the sources' place as its address holds them. */
export type Options = Readonly<Record<string, string>>;

/** Points of the front that are asked for, and sets that are told beside it. */
const frontPoints = 20;
const bestSets = 5;

const numberOf = (text: string | undefined, least: number): number | undefined => {
  const value = text === undefined || text.trim() === '' ? NaN : Number(text);
  return Number.isFinite(value) && value >= least ? value : undefined;
};

const listOf = (text: string | undefined): readonly string[] => (text === undefined || text === '' ? [] : text.split(','));

/** Parts that are kept on a source, by the part's id. */
export const locksOf = (options: Options): Readonly<Record<string, string>> => Object.fromEntries(listOf(options['lock']).flatMap((pair) => {
  const [part = '', source = ''] = pair.split('=', 2);
  return part === '' || source === '' ? [] : [[part, source] as const];
}));

export const withoutOf = (options: Options): readonly string[] => listOf(options['without']);

/** Parts that must go together, as `first+second:supplier` or `:source`, with commas between the pairs. */
export const sharesOf = (options: Options): readonly Share[] => listOf(options['share']).flatMap((text): Share[] => {
  const [pair = '', what] = text.split(':', 2);
  const parts = pair.split('+').filter((part) => part !== '');
  return parts.length < 2 || (what !== 'supplier' && what !== 'source') ? [] : [{ parts, what }];
});

const shareText = ({ parts, what }: Share): string => `${parts.join('+')}:${what}`;

/** The options with parts tied together, or let go where they are. */
export function toggledShare(options: Options, share: Share): Options {
  const tied = sharesOf(options).map(shareText);
  const text = shareText(share);
  return { ...options, share: (tied.includes(text) ? tied.filter((one) => one !== text) : [...tied, text]).join(',') };
}

/** The terms of a choice that an address asks for. What the cabin does not have is left out, and so is a number that means nothing. */
export function sourceTerms(options: Options, cabin: Cabin): ChooseOptions {
  const suppliers = new Set(cabin.parts.flatMap((part) => part.sources.map(({ supplier }) => supplier)));
  const sources = new Map(cabin.parts.map((part) => [part.id, new Set(part.sources.map(({ id }) => id))]));
  const locked = Object.entries(locksOf(options)).filter(([part, source]) => sources.get(part)?.has(source) === true);
  const shares = sharesOf(options).filter(({ parts }) => parts.every((part) => sources.has(part)));
  const without = withoutOf(options).filter((supplier) => suppliers.has(supplier));
  const [budget, maxLeadWeeks, most, volume] = [numberOf(options['budget'], 0), numberOf(options['lead'], 0), numberOf(options['most'], 1), numberOf(options['volume'], 0)];
  const timeLimitS = numberOf(options['time'], 0.1) ?? cabin.planning?.timeLimitS;
  const { currency, rates } = cabin.planning ?? {};
  return {
    best: bestSets, front: frontPoints,
    ...(budget === undefined ? {} : { budget }),
    ...(maxLeadWeeks === undefined ? {} : { maxLeadWeeks }),
    ...(most === undefined ? {} : { maxSuppliers: Math.floor(most) }),
    ...(volume === undefined ? {} : { volume }),
    ...(timeLimitS === undefined ? {} : { timeLimitS }),
    ...(currency === undefined ? {} : { currency }), ...(rates === undefined ? {} : { rates }),
    ...(locked.length === 0 ? {} : { locked: Object.fromEntries(locked) }),
    ...(shares.length === 0 ? {} : { shares }),
    ...(without.length === 0 ? {} : { without }),
    ...(options['paid'] === 'yes' ? { seriesPaid: true } : {}),
    ...(options['frozen'] === 'free' ? { releaseFrozen: true } : {}),
  };
}

/** The options with a part kept on a source, or let go where it is kept on it already. */
export function toggledLock(options: Options, part: string, source: string): Options {
  const { [part]: kept, ...others } = locksOf(options);
  const locks = kept === source ? others : { ...others, [part]: source };
  return { ...options, lock: Object.entries(locks).map((pair) => pair.join('=')).join(',') };
}

/** The options with a supplier left out, or back in. */
export function toggledSupplier(options: Options, supplier: string): Options {
  const left = withoutOf(options);
  return { ...options, without: (left.includes(supplier) ? left.filter((one) => one !== supplier) : [...left, supplier]).join(',') };
}
