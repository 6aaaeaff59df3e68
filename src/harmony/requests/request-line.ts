import { instrumentCorrelation } from '../../readings/instrument-correlation.ts';
import type { JudgeContext } from '../judge-context.ts';
import type { JudgedJoint } from '../judge-joint.ts';
import type { MeasurementRequest } from '../judgement.ts';
import type { PartBasis } from '../part-basis.ts';

/** Instrument of a request that any may answer whose deviation is known. */
export const anyInstrument = 'any with an agreement set';

/** Instruments that a request of a quantity names where none has measured the part yet. */
export const instrumentOfKind = { colour: anyInstrument, gloss: 'glossmeter', texture: 'areal profiler' } as const;

/** Geometry of areal readings, which have none: a word for the column. */
export const arealGeometry = 'areal';

/** Whom a request about a part goes to, and which specimen it names: the one that stands for the quantity, else one that stands for any. */
export function addressed(context: JudgeContext, basis: PartBasis, quantity: MeasurementRequest['quantity']): Pick<MeasurementRequest, 'quantity' | 'supplier' | 'part' | 'source' | 'specimen'> {
  const { source, part, colour, gloss, texture } = basis;
  const stand = { colour, gloss, texture }[quantity] ?? colour ?? gloss ?? texture;
  return {
    quantity, supplier: context.index.suppliers.get(source.supplier)?.name ?? source.supplier, part: part.id, source: source.id, specimen: stand?.specimen.id ?? '',
  };
}

export const instrumentName = (context: JudgeContext, id: string): string => context.index.instruments.get(id)?.name ?? id;

/** Spots that the book wants of a part where the check does not say how many decide. */
export const wantedSpots = (basis: PartBasis): number => basis.materialClass?.wanted.spots ?? 5;

/** Correlation of the deviations on both sides if one instrument read them in one session: it is whole between like surfaces of close colours only. */
export function correlationTogether({ input }: JudgedJoint, likeSurfaces: boolean, difference?: number): number {
  const instrument = { id: 'one', name: 'one', kind: 'spectrophotometer', serial: 'one', calibratedOn: '2000-01-01' } as const;
  const side = { instrument, geometry: '45a:0', apertureMm: 10, from: '2000-01-02', to: '2000-01-02' } as const;
  return instrumentCorrelation(side, side, { likeSurfaces, ...(difference === undefined ? {} : { difference }) }, input.book.assumed.correlation).rho;
}
