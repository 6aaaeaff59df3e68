import { geometryClass, isDirectional } from './geometry-class.ts';
import type { Geometry, GeometryClass } from './reading.ts';

/** Geometries that read a surface alike: the class, with the directional 45 degree ones told apart from those lit all round. */
export const geometryKinds = ['45:0 all round', '45:0 directional', 'de:8', 'di:8', 'multi-angle', 'unknown'] as const;
export type GeometryKind = (typeof geometryKinds)[number];

export type GeometryComparison = 'may be compared' | 'with a caution' | 'not compared';

/** What holds for readings of two kinds of geometry set side by side. */
export interface GeometryRule {
  readonly kinds: readonly [GeometryKind, GeometryKind];
  readonly comparison: GeometryComparison;
  readonly reason: string;
  /** What to mind although they may be compared. */
  readonly mind?: string;
  readonly basis: string;
}

const cie15 = 'CIE 015:2018 (geometries of reflectance); Helmholtz reciprocity';
const surfaceTerm = 'CIE 015:2018 (geometries of reflectance); Fresnel equations: a first surface of n = 1.5 reflects 4 %';
const practice = 'common practice, no source';

const between = (first: GeometryKind, second: GeometryKind, reason: string, basis: string): GeometryRule =>
  ({ kinds: [first, second], comparison: 'not compared', reason, basis });

const unknown = 'without a geometry nobody can say what share of the surface reflection was read';
const sphereAnd45 = 'a sphere lights from all sides, 45:0 from one angle: a grain reads lighter in one of the two';
const includedAnd45 = 'di:8 reads the whole reflection of the surface, 45:0 next to none of it: a dark part reads several L* apart';
const oneAngle = 'one aspecular angle of several says another thing than a reading of a solid colour';

/** Every unordered pair of kinds once: what may be compared, what only with a caution, what not. */
export const geometryTable: readonly GeometryRule[] = [
  {
    kinds: ['45:0 all round', '45:0 all round'], comparison: 'may be compared', reason: 'both see the surface without its mirror reflection and average over its directions', basis: cie15,
  },
  {
    kinds: ['45:0 directional', '45:0 directional'], comparison: 'may be compared', reason: 'both are lit from one direction',
    mind: 'turn both sides alike, or average over rotations: a grain reads differently along and across', basis: practice,
  },
  {
    kinds: ['45:0 all round', '45:0 directional'], comparison: 'with a caution',
    reason: 'one side was lit from one direction, the other all round: a grain reads differently', basis: practice,
  },
  {
    kinds: ['de:8', 'de:8'], comparison: 'may be compared', reason: 'both leave the mirror reflection out',
    mind: 'the size of the gloss trap differs between makes: parts of medium gloss may read apart', basis: practice,
  },
  {
    kinds: ['di:8', 'di:8'], comparison: 'may be compared', reason: 'both read the whole reflection of the surface',
    mind: 'specular included hides the unlike gloss of dark parts, the eye does not: measure 45:0 or specular excluded', basis: surfaceTerm,
  },
  {
    kinds: ['multi-angle', 'multi-angle'], comparison: 'may be compared', reason: 'readings at one aspecular angle are set side by side, angle by angle',
    mind: 'one angle alone does not judge an effect finish', basis: 'ASTM E2194-14(2021), ASTM E2539-14(2021) (scope)',
  },
  between('de:8', 'di:8', 'one leaves the mirror reflection out, the other has all of it: their difference is a cue of gloss, not of colour', surfaceTerm),
  between('45:0 all round', 'de:8', sphereAnd45, practice),
  between('45:0 directional', 'de:8', sphereAnd45, practice),
  between('45:0 all round', 'di:8', includedAnd45, surfaceTerm),
  between('45:0 directional', 'di:8', includedAnd45, surfaceTerm),
  between('45:0 all round', 'multi-angle', oneAngle, practice),
  between('45:0 directional', 'multi-angle', oneAngle, practice),
  between('de:8', 'multi-angle', oneAngle, practice),
  between('di:8', 'multi-angle', oneAngle, practice),
  ...geometryKinds.map((kind) => between(kind, 'unknown', unknown, practice)),
];

/** Kind of a geometry; `unknown` for one that is not stated. */
export function geometryKind(geometry: Geometry | undefined): GeometryKind {
  const own: GeometryClass = geometryClass(geometry);
  if (own !== '45:0') return own;
  return isDirectional(geometry) ? '45:0 directional' : '45:0 all round';
}

/** The rule for two geometries; swapping them changes nothing. */
export function compareGeometries(first: Geometry | undefined, second: Geometry | undefined): GeometryRule {
  const [p, q] = [geometryKind(first), geometryKind(second)];
  const found = geometryTable.find(({ kinds }) => (kinds[0] === p && kinds[1] === q) || (kinds[0] === q && kinds[1] === p));
  return found ?? between(p, q, unknown, practice);
}
