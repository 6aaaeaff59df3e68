import type { Reach, Source } from '../../cabin/cabin.ts';

/** How far a material can be taken from where it is. */
export type MaterialReach = Reach;

/** Where a reach comes from. */
export const reachBasis = 'assumption, no source';

/** What a supplier can usually be asked for without another pigment system or another tool; all of it to be replaced by what the suppliers say. */
export const usualReach: Readonly<Record<string, MaterialReach>> = {
  moulded: { L: 2.5, a: 1.5, b: 1.5, gloss: 1.5 },
  painted: { L: 4, a: 2.5, b: 2.5, gloss: 5 },
  'soft-skin': { L: 2.5, a: 1.5, b: 1.5, gloss: 1 },
  leather: { L: 2, a: 1.2, b: 1.2, gloss: 1 },
  textile: { L: 2, a: 1.2, b: 1.2, gloss: 0 },
  headliner: { L: 2, a: 1.2, b: 1.2, gloss: 0 },
  carpet: { L: 2, a: 1.2, b: 1.2, gloss: 0 },
  thread: { L: 4, a: 2.5, b: 2.5, gloss: 0 },
  'gloss-black': { L: 1, a: 0.5, b: 0.5, gloss: 3 },
  'decor-film': { L: 1.5, a: 1, b: 1, gloss: 3 },
  metallised: { L: 0, a: 0, b: 0, gloss: 0 },
};

const otherReach: MaterialReach = { L: 1, a: 0.6, b: 0.6, gloss: 0.5 };

export const reachOf = (source: Source, own: Readonly<Record<string, MaterialReach>> = {}): MaterialReach =>
  (Object.hasOwn(own, source.material) ? own[source.material] : undefined) ?? assumedReach(source.material);

/** The reach that is assumed of a material where nobody has said another. */
export const assumedReach = (material: string): MaterialReach => (Object.hasOwn(usualReach, material) ? usualReach[material] : undefined) ?? otherReach;

/** Smallest step of gloss that another grain or etching of a tool gives, GU. Assumption, no source. */
export const toolGlossStep = 0.3;

/** Whether the gloss of a source is set by the grain of a tool, and so changes in steps, with the tool. */
export const glossIsOfTool = (source: Source): boolean => source.grain !== undefined && (source.material === 'moulded' || source.material === 'soft-skin');
