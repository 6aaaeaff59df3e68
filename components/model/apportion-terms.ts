import type { Cabin } from '../../src/cabin/cabin.ts';
import type { ApportionOptions } from '../../src/plan/index.ts';
import type { Options } from './source-terms.ts';

/** How much tolerance each supplier asks for beside the others, by the supplier's id; 1 where it is not named. */
export const sharesOf = (options: Options): Readonly<Record<string, number>> => Object.fromEntries((options['shares'] ?? '').split(',').flatMap((pair) => {
  const [supplier = '', text = ''] = pair.split('=', 2);
  const share = Number(text);
  return supplier === '' || !(share > 0) || !Number.isFinite(share) ? [] : [[supplier, share] as const];
}));

/** The options with the share of a supplier set; a share of 1, and what is no share, is left out. */
export function withShare(options: Options, supplier: string, share: number): Options {
  const { [supplier]: _, ...others } = sharesOf(options);
  const shares = share > 0 && share !== 1 && Number.isFinite(share) ? { ...others, [supplier]: share } : others;
  return { ...options, shares: Object.entries(shares).map((pair) => pair.join('=')).join(',') };
}

/** A share that is given in per cent, 50 to below 100; undefined where it is none. */
export const shareOf = (text: string | undefined): number | undefined => {
  const value = text === undefined || text.trim() === '' ? NaN : Number(text) / 100;
  return value >= 0.5 && value < 1 ? value : undefined;
};

/** The terms of tolerances that an address asks for; what the cabin does not have is left out. */
export function apportionTerms(options: Options, cabin: Cabin): ApportionOptions {
  const suppliers = new Set(cabin.parts.flatMap((part) => part.sources.map(({ supplier }) => supplier)));
  const shares = Object.fromEntries(Object.entries(sharesOf(options)).filter(([supplier]) => suppliers.has(supplier)));
  const most = Number(options['radius']);
  const [confidence, inTolerance] = options['rule'] === 'statistical' ? [shareOf(options['confidence']), shareOf(options['kept'])] : [undefined, undefined];
  return {
    ...(confidence === undefined ? {} : { confidence }), ...(inTolerance === undefined ? {} : { inTolerance }),
    rule: options['rule'] === 'statistical' ? 'statistical' : 'worst case', about: options['about'] === 'present' ? 'present' : 'master',
    ...(Object.keys(shares).length === 0 ? {} : { shares }), ...(options['radius'] && most > 0 && Number.isFinite(most) ? { mostRadius: most } : {}),
  };
}
