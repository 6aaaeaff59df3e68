import type { CheckResult, JointResult, LightResult } from '../../src/harmony/judgement.ts';

const weight: Readonly<Record<string, number>> = { clashes: 3, open: 2, holds: 1 };

/** The check that a joint stands or falls by: the worst required one, the greater limit use first; any other only where none is required. */
export function leadingCheck(joint: JointResult): CheckResult | undefined {
  const judged = joint.checks.filter((check) => check.verdict in weight);
  const required = judged.filter((check) => check.standing !== 'advisory');
  return (required.length > 0 ? required : judged).reduce<CheckResult | undefined>((worst, check) => {
    if (worst === undefined) return check;
    const by = (weight[check.verdict] ?? 0) - (weight[worst.verdict] ?? 0) || (check.limitUse ?? -1) - (worst.limitUse ?? -1);
    return by > 0 ? check : worst;
  }, undefined);
}

/** Colour, gloss and texture of a joint, as far as they were judged: appearance is all three. */
export const judgedSides = (joint: JointResult): readonly CheckResult[] =>
  (['colour', 'gloss', 'texture'] as const).flatMap((name) => joint.checks.filter(({ check, verdict }) => check === name && verdict in weight));

/** u / limit, where both are known. */
export const uncertaintyUse = (check: CheckResult | LightResult | undefined): number | undefined =>
  check?.uncertainty === undefined || !check.limit ? undefined : check.uncertainty / check.limit;

/** The colour check's result under a light, if the rule looks at it. */
export const underLight = (joint: JointResult, light: string): LightResult | undefined =>
  joint.checks.find((check) => check.check === 'colour')?.lights.find((result) => result.light === light);

/** The verdict as a word; a clash with a decision in force says so. */
export const verdictWord = (joint: JointResult): string => (joint.verdict === 'clashes' && joint.accepted ? 'clashes, accepted' : joint.verdict);
