import type { Source, Specimen } from '../../cabin/cabin.ts';
import { stageOf } from '../../cabin/standing-specimen.ts';
import { partBasis } from '../../harmony/part-bases.ts';
import type { PartBasis } from '../../harmony/part-basis.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import type { IsoDate } from '../../quantities.ts';

/** A lot of a source with all that was read of it. */
export interface Lot {
  readonly id: string;
  /** First day that any of its specimens was made on; undefined where a lot of the source states none. */
  readonly producedOn?: IsoDate;
  /** Ids of its specimens. */
  readonly specimens: readonly string[];
  /**
   * The part as it would be judged on this lot, on the readings of all its specimens with their spots kept apart. What was not read of the lot
   * itself, gloss or texture, stays that of the specimen which stands for the part.
   */
  readonly basis: PartBasis;
}

const lotsOfBasis = new WeakMap<PartBasis, readonly Lot[]>();

/**
 * Lots of the source that a part is judged on, in order of production: specimens of the kind that stands for it, at the stage, whose lot is
 * known. By day where every lot has one, else in the order of the document. None where nothing stands for the part.
 */
export function partLots(context: JudgeContext, basis: PartBasis): readonly Lot[] {
  const known = lotsOfBasis.get(basis) ?? madeLots(context, basis);
  lotsOfBasis.set(basis, known);
  return known;
}

function madeLots(context: JudgeContext, basis: PartBasis): readonly Lot[] {
  const { colour } = basis;
  if (colour === undefined) return [];
  const perLot = new Map<string, Specimen[]>();
  for (const specimen of colour.source.specimens) {
    if (specimen.lot === undefined || specimen.kind !== colour.specimen.kind || stageOf(specimen) !== context.stage) continue;
    perLot.set(specimen.lot.id, [...perLot.get(specimen.lot.id) ?? [], specimen]);
  }
  const dayOf = (specimens: readonly Specimen[]): IsoDate | undefined =>
    specimens.flatMap(({ producedOn }) => (producedOn === undefined ? [] : [producedOn])).sort()[0];
  const dated = [...perLot.values()].every((specimens) => dayOf(specimens) !== undefined);
  const lots = [...perLot].map(([id, specimens]): Lot => ({
    id, specimens: specimens.map((specimen) => specimen.id), basis: basisOn(context, basis, colour.source, asOne(specimens)), ...(dated ? { producedOn: dayOf(specimens) } : {}),
  }));
  return dated ? lots.sort((first, second) => ((first.producedOn ?? '') < (second.producedOn ?? '') ? -1 : first.producedOn === second.producedOn ? 0 : 1)) : lots;
}

const asOne = (specimens: readonly Specimen[]): Specimen => (specimens.length === 1 ? specimens[0] : {
  ...specimens[0],
  readings: specimens.flatMap(({ id, readings }) => readings.map((reading) => ({ ...reading, spot: { ...reading.spot, name: `${id} ${reading.spot.name}` } }))),
});

function basisOn(context: JudgeContext, basis: PartBasis, { standsBy: _, ...source }: Source, whole: Specimen): PartBasis {
  const own = partBasis(context, { ...basis.part, source: source.id, sources: [{ ...source, specimens: [whole] }] });
  const kept = <Q extends 'gloss' | 'texture'>(quantity: Q): PartBasis[Q] =>
    (own[quantity] === undefined || own[quantity].borrowedFrom !== undefined ? basis[quantity] : own[quantity]);
  return { ...basis, colour: own.colour?.borrowedFrom === undefined ? own.colour : undefined, gloss: kept('gloss'), texture: kept('texture') };
}
