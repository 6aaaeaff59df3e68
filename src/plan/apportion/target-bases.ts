import type { Cabin } from '../../cabin/cabin.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import type { PartBasis } from '../../harmony/part-basis.ts';
import { glossSamples } from '../../readings/gloss-sample.ts';

/** What tolerances are laid about. */
export type TargetKind = 'master' | 'present';

/**
 * The parts as they would be exactly on target: by the readings of their master where one is recorded, else by their own. With `present`
 * every part is taken as it is.
 */
export function targetBases(cabin: Cabin, context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, about: TargetKind): ReadonlyMap<string, PartBasis> {
  return new Map(cabin.parts.flatMap((part): (readonly [string, PartBasis])[] => {
    const basis = bases.get(part.id);
    if (basis === undefined) return [];
    const master = about === 'master' && part.target !== undefined ? context.index.masters.get(part.target.master) : undefined;
    if (master === undefined) return [[part.id, basis]];
    const stand = { specimen: master, source: basis.source };
    const groups = context.groupsOfMaster(master.id);
    const samples = glossSamples(master.readings, context.index.conditions);
    return [[part.id, {
      ...basis,
      colour: groups.length === 0 ? basis.colour : { ...stand, groups },
      gloss: samples.length === 0 ? basis.gloss : { ...stand, samples, measured: basis.gloss?.measured ?? { instrument: undefined } },
    }]];
  }));
}

/** Whether a part's basis is that of its master. */
export const standsByMaster = (basis: PartBasis): boolean => basis.colour?.specimen.kind === 'master';
