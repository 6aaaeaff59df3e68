import type { Cabin, Exposure } from '../../cabin/cabin.ts';
import { stageOf } from '../../cabin/standing-specimen.ts';
import type { JudgedCabin } from '../judge.ts';
import type { AgedPart } from './aged-part.ts';
import { agedPart, wantedGrade } from './aged-part.ts';
import type { CabinComparison } from './compare-cabins.ts';
import { compareStages } from './compare-stages.ts';

/** A cabin as it is and after an exposure: plain data. */
export interface Ageing {
  readonly from: string;
  readonly to: string;
  /** Exposures met among the specimens, each once. */
  readonly exposures: readonly Exposure[];
  readonly wanted: typeof wantedGrade;
  /** Parts with an exposed specimen, the worst grade first. */
  readonly parts: readonly AgedPart[];
  readonly notGraded: readonly { readonly part: string; readonly name: string; readonly why: string }[];
  /** Ids of parts without an exposed specimen of their own. */
  readonly notExposed: readonly string[];
  /** Joints of which both sides have readings at both stages. */
  readonly comparison: CabinComparison;
  /** Ids of joints that hold before and clash after. */
  readonly holdThenClash: readonly string[];
  /** Ids of joints that cannot be compared, for want of a specimen at one of the stages. */
  readonly notJudged: readonly string[];
}

/** Stages other than `new` that specimens of the cabin's sources were brought to, in the order of the document. */
export const agedStages = (cabin: Cabin): readonly string[] =>
  [...new Set(cabin.parts.flatMap((part) => part.sources.flatMap((source) => source.specimens.map(stageOf))))].filter((stage) => stage !== 'new');

/**
 * Sets one cabin judged at an earlier stage against itself at a later one. Grades compare specimens of one source under one geometry, a sphere
 * with the specular part included where there is one; the joints are judged in the geometry of their rule. The two are never chained.
 */
export function ageingOf(before: JudgedCabin, after: JudgedCabin): Ageing {
  const { cabin } = after.context;
  const [from, to] = [before.judgement.stage, after.judgement.stage];
  const graded = cabin.parts.map((part) => {
    const source = after.bases.get(part.id)?.source;
    const name = after.context.names.get(part.id) ?? part.name;
    return { part: part.id, name, grade: source === undefined ? undefined : agedPart(after.context, { id: part.id, name }, source, from, to) };
  });
  const parts = graded.flatMap(({ grade }) => (typeof grade === 'object' ? [grade] : []));
  const comparison = compareStages(before, after);
  const compared = new Set(comparison.joints.map(({ id }) => id));
  return {
    from, to, wanted: wantedGrade,
    exposures: distinct(parts.flatMap(({ exposure }) => (exposure === undefined ? [] : [exposure]))),
    parts: [...parts].sort((first, second) => first.greyScale.value - second.greyScale.value),
    notGraded: graded.flatMap(({ part, name, grade }) => (typeof grade === 'string' ? [{ part, name, why: grade }] : [])),
    notExposed: graded.filter(({ grade }) => grade === undefined).map(({ part }) => part),
    comparison,
    holdThenClash: comparison.joints.filter((joint) => joint.before?.verdict === 'holds' && joint.after?.verdict === 'clashes').map(({ id }) => id),
    notJudged: cabin.joints.filter(({ id }) => !compared.has(id)).map(({ id }) => id),
  };
}

const distinct = (exposures: readonly Exposure[]): readonly Exposure[] => [...new Map(exposures.map((exposure) => [JSON.stringify(exposure), exposure])).values()];
