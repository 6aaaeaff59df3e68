import type { Cabin, Source } from '../../cabin/cabin.ts';
import type { Issue } from '../../issue.ts';

/** How money is reckoned. */
export interface CostTerms {
  /** Pieces a year; the cabin's own where absent. */
  readonly volume?: number;
  /** Tools and set-ups of sources in series are paid already, and such sources have no lead time. */
  readonly seriesPaid?: boolean;
}

/** Price of a piece at a yearly volume: the step of the volume prices that it reaches, else the plain price; undefined where none is stated. */
export function piecePriceAt(source: Source, volume: number): number | undefined {
  const reached = (source.volumePrices ?? []).filter((step) => step.fromVolume <= volume);
  if (reached.length === 0) return source.piecePrice ?? [...(source.volumePrices ?? [])].sort((a, b) => a.fromVolume - b.fromVolume)[0]?.piecePrice;
  return reached.reduce((best, step) => (step.fromVolume > best.fromVolume ? step : best)).piecePrice;
}

const isPaid = (source: Source, terms: CostTerms): boolean => terms.seriesPaid === true && source.status === 'series';

/** Money of one year with a source: pieces at the volume's price, tool and set-up. What is not stated counts as nothing. */
export function sourceCost(source: Source, volume: number, terms: CostTerms = {}): number {
  const pieces = (piecePriceAt(source, volume) ?? 0) * volume;
  return isPaid(source, terms) ? pieces : pieces + (source.toolCost ?? 0) + (source.setupCost ?? 0);
}

/** Weeks until a source delivers; undefined where it does not say. */
export const leadWeeksOf = (source: Source, terms: CostTerms = {}): number | undefined => (isPaid(source, terms) ? 0 : source.leadWeeks);

/** Money in whole minor units, so that sums are exact. */
export const inMinorUnits = (money: number): number => Math.round(money * 100);

export interface CostBasis {
  readonly volume: number;
  /** Currency of all prices; empty where none is named. */
  readonly currency: string;
  readonly issues: readonly Issue[];
}

/** The volume and the one currency that a cabin's prices are reckoned in, with what is wanting. Prices in two currencies cannot be added and are refused. */
export function costBasis(cabin: Cabin, terms: CostTerms): CostBasis {
  const issues: Issue[] = [];
  const volume = terms.volume ?? cabin.volume ?? 1;
  if (terms.volume === undefined && cabin.volume === undefined) {
    issues.push({ code: 'no-volume', severity: 'warning', path: 'volume', expected: 'the yearly volume', found: 'none', hint: 'Costs are of one piece of each part.' });
  }
  const priced = cabin.parts.flatMap((part, p) => part.sources.map((source, s) => ({ source, path: `parts[${p}].sources[${s}]` })));
  const currencies = [...new Set(priced.flatMap(({ source }) => (source.currency === undefined ? [] : [source.currency])))].sort();
  if (currencies.length > 1) {
    issues.push({ code: 'mixed-currencies', severity: 'error', path: 'parts', found: currencies.join(', '), expected: 'prices in one currency', hint: 'Convert the prices at a rate that you agree on.' });
  }
  for (const { source, path } of priced) {
    if (piecePriceAt(source, volume) === undefined) {
      issues.push({ code: 'no-price', severity: 'note', path, found: `source ${source.id} without a price`, expected: 'piecePrice or volumePrices', hint: 'Its pieces count as costing nothing.' });
    }
  }
  return { volume, currency: currencies[0] ?? '', issues };
}
