import { assumption, commonPractice } from './book-bases.ts';
import type { GlossRule, MaterialClass } from './rule-book.ts';

type Sd = readonly [L: number, a: number, b: number];

const glossLimit = (limit: number): GlossRule => ({ kind: 'limit', limit, angle: 60, basis: commonPractice });

/** Limit by level: 10 per cent of the mean, at least 0.5 GU, up to 70 GU at 60 degrees; above that 5 GU at 20 degrees. */
export const glossByLevel: GlossRule = { kind: 'level', floor: 0.5, share: 0.1, switchGu60: 70, limit20: 5, basis: commonPractice };

const pileGloss: GlossRule = {
  kind: 'not applicable', reason: 'a glossmeter has no flat surface to read on pile, woven textile or thread', basis: commonPractice,
};
const metalGloss: GlossRule = {
  kind: 'not applicable', reason: 'gloss of metal is on another scale than gloss of polymers', basis: commonPractice,
};

interface Row {
  readonly material: string;
  readonly family: string;
  readonly colourLimit: number;
  readonly kL: number;
  readonly lightnessCap?: number;
  readonly gloss: GlossRule;
  readonly readingSd: Sd;
  readonly glossSd: number;
  readonly wanted: MaterialClass['wanted'];
  readonly advisory?: true;
}

const rows: readonly Row[] = [
  { material: 'moulded', family: 'hard', colourLimit: 0.7, kL: 1, lightnessCap: 0.7, gloss: glossLimit(0.5), readingSd: [0.15, 0.04, 0.06], glossSd: 0.1, wanted: { spots: 5 } },
  { material: 'painted', family: 'hard', colourLimit: 0.7, kL: 1, lightnessCap: 0.7, gloss: glossByLevel, readingSd: [0.10, 0.04, 0.05], glossSd: 0.2, wanted: { spots: 5 } },
  { material: 'soft-skin', family: 'skin', colourLimit: 0.8, kL: 1, lightnessCap: 0.8, gloss: glossLimit(0.5), readingSd: [0.15, 0.05, 0.07], glossSd: 0.1, wanted: { spots: 5 } },
  { material: 'leather', family: 'skin', colourLimit: 1, kL: 1, lightnessCap: 1, gloss: glossLimit(0.6), readingSd: [0.35, 0.10, 0.15], glossSd: 0.15,
    wanted: { spots: 5, specimens: 2 } },
  { material: 'textile', family: 'pile', colourLimit: 1.2, kL: 2, lightnessCap: 1.5, gloss: pileGloss, readingSd: [0.40, 0.12, 0.15], glossSd: 0.1,
    wanted: { spots: 5, rotations: 4 } },
  { material: 'headliner', family: 'pile', colourLimit: 1.2, kL: 2, lightnessCap: 1.5, gloss: pileGloss, readingSd: [0.30, 0.10, 0.12], glossSd: 0.1,
    wanted: { spots: 5, rotations: 4 } },
  { material: 'carpet', family: 'pile', colourLimit: 1.5, kL: 2, lightnessCap: 2, gloss: pileGloss, readingSd: [0.60, 0.15, 0.20], glossSd: 0.1,
    wanted: { spots: 8, rotations: 4 } },
  { material: 'thread', family: 'pile', colourLimit: 1.5, kL: 2, lightnessCap: 2, gloss: pileGloss, readingSd: [0.50, 0.15, 0.20], glossSd: 0.1, wanted: { spots: 4 } },
  { material: 'gloss-black', family: 'shiny', colourLimit: 0.8, kL: 1, lightnessCap: 0.8,
    gloss: { kind: 'limit', limit: 5, angle: 20, haze: { limit: 10, basis: assumption }, basis: commonPractice },
    readingSd: [0.10, 0.04, 0.05], glossSd: 0.6, wanted: { spots: 5 } },
  { material: 'decor-film', family: 'shiny', colourLimit: 1, kL: 1, lightnessCap: 1, gloss: glossByLevel, readingSd: [0.20, 0.06, 0.08], glossSd: 0.2, wanted: { spots: 5 } },
  { material: 'metallised', family: 'shiny', colourLimit: 1.5, kL: 1, gloss: metalGloss, readingSd: [0.30, 0.08, 0.10], glossSd: 1.5, wanted: { spots: 5 }, advisory: true },
];

/** What a book changes in the table: its limits and lightness factors, with their bases. */
export interface TableForm {
  /** Basis of the colour limits, by material where it differs. */
  readonly limitBasis: (material: string) => string;
  /** kL of a material whose texture asks for more than 1, and its basis. */
  readonly pileLightness: { readonly kL: number; readonly basis: string };
}

/** The eleven materials of both built-in books, in the order in which they are printed. */
export const materialTable = ({ limitBasis, pileLightness }: TableForm): readonly MaterialClass[] => rows.map((row) => {
  const { material, gloss, advisory, ...values } = row;
  const pile = row.kL !== 1;
  return {
    ...values,
    material,
    kL: pile ? pileLightness.kL : row.kL,
    gloss,
    masterColourLimit: row.colourLimit,
    ...(gloss.kind === 'limit' && typeof gloss.limit === 'number' ? { masterGlossLimit: gloss.limit } : {}),
    ...(advisory ? { advisory, sameGeometryOnly: true } : {}),
    basis: commonPractice,
    bases: {
      colourLimit: limitBasis(material),
      ...(pile ? { kL: pileLightness.basis } : {}),
      readingSd: assumption,
      glossSd: assumption,
      masterColourLimit: `${commonPractice}; the material's own limit`,
      ...(gloss.kind === 'limit' ? { masterGlossLimit: `${commonPractice}; the material's own limit` } : {}),
    },
  };
});
