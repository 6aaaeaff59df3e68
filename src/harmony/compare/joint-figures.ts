import type { CheckName } from '../../cabin/cabin.ts';
import type { CheckResult, CheckVerdict, JointResult, OpenCause, Verdict } from '../judgement.ts';
import { counts, worstCheck } from '../judge-joint.ts';

/** A check by its numbers, as one side of a comparison. */
export interface CheckFigures {
  readonly check: CheckName;
  readonly verdict: CheckVerdict;
  readonly accepted: boolean;
  readonly light?: string;
  readonly formula?: string;
  readonly criterion?: string;
  readonly unit: string;
  readonly value?: number;
  readonly limit?: number;
  readonly limitUse?: number;
  readonly uncertainty?: number;
  readonly withinProbability?: number;
  readonly cause?: OpenCause;
  readonly indicative?: boolean;
}

/** A joint by its numbers: its verdict and the check that it rests on. */
export interface JointFigures {
  readonly verdict: Verdict;
  readonly accepted: boolean;
  readonly limitUse?: number;
  readonly totalProbability: number;
  /** The check that the verdict rests on; undefined where nothing of the joint is judged. */
  readonly leading?: CheckFigures;
}

const figureNames = ['light', 'formula', 'criterion', 'value', 'limit', 'limitUse', 'uncertainty', 'withinProbability', 'cause', 'indicative'] as const;

export const checkFigures = (check: CheckResult): CheckFigures => ({
  check: check.check, verdict: check.verdict, accepted: check.accepted === true, unit: check.unit,
  ...Object.fromEntries(figureNames.filter((name) => check[name] !== undefined).map((name) => [name, check[name]])),
});

export function jointFigures(result: JointResult): JointFigures {
  const leading = worstCheck(result.checks.filter(counts));
  return {
    verdict: result.verdict, accepted: result.accepted, totalProbability: result.totalProbability,
    ...(result.limitUse === undefined ? {} : { limitUse: result.limitUse }),
    ...(leading === undefined ? {} : { leading: checkFigures(leading) }),
  };
}

/** From best to worst: holds, open, a clash that a decision accepts, a clash. */
export const badness = ({ verdict, accepted }: Pick<JointFigures, 'verdict' | 'accepted'>): number =>
  (verdict === 'holds' ? 0 : verdict === 'open' ? 1 : accepted ? 2 : 3);

/** `holds`, `open`, `clashes, accepted`, `clashes`. */
export const standingWord = ({ verdict, accepted }: Pick<JointFigures, 'verdict' | 'accepted'>): string =>
  (verdict === 'clashes' && accepted ? 'clashes, accepted' : verdict);
