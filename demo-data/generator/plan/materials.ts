import type { GrainPlan } from './types.ts';

/** How the readings of a material scatter and what its surface is. The spreads are those that the default rule book assumes. */
export interface MaterialModel {
  /** Standard deviation of one spot in L*, a*, b*. */
  readonly spotSd: readonly [number, number, number];
  /** Standard deviation of one gloss reading in GU; none where a glossmeter has nothing to read. */
  readonly glossSd?: number;
  /** Readings at each spot, turned by these angles; the mean over them takes the direction of the pile out. */
  readonly rotations?: readonly number[];
  /** Half the difference in L* between the two directions of the pile. */
  readonly pileLightness?: number;
  readonly index: number;
  readonly openness: number;
  readonly spots: number;
  /** Yearly spread between lots in L*, a*, b*. */
  readonly lotSd: readonly [number, number, number];
}

const turns = [0, 90, 180, 270] as const;
const hardLots = [0.12, 0.03, 0.05] as const;

export const materialModels: Readonly<Record<string, MaterialModel>> = {
  moulded: { spotSd: [0.15, 0.04, 0.06], glossSd: 0.1, index: 1.49, openness: 1, spots: 5, lotSd: hardLots },
  painted: { spotSd: [0.1, 0.04, 0.05], glossSd: 0.2, index: 1.5, openness: 1, spots: 5, lotSd: hardLots },
  'soft-skin': { spotSd: [0.15, 0.05, 0.07], glossSd: 0.1, index: 1.5, openness: 1, spots: 5, lotSd: hardLots },
  leather: { spotSd: [0.35, 0.1, 0.15], glossSd: 0.15, index: 1.5, openness: 1, spots: 6, lotSd: [0.25, 0.06, 0.1] },
  textile: {
    spotSd: [0.4, 0.12, 0.15],
    rotations: turns,
    pileLightness: 0.25,
    index: 1.53,
    openness: 0.6,
    spots: 5,
    lotSd: [0.25, 0.08, 0.1],
  },
  headliner: {
    spotSd: [0.3, 0.1, 0.12],
    rotations: turns,
    pileLightness: 0.2,
    index: 1.53,
    openness: 0.6,
    spots: 5,
    lotSd: [0.2, 0.06, 0.08],
  },
  carpet: { spotSd: [0.6, 0.15, 0.2], rotations: turns, pileLightness: 0.7, index: 1.53, openness: 0.5, spots: 8, lotSd: [0.3, 0.08, 0.1] },
  thread: { spotSd: [0.5, 0.15, 0.2], index: 1.53, openness: 0.5, spots: 4, lotSd: [0.3, 0.1, 0.15] },
  'gloss-black': { spotSd: [0.1, 0.04, 0.05], glossSd: 0.6, index: 1.5, openness: 1, spots: 5, lotSd: hardLots },
  'decor-film': { spotSd: [0.2, 0.06, 0.08], glossSd: 0.2, index: 1.5, openness: 1, spots: 5, lotSd: hardLots },
  metallised: { spotSd: [0.3, 0.08, 0.1], glossSd: 1.5, index: 1.5, openness: 1, spots: 5, lotSd: hardLots },
};

export function modelOf(material: string): MaterialModel {
  const model = materialModels[material];
  if (!model) throw new RangeError(`no model of the material ${material}`);
  return model;
}

/** The invented grains of the cabin. */
export const grains = {
  fine: { id: 'sable-2', depthUm: 45, saUm: 6.4, salMm: 0.31, str: 0.62 },
  coarse: { id: 'sable-4', depthUm: 70, vdiClass: 39, saUm: 9.2, salMm: 0.44, str: 0.66 },
  deepCoarse: { id: 'sable-4', depthUm: 105, vdiClass: 39, saUm: 13.9, salMm: 0.45, str: 0.64 },
  linen: { id: 'linen-1', depthUm: 35, vdiClass: 33, saUm: 4.6, salMm: 0.22, str: 0.41 },
  hide: { id: 'natural-hide', depthUm: 60, saUm: 7.8, salMm: 0.52, str: 0.71 },
} as const satisfies Record<string, GrainPlan>;
