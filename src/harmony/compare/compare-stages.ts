import type { JudgedCabin } from '../judge.ts';
import type { CabinComparison } from './compare-cabins.ts';
import { compareCabins } from './compare-cabins.ts';

/**
 * One cabin at two stages. Only joints of which both sides have readings of colour at both stages are compared, and only parts that have:
 * where specimens were not brought to a stage nothing became better or worse.
 */
export function compareStages(before: JudgedCabin, after: JudgedCabin): CabinComparison {
  const { cabin } = after.context;
  const read = (part: string): boolean => [before, after].every(({ bases }) => bases.get(part)?.colour !== undefined);
  const both = new Set(cabin.joints.filter(({ parts }) => parts.every(read)).map(({ id }) => id));
  const left = cabin.joints.length - both.size;
  return compareCabins({ cabin: before.context.cabin, judgement: before.judgement }, { cabin, judgement: after.judgement }, {
    only: (joint) => both.has(joint), onlyParts: read,
    notes: left === 0 ? [] : [`${left === 1 ? 'One joint is' : `${left} joints are`} left out: a side has no specimen at one of the two stages.`],
  });
}
