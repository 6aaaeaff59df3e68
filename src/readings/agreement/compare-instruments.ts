import type { AgreementEstimate } from './estimate-agreement.ts';
import { estimateAgreement } from './estimate-agreement.ts';
import type { TileMean } from './tile-readings.ts';

/** Several instruments on the same tiles, or why they could not be compared. */
export interface InstrumentComparison {
  /** Instruments compared, in the order of their first reading. */
  readonly instruments: readonly string[];
  /** Tiles that all of them read, in the order of the set. */
  readonly tiles: readonly string[];
  /** Tiles that one of them did not read. */
  readonly tilesLeftOut: readonly string[];
  /** Instruments with fewer than three of the tiles. */
  readonly instrumentsLeftOut: readonly string[];
  /** `means[instrument][tile]`. */
  readonly means: readonly (readonly (readonly number[])[])[];
  /** Undefined with fewer than two instruments, or fewer than three tiles that they share. */
  readonly estimate: AgreementEstimate | undefined;
}

/** Three tiles give a covariance in three axes its full rank; fewer say nothing. */
export const fewestTiles = 3;

/** Compares instruments on the tiles that all of them read; one that read fewer than three tiles does not take the others' tiles away. */
export function compareInstruments(means: readonly TileMean[]): InstrumentComparison {
  const tiles = [...new Set(means.map(({ tile }) => tile))];
  const all = [...new Set(means.map(({ instrument }) => instrument))];
  const values = new Map(means.map(({ tile, instrument, value }) => [JSON.stringify([instrument, tile]), value]));
  const valueOf = (instrument: string, tile: string): readonly number[] | undefined => values.get(JSON.stringify([instrument, tile]));
  const instruments = all.filter((instrument) => tiles.filter((tile) => valueOf(instrument, tile) !== undefined).length >= fewestTiles);
  const common = tiles.filter((tile) => instruments.every((instrument) => valueOf(instrument, tile) !== undefined));
  const table = instruments.map((instrument) => common.map((tile) => valueOf(instrument, tile) ?? []));
  return {
    instruments, tiles: common,
    tilesLeftOut: tiles.filter((tile) => !common.includes(tile)),
    instrumentsLeftOut: all.filter((instrument) => !instruments.includes(instrument)),
    means: table,
    estimate: instruments.length >= 2 && common.length >= fewestTiles ? estimateAgreement(table) : undefined,
  };
}
