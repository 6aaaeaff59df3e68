import { joinedBasis } from './combine-classes.ts';
import { decimal } from './plain-number.ts';
import type { GlossRule, HazeLimit, ResolvedGloss, ResolvingVariables, RuleVariables, Standing } from './rule-book.ts';

type NotApplicable = Extract<GlossRule, { kind: 'not applicable' }>;

/** A gloss rule with its expression compiled. */
export type CompiledGloss =
  | NotApplicable
  | Extract<GlossRule, { kind: 'level' }>
  | { readonly kind: 'limit'; readonly limit: (variables: RuleVariables) => number; readonly angle: 20 | 60 | 85; readonly haze?: HazeLimit; readonly basis: string };

interface GlossLimit {
  readonly angle: 20 | 60 | 85;
  readonly limit: number;
  readonly haze?: HazeLimit;
  readonly basis: string;
}

/** Where both sides are above this the pair is glossy and read at 20 degrees (ASTM D523, ISO 2813: 20 degrees above 70 GU at 60 degrees). */
const glossyAbove = 70;

function limitOf(rule: Exclude<CompiledGloss, NotApplicable>, variables: ResolvingVariables, grained: boolean): GlossLimit {
  if (rule.kind === 'limit') return { angle: rule.angle, limit: rule.limit(variables), ...(rule.haze === undefined ? {} : { haze: rule.haze }), basis: rule.basis };
  const mean = variables.meanGloss;
  if (!grained && (variables.minGloss ?? mean) > rule.switchGu60) return { angle: 20, limit: rule.limit20, basis: rule.basis };
  // With no gloss read the floor stands, which no verdict uses.
  return { angle: 60, limit: Number.isNaN(mean) ? rule.floor : Math.max(rule.floor, rule.share * mean), basis: rule.basis };
}

/**
 * The gloss limit of a pair: the larger of the two sides' limits at one angle; not applicable where either side has no gloss to compare.
 * Where the sides ask for unlike angles, a pair with a mean above 70 GU at 60 degrees is read at 20 degrees, any other
 * at 60, and the limit is that of the side which has one at that angle. A grained pair is read at 60 degrees whatever its level, unless a rule names another
 * angle. Haze is limited at 20 degrees, by the larger limit of the two sides.
 */
export function resolveGloss(rules: readonly CompiledGloss[], variables: ResolvingVariables, standing: Standing, grained: boolean): ResolvedGloss {
  const barred = rules.filter((rule) => rule.kind === 'not applicable');
  if (barred.length > 0) {
    return { applicable: false, reason: joinedBasis(...barred.map((rule) => rule.reason)), basis: joinedBasis(...barred.map((rule) => rule.basis)) };
  }
  const limits = rules.flatMap((rule) => (rule.kind === 'not applicable' ? [] : [limitOf(rule, variables, grained)]));
  const angles = [...new Set(limits.map((limit) => limit.angle))];
  const wanted = !grained && (variables.minGloss ?? variables.meanGloss) > glossyAbove ? 20 : 60;
  const angle = angles.length === 1 ? angles[0]! : angles.includes(wanted) ? wanted : Math.min(...angles) as 20 | 60 | 85;
  const used = limits.filter((limit) => limit.angle === angle);
  const limit = decimal(Math.max(...used.map((each) => each.limit)));
  const basis = joinedBasis(...used.map((each) => each.basis));
  if (used.length === 0 || !Number.isFinite(limit) || limit <= 0) {
    return { applicable: false, reason: 'the rule gives no usable gloss limit for this joint', basis };
  }
  const haze = angle === 20 ? used.flatMap((each) => (each.haze === undefined ? [] : [each.haze])).sort((a, b) => b.limit - a.limit || (a.basis < b.basis ? -1 : 1))[0] : undefined;
  return { applicable: true, angle, limit, ...(haze === undefined ? {} : { haze }), standing, basis };
}
