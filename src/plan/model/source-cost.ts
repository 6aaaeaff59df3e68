import type { Cabin, Source } from '../../cabin/cabin.ts';
import type { Issue } from '../../issue.ts';

/** How money is reckoned. */
export interface CostTerms {
  /** Pieces a year; the cabin's own where absent. */
  readonly volume?: number;
  /** Tools and set-ups of sources in series are paid already, and such sources have no lead time. */
  readonly seriesPaid?: boolean;
  /** Money that plans are reckoned in, and what one unit of another is worth in it, by ISO 4217 codes; they go before the cabin's own. */
  readonly currency?: string;
  readonly rates?: Readonly<Record<string, number>>;
}

/** The money that a cabin's plans are reckoned in: as asked, as the document says, else that of its prices where they are all in one. */
export const planCurrency = (cabin: Cabin, terms: CostTerms = {}): string | undefined => {
  const stated = terms.currency ?? cabin.planning?.currency;
  if (stated !== undefined) return stated;
  const used = currenciesOf(cabin);
  return used.length === 1 ? used[0] : undefined;
};

/** The currencies of all sources that state money; what a source calls money that it does not state needs no rate. */
const currenciesOf = (cabin: Cabin): readonly string[] =>
  [...new Set(cabin.parts.flatMap(({ sources }) => sources.flatMap((source) => (source.currency === undefined || !statesMoney(source) ? [] : [source.currency]))))].sort();

const statesMoney = ({ piecePrice, volumePrices = [], freightPerPiece, toolCost, setupCost }: Source): boolean =>
  volumePrices.length > 0 || [piecePrice, freightPerPiece, toolCost, setupCost].some((money) => money !== undefined);

const rateIn = (rates: Readonly<Record<string, number>> | undefined, currency: string): number | undefined =>
  (rates !== undefined && Object.hasOwn(rates, currency) ? rates[currency] : undefined);

/** What one unit of a currency is worth in the plan's; 1 for the plan's own and where none is stated, undefined where no rate is known. */
export const rateOf = (cabin: Cabin, { currency }: Pick<Source, 'currency'>, terms: CostTerms = {}): number | undefined =>
  (currency === undefined || currency === planCurrency(cabin, terms) ? 1 : rateIn(terms.rates, currency) ?? rateIn(cabin.planning?.rates, currency));

/** Price of a piece at a yearly volume: the step of the volume prices that it reaches, else the plain price; undefined where none is stated. */
export function piecePriceAt(source: Source, volume: number): number | undefined {
  const reached = (source.volumePrices ?? []).filter((step) => step.fromVolume <= volume);
  if (reached.length === 0) return source.piecePrice ?? [...(source.volumePrices ?? [])].sort((a, b) => a.fromVolume - b.fromVolume)[0]?.piecePrice;
  return reached.reduce((best, step) => (step.fromVolume > best.fromVolume ? step : best)).piecePrice;
}

export const isPaid = (source: Source, terms: CostTerms): boolean => terms.seriesPaid === true && source.status === 'series';

/** A piece at the line in the source's own currency: its price at the volume, duty on that, and freight. What is not stated counts as nothing. */
export const landedPiece = (source: Source, volume: number): number => (piecePriceAt(source, volume) ?? 0) * (1 + (source.dutyShare ?? 0)) + (source.freightPerPiece ?? 0);

/** Money of one year with a source: landed pieces, tool and set-up, each times the rate of its currency. What is not stated counts as nothing. */
export function sourceCost(source: Source, volume: number, terms: CostTerms = {}, rate = 1): number {
  const pieces = landedPiece(source, volume) * volume;
  return rate * (isPaid(source, terms) ? pieces : pieces + (source.toolCost ?? 0) + (source.setupCost ?? 0));
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

/** The volume and the one currency that a cabin's prices are reckoned in, with what is wanting. Prices without a rate to that currency cannot be added and are refused. */
export function costBasis(cabin: Cabin, terms: CostTerms): CostBasis {
  const issues: Issue[] = [];
  const volume = terms.volume ?? cabin.volume ?? 1;
  if (terms.volume === undefined && cabin.volume === undefined) {
    issues.push({ code: 'no-volume', severity: 'warning', path: 'volume', expected: 'the yearly volume', found: 'none', hint: 'Costs are of one piece of each part.' });
  }
  const priced = cabin.parts.flatMap((part, p) => part.sources.map((source, s) => ({ source, path: `parts[${p}].sources[${s}]` })));
  const currencies = currenciesOf(cabin);
  const currency = planCurrency(cabin, terms);
  const without = currencies.filter((each) => rateOf(cabin, { currency: each }, terms) === undefined);
  if (currency === undefined && currencies.length > 1) {
    issues.push({ code: 'mixed-currencies', severity: 'error', path: 'parts', found: currencies.join(', '), expected: 'prices in one currency, or the currency to reckon in with a rate for each of the others', hint: 'Say which money to reckon in and the rates that you agree on.' });
  } else if (without.length > 0) {
    issues.push({ code: 'no-rate', severity: 'error', path: 'planning.rates', found: without.join(', '), expected: `what one unit of each is worth in ${currency}`, hint: 'Set the rates that you agree on.' });
  }
  for (const { source, path } of priced) {
    if (piecePriceAt(source, volume) === undefined) {
      issues.push({ code: 'no-price', severity: 'note', path, found: `source ${source.id} without a price`, expected: 'piecePrice or volumePrices', hint: 'Its pieces count as costing nothing.' });
    }
  }
  return { volume, currency: currency ?? '', issues };
}
