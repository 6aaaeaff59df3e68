import type { DifferenceFormula } from '../../colour/difference-formula.ts';
import type { Part, Source } from '../../cabin/cabin.ts';
import type { GlossAngle } from '../../readings/reading.ts';
import type { RuleBook } from '../../rules/rule-book.ts';
import { ruleFormula } from '../checks/joint-input.ts';
import type { JudgedCabin } from '../judge.ts';
import type { JudgedJoint } from '../judge-joint.ts';

/** A limit that readings have to be good enough for, and where it comes from. */
export interface QualityLimit {
  readonly value: number;
  readonly from: { readonly kind: 'joint' | 'material' | 'master'; readonly id: string };
}

export interface ColourLimit extends QualityLimit {
  readonly formula: DifferenceFormula;
}

/** The strictest limits that the readings of a specimen are held to. */
export interface QualityLimits {
  readonly colour?: ColourLimit;
  readonly gloss: ReadonlyMap<GlossAngle, QualityLimit>;
  /** Of the logarithm of a ratio of sizes. */
  readonly texture?: QualityLimit;
}

const strictest = <L extends QualityLimit>(limits: readonly L[]): L | undefined =>
  limits.reduce<L | undefined>((best, limit) => (best === undefined || limit.value < best.value ? limit : best), undefined);

/** The book's formula with the factor of a material. */
export const bookFormula = (book: RuleBook, kL: number): DifferenceFormula =>
  (book.formula === 'cmc' ? { name: 'cmc', l: book.cmc?.l ?? 2, c: book.cmc?.c ?? 1 } : { name: book.formula, kL });

/**
 * Limits for the specimens of a source: the strictest of the joints in which the part is to match, if it stands by this source, else what the rule book has for
 * two parts of its material.
 */
export function limitsOfSource(judged: JudgedCabin, part: Part, source: Source): QualityLimits {
  const joints = judged.joints.filter(({ input }) => input.sides.some((side) => side.part.id === part.id && side.source.id === source.id));
  const row = judged.context.rules.materialClass(source.material);
  const fromJoints = jointLimits(joints);
  const colour = fromJoints.colour ?? (row === undefined ? undefined
    : { value: row.colourLimit, formula: bookFormula(judged.context.book, row.kL), from: { kind: 'material' as const, id: source.material } });
  const glossRule = row?.gloss;
  const gloss = new Map<GlossAngle, QualityLimit>(fromJoints.gloss.size > 0 || glossRule?.kind !== 'limit' || typeof glossRule.limit !== 'number' ? []
    : [[glossRule.angle, { value: glossRule.limit, from: { kind: 'material', id: source.material } }]]);
  return {
    ...(colour === undefined ? {} : { colour }),
    gloss: fromJoints.gloss.size > 0 ? fromJoints.gloss : gloss,
    ...(fromJoints.texture === undefined ? {} : { texture: fromJoints.texture }),
  };
}

function jointLimits(joints: readonly JudgedJoint[]): QualityLimits {
  const from = (joint: JudgedJoint) => ({ kind: 'joint' as const, id: joint.result.id });
  const colour = strictest(joints.filter(({ input: { rule } }) => rule.intent.colour === 'match' && rule.colour.notJudged === undefined && rule.colour.limit > 0)
    .map((joint): ColourLimit => ({ value: joint.input.rule.colour.limit, formula: ruleFormula(joint.input.rule), from: from(joint) })));
  const gloss = new Map<GlossAngle, QualityLimit>();
  for (const joint of joints) {
    const { intent, gloss: rule } = joint.input.rule;
    if (intent.gloss !== 'match' || !rule.applicable) continue;
    const best = strictest([...(gloss.has(rule.angle) ? [gloss.get(rule.angle) as QualityLimit] : []), { value: rule.limit, from: from(joint) }]);
    if (best !== undefined) gloss.set(rule.angle, best);
  }
  const texture = strictest(joints.filter(({ input: { rule } }) => rule.intent.texture === 'match').map((joint): QualityLimit => {
    const [low, high] = joint.input.rule.texture.ratio;
    return { value: Math.min(Math.abs(Math.log(low)), Math.abs(Math.log(high))), from: from(joint) };
  }));
  return { ...(colour === undefined ? {} : { colour }), gloss, ...(texture === undefined ? {} : { texture }) };
}

/** Limits for a recorded master: the strictest that a part is held to against it. */
export function limitsOfMaster(judged: JudgedCabin, master: string): QualityLimits {
  const { book, rules, cabin } = judged.context;
  const bases = cabin.parts.filter(({ target }) => target?.master === master)
    .map((part) => ({ part, row: rules.materialClass(judged.bases.get(part.id)?.source.material ?? '') }));
  const from = { kind: 'master' as const, id: master };
  const colour = strictest(bases.flatMap(({ part, row }): ColourLimit[] => {
    const value = part.target?.colourLimit ?? row?.masterColourLimit;
    return value === undefined ? [] : [{ value, formula: bookFormula(book, row?.kL ?? 1), from }];
  }));
  const gloss = strictest(bases.flatMap(({ part, row }): QualityLimit[] => {
    const value = part.target?.glossLimit ?? row?.masterGlossLimit;
    return value === undefined || row?.gloss.kind === 'not applicable' ? [] : [{ value, from }];
  }));
  return {
    ...(colour === undefined ? {} : { colour }),
    gloss: new Map<GlossAngle, QualityLimit>(gloss === undefined ? [] : ([20, 60, 85] as const).map((angle) => [angle, gloss])),
  };
}
