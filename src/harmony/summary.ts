import type { JointResult, Summary } from './judgement.ts';

/** Joints that are counted together: after an edit only their counts are made anew. */
const blockSize = 256;

/** The counts of a block of joints that follow each other in the document. */
export interface SummaryBlock {
  readonly holds: number;
  readonly nothingJudged: number;
  readonly open: number;
  readonly clashes: number;
  readonly accepted: number;
  readonly expectedWrongHolds: number;
  readonly wanted: number;
  readonly withData: number;
  readonly seen: number;
  readonly differ: readonly string[];
}

/** The counts of all joints, block by block; of those before, the ones are kept that have none of the changed places. */
export function summaryBlocks(joints: readonly JointResult[], before: readonly SummaryBlock[] = [], changed?: readonly number[]): readonly SummaryBlock[] {
  const touched = changed === undefined ? undefined : new Set(changed.map((place) => Math.floor(place / blockSize)));
  return Array.from({ length: Math.ceil(joints.length / blockSize) }, (_, block) =>
    (touched?.has(block) === false && before[block] !== undefined ? before[block] : countsOf(joints.slice(block * blockSize, (block + 1) * blockSize))));
}

function countsOf(joints: readonly JointResult[]): SummaryBlock {
  let [holds, nothingJudged, open, clashes, accepted, expectedWrongHolds, wanted, withData, seen] = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  const differ: string[] = [];
  for (const joint of joints) {
    wanted += joint.coverage.wanted;
    withData += joint.coverage.withData;
    if (joint.verdict === 'holds') {
      holds += 1;
      if (joint.coverage.wanted === 0) nothingJudged += 1;
      expectedWrongHolds += 1 - joint.totalProbability;
    } else if (joint.verdict === 'open') open += 1;
    else if (joint.accepted) accepted += 1;
    else clashes += 1;
    if (joint.visual === undefined || joint.verdict === 'open') continue;
    seen += 1;
    if (!joint.visual.agrees) differ.push(joint.id);
  }
  return { holds, nothingJudged, open, clashes, accepted, expectedWrongHolds, wanted, withData, seen, differ };
}

/**
 * Counts of a judged cabin. `clashes` are the unaccepted ones; `expectedWrongHolds`
 * is the sum, over the joints called `holds`, of the probability that they do not;
 * coverage is the share of wanted checks that had data, 1 where none is wanted.
 */
export function summarise(blocks: readonly SummaryBlock[]): Summary {
  const sum = (count: Exclude<keyof SummaryBlock, 'differ'>): number => blocks.reduce((total, block) => total + block[count], 0);
  const [wanted, seen, differ] = [sum('wanted'), sum('seen'), blocks.flatMap((block) => block.differ)];
  return {
    holds: sum('holds'), nothingJudged: sum('nothingJudged'), open: sum('open'), clashes: sum('clashes'), accepted: sum('accepted'),
    expectedWrongHolds: sum('expectedWrongHolds'), coverage: wanted === 0 ? 1 : sum('withData') / wanted,
    visual: { joints: seen, agree: seen - differ.length, differ },
  };
}
