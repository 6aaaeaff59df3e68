import type { Cabin, Joint, Part, Source } from '../../../src/cabin/cabin.ts';
import { seededNumbers } from '../../support/seeded-numbers.ts';
import { glossReadings, smallCabin, smoothSpectrum, spectrumReadings } from '../../support/small-cabin.ts';

/** Invented cabins for plans, drawn with a seed: moulded parts near one slate, joined in a ring or as asked. */
export interface PlannedShape {
  readonly parts: number;
  readonly sources?: number;
  /** Pairs of parts by their positions; a chain where absent. */
  readonly joints?: readonly (readonly [number, number])[];
  /** How far the sources scatter, as a share of the reflectance. */
  readonly scatter?: number;
  /** How far their gloss scatters, GU. */
  readonly glossScatter?: number;
  readonly part?: (index: number) => Partial<Part>;
  readonly joint?: (index: number) => Partial<Joint>;
}

export const plannedSuppliers = ['ferrow', 'quill', 'tarn'] as const;

export function plannedCabin(seed: number, shape: PlannedShape): Cabin {
  const random = seededNumbers(seed);
  const offset = (): number => 2 * random() - 1;
  const scatter = shape.scatter ?? 0.08;
  const source = (part: number, index: number): Source => {
    const curve = smoothSpectrum(0.052 * (1 + scatter * offset()), -0.003 + 0.004 * scatter * offset(), 0.003 * offset() * scatter * 4, 470 + 100 * random(), 30);
    return {
      id: `p${part}-s${index}`, supplier: plannedSuppliers[(index + part * Math.floor(2 * random())) % plannedSuppliers.length], material: 'moulded', surface: 'solid', status: index === 2 ? 'candidate' : 'approved',
      piecePrice: 5 + Math.floor(40 * random()) / 4, toolCost: 1000 * Math.floor(20 * random()), setupCost: 100 * Math.floor(9 * random()), currency: 'EUR', leadWeeks: 6 + Math.floor(12 * random()),
      specimens: [{
        id: `p${part}-s${index}-x`, kind: 'plaque', lot: { id: `lot-${part}-${index}` }, producedOn: '2031-02-10',
        readings: [...spectrumReadings(curve, 5), ...glossReadings(2 + (shape.glossScatter ?? 0.1) * offset(), 5)],
      }],
    };
  };
  const parts = Array.from({ length: shape.parts }, (_, part): Part => ({
    id: `p${part}`, name: `Part ${part}`, zone: 'dash', visibility: 0.5 + 0.5 * Math.round(random()),
    sources: Array.from({ length: shape.sources ?? 2 }, (__, index) => source(part, index)),
    ...shape.part?.(part),
  }));
  const pairs = shape.joints ?? Array.from({ length: Math.max(0, shape.parts - 1) }, (_, index) => [index, index + 1] as const);
  return smallCabin({
    id: `planned-${seed}`, name: 'Cabin for plans (invented)', parts, runs: [], masters: [], volume: 1000,
    suppliers: [{ id: 'ferrow', name: 'Ferrow (invented)', setupCost: 3000 }, { id: 'quill', name: 'Quill (invented)', setupCost: 5000 }, { id: 'tarn', name: 'Tarn (invented)' }],
    zones: [{ id: 'dash', name: 'Dash' }],
    joints: pairs.map(([a, b], index): Joint => ({
      id: `j${index}`, parts: [`p${a}`, `p${b}`], kind: 'edge', lengthMm: 200 + 100 * Math.floor(8 * random()), viewMm: 700,
      intent: { colour: 'match', gloss: 'match', texture: 'free' }, ...shape.joint?.(index),
    })),
  });
}
