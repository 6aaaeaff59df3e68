import type { Cabin, Source } from '../../cabin/cabin.ts';
import type { CostTerms } from './source-cost.ts';
import { isPaid, landedPiece, piecePriceAt, rateOf } from './source-cost.ts';

/** What the money of one year with a source is made of. */
export interface CostLines {
  /** Of a piece at the volume, as the source states it in its own currency. */
  readonly priceStated: number | undefined;
  /** What one unit of its currency is worth in the plan's; 1 where it is the same. */
  readonly rate: number;
  /** A piece at the line: price, duty and freight, in the plan's currency. */
  readonly landedPiece: number;
  readonly pieces: number;
  readonly tool: number;
  readonly setup: number;
  readonly total: number;
}

/** The lines that `sourceCost()` sums. */
export function costLines(cabin: Cabin, source: Source, volume: number, terms: CostTerms = {}): CostLines {
  const rate = rateOf(cabin, source, terms) ?? 1;
  const piece = landedPiece(source, volume) * rate;
  const paid = isPaid(source, terms);
  const [tool, setup] = paid ? [0, 0] : [(source.toolCost ?? 0) * rate, (source.setupCost ?? 0) * rate];
  return { priceStated: piecePriceAt(source, volume), rate, landedPiece: piece, pieces: piece * volume, tool, setup, total: piece * volume + tool + setup };
}
