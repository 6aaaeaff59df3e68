import type { IsoDate } from '../quantities.ts';
import type { AgreementStudy } from '../readings/agreement/index.ts';
import { agreementOf, agreementStudy } from '../readings/agreement/index.ts';
import type { Instrument } from '../readings/reading.ts';
import type { Cabin, TileSet } from './cabin.ts';
import { cabinIndex } from './cabin-index.ts';

/** How well the instruments of a cabin agree on one of its tile sets. */
export const tileSetStudy = (cabin: Cabin, set: TileSet): AgreementStudy => agreementStudy(set.tiles, cabinIndex(cabin).conditions);

/** Day of the last reading of a tile set; the cabin's own day where no reading is dated. */
export function tileSetDate(cabin: Cabin, set: TileSet): IsoDate {
  const days = set.tiles.flatMap(({ readings }) => readings.flatMap(({ measuredAt }) => (measuredAt === undefined ? [] : [measuredAt.slice(0, 10)]))).sort();
  return days.at(-1) ?? cabin.asOf;
}

/**
 * The register of instruments with the agreement that a tile set gives them; instruments that the set says nothing about stay as they are, and so do quantities
 * that it did not measure. Stored in the cabin, it enters every verdict. What an instrument compared anew had shared with
 * another goes, on both sides: it belonged to the covariance that is replaced.
 */
export function instrumentsWithAgreement(cabin: Cabin, set: TileSet, date: IsoDate = tileSetDate(cabin, set)): readonly Instrument[] {
  const study = tileSetStudy(cabin, set);
  const fresh = new Map(cabin.instruments.flatMap(({ id }) => {
    const agreement = agreementOf(study, id, date);
    return agreement === undefined ? [] : [[id, agreement] as const];
  }));
  const recoloured = new Set([...fresh].filter(([, { covariance }]) => covariance !== undefined).map(([id]) => id));
  return cabin.instruments.map((instrument): Instrument => {
    const found = fresh.get(instrument.id);
    const kept = instrument.agreement === undefined || found?.covariance !== undefined ? undefined : instrument.agreement.shared;
    const shared = found?.shared ?? (kept && Object.fromEntries(Object.entries(kept).filter(([other]) => !recoloured.has(other))));
    if (found === undefined && (kept === undefined || Object.keys(kept).length === Object.keys(shared ?? {}).length)) return instrument;
    const { shared: _replaced, ...rest } = { date, tiles: 1, ...instrument.agreement, ...found };
    return { ...instrument, agreement: { ...rest, ...(shared === undefined || Object.keys(shared).length === 0 ? {} : { shared }) } };
  });
}
