import type { Joint } from '../cabin/cabin.ts';
import type { ReadingGroup } from '../readings/reading-groups.ts';
import type { ResolvedRule, RuleSide } from '../rules/rule-book.ts';
import { colourCheck, colourQuestion } from './checks/colour.ts';
import { conditionsCheck } from './checks/conditions.ts';
import { glossCheck } from './checks/gloss.ts';
import type { JointInput } from './checks/joint-input.ts';
import { metamerismCheck, turnsUnderLight } from './checks/metamerism.ts';
import { nearMissCheck, nearMissQuestion } from './checks/near-miss.ts';
import { textureCheck } from './checks/texture.ts';
import { colourSideOf } from './colour-side.ts';
import { melangeSpread } from './melange-spread.ts';
import { pairPatterns } from './pattern-pairing.ts';
import { evaluateColour } from './colour-evaluation.ts';
import type { Pairing } from './colour-pairing.ts';
import { applyDecisions } from './decisions.ts';
import type { JudgeContext } from './judge-context.ts';
import type { CheckResult, CheckVerdict, JointResult, JudgedOn, Verdict } from './judgement.ts';
import { jointVariables } from './joint-variables.ts';
import { lotProbability } from './lot-probability.ts';
import type { PartBasis } from './part-basis.ts';
import { visualBeside } from './visual.ts';
import { percentOfLimit } from './wording.ts';

/** Probability that stands for a required check without any data. Assumption, no source. */
const unknownProbability = 0.5;

/** A judged joint with what it was judged from, for what follows: requests, runs, plans. */
export interface JudgedJoint {
  readonly result: JointResult;
  readonly input: JointInput;
  readonly pairing: Pairing;
}

/** What a part brings to the choice of the rule. */
export const ruleSide = (side: PartBasis): RuleSide => ({
  material: side.source.material, surface: side.source.surface, zone: side.part.zone,
  ...(side.source.grain === undefined ? {} : { grain: side.source.grain.id }),
  ...(side.colour?.named === undefined ? {} : { namedColours: true }),
});

/** Judges one joint: all its checks, its verdict, and the sentence that says what matters most. */
export function judgeJoint(
  context: JudgeContext, joint: Joint, bases: ReadonlyMap<string, PartBasis>, masterUse: (part: string) => number | undefined,
): JudgedJoint {
  const input = jointInput(context, joint, bases);
  const { pairing, ...rest } = input;
  const given = rest.input;
  const { rule } = given;
  const colour = worstPair(given, pairing);
  const spectra = pairing.groups?.map((group) => context.sample(group, [])?.spectrum) ?? [];
  const metamerism = metamerismCheck(given, [spectra[0], spectra[1]], colour, context.light);
  const nearMiss = nearMissCheck(given);
  const named = nameMetamerism(colour, given);
  const checks = [conditionsCheck(given), named, nearMiss, metamerism, glossCheck(given), textureCheck(given)]
    .filter((check) => check !== undefined)
    .map((check) => applyDecisions(check, joint.decisions ?? [], context.asOf));
  const counting = checks.filter(counts);
  const verdict = worstVerdict(counting.map((check) => check.verdict));
  const clashing = counting.filter((check) => check.verdict === 'clashes');
  const accepted = verdict === 'clashes' && clashing.every((check) => check.accepted === true);
  const acceptedUntil = accepted ? clashing.map((check) => check.acceptedUntil).filter((date) => date !== undefined).sort()[0] : undefined;
  const worst = worstCheck(counting);
  const wanted = checks.filter((check) => check.check !== 'conditions' && check.check !== 'metamerism' && check.verdict !== 'not applicable');
  const lots = lotProbability(context, given, pairing);
  const [standard, trial] = given.sides.map((side) => side.part.id);
  const result: JointResult = {
    id: joint.id, parts: joint.parts, standard, trial, kind: joint.kind, intent: rule.intent,
    rule: rule.id, ruleWhy: rule.why,
    verdict, simple: worstVerdict(counting.map((check) => check.simple)),
    accepted, ...(acceptedUntil === undefined ? {} : { acceptedUntil }),
    limitUse: worst === undefined || worst.indicative === true ? undefined : worst.limitUse,
    totalProbability: totalProbability(given, counting),
    coverage: { withData: wanted.filter((check) => check.verdict !== 'no data').length, wanted: wanted.length },
    sentence: jointSentence(worst, verdict, given, masterUse),
    judgedOn: given.sides.map((side, index) => judgedOn(context, side, pairing.groups?.[index])),
    checks,
    visual: visualBeside(joint, verdict),
    ...(lots === undefined ? {} : { lotProbability: lots }),
  };
  return { result, input: given, pairing };
}

/** The standard's side and the trial's: the reference part is the standard, else the part whose id comes first. */
export function orderedSides(joint: Joint, bases: ReadonlyMap<string, PartBasis>): readonly [PartBasis, PartBasis] {
  const reference = joint.reference ?? [...joint.parts].sort()[0];
  const ordered = joint.parts[0] === reference ? joint.parts : [joint.parts[1], joint.parts[0]] as const;
  return ordered.map((id) => bases.get(id)) as unknown as readonly [PartBasis, PartBasis];
}

/** The rule that holds for a joint, all expressions evaluated. */
export const jointRule = (context: JudgeContext, joint: Joint, sides: readonly [PartBasis, PartBasis]): ResolvedRule =>
  context.rules.resolve([ruleSide(sides[0]), ruleSide(sides[1])], joint, jointVariables(context, joint, sides));

/** What a joint's checks are judged from: its rule with all expressions evaluated, and its two sides made comparable. */
export function jointInput(context: JudgeContext, joint: Joint, bases: ReadonlyMap<string, PartBasis>): { readonly input: JointInput; readonly pairing: Pairing } {
  const sides = orderedSides(joint, bases);
  const rule = jointRule(context, joint, sides);
  const colourSides = sides.map((side) => colourSideOf(context, side));
  const pairing = pairPatterns(context, sides, [colourSides[0], colourSides[1]], {
    lights: rule.colour.lights.length > 0 ? rule.colour.lights : context.book.lights,
    sameGeometryOnly: rule.colour.sameGeometryOnly === true,
  });
  const input: JointInput = {
    joint, rule, book: context.book, sides, colour: pairing.colour, hasReference: joint.reference !== undefined,
    names: pairing.names ?? { standard: colourSides[0].name, trial: colourSides[1].name },
    grounds: groundsOf(context, rule.id, pairing, sides),
  };
  return { input, pairing };
}

/** "By rule moulded + moulded, on 5 and 3 spots at 45:0", the trial's spots first, as in the sentence before it. */
function groundsOf(context: JudgeContext, rule: string, { groups }: Pairing, sides: readonly PartBasis[]): string {
  if (groups === undefined) return `By rule ${rule}`;
  const borrowed = sides.flatMap(({ part, colour }) => (colour?.borrowedFrom === undefined ? [] : [`, those of ${part.name} borrowed from its other hand`])).join('');
  const [standard, trial] = groups;
  const geometry = standard.geometryClass === trial.geometryClass ? standard.geometryClass : `${trial.geometryClass} and ${standard.geometryClass}`;
  const scattered = [1, 0].map((index) => melangeSpread(context, sides[index], groups[index])).filter((text) => text !== undefined);
  return `By rule ${rule}, on ${trial.spots} and ${standard.spots} spots at ${geometry}${borrowed}${scattered.map((text) => `; ${text}`).join('')}`;
}

/** Effect finishes are judged at every angle that both sides have, patterns in every colour that both name; the worst one stands. */
export function worstPair(input: JointInput, pairing: Pairing): CheckResult {
  const results = [{ colour: input.colour }, ...pairing.further].map((pair) => colourCheck({ ...input, ...pair }));
  return [...results].sort((first, second) => severity[second.verdict] - severity[first.verdict]
    || (first.withinProbability ?? 1) - (second.withinProbability ?? 1))[0];
}

/** A further remark in a sentence that ends with its grounds, which stay last. */
function beforeGrounds(sentence: string, remark: string, { grounds }: JointInput): string {
  const end = ` ${grounds}.`;
  return sentence.endsWith(end) ? `${sentence.slice(0, -end.length)} ${remark}${end}` : `${sentence} ${remark}`;
}

function nameMetamerism(colour: CheckResult, input: JointInput): CheckResult {
  const reference = input.rule.colour.lights.find((light) => light.standing === 'required')?.light ?? '';
  if (!turnsUnderLight(colour, reference)) return colour;
  return { ...colour, sentence: beforeGrounds(colour.sentence, `It holds under ${reference}: the pair is metameric.`, input) };
}

/** Checks that decide a joint: required ones, and those judged only if measured that were. */
export const counts = (check: CheckResult): boolean =>
  check.verdict !== 'not applicable' && (check.standing === 'required' || (check.standing === 'if-measured' && check.verdict !== 'no data'));

const severity: Record<CheckVerdict, number> = { clashes: 3, open: 2, 'no data': 2, holds: 1, 'not applicable': 0 };

/** clashes before open before holds; a required check without data leaves the joint open. */
export function worstVerdict(verdicts: readonly CheckVerdict[]): Verdict {
  if (verdicts.includes('clashes')) return 'clashes';
  if (verdicts.includes('open') || verdicts.includes('no data')) return 'open';
  return 'holds';
}

/** The check that leads: the worst verdict, conditions last among equals, then the largest use of its limit. */
export function worstCheck(checks: readonly CheckResult[]): CheckResult | undefined {
  return [...checks].sort((first, second) => severity[second.verdict] - severity[first.verdict]
    || Number(first.check === 'conditions') - Number(second.check === 'conditions')
    || (second.limitUse ?? 0) - (first.limitUse ?? 0))[0];
}

/**
 * Probability that all deciding checks hold: colour and near miss as one event, since they come from the same readings; gloss and
 * texture are read with other instruments and multiply. A required check without data stands at one half.
 */
export function totalProbability(input: JointInput, counting: readonly CheckResult[]): number {
  const asked = counting.filter((check) => check.check !== 'conditions');
  const both = asked.some((check) => check.check === 'colour') && asked.some((check) => check.check === 'near-miss') && typeof input.colour !== 'string';
  let total = 1;
  for (const check of asked) {
    if (both && check.check === 'near-miss') continue;
    total *= both && check.check === 'colour' && countsInFull(check) ? togetherProbability(input, asked) : ownProbability(check);
  }
  return total;
}

/** A check whose value was taken under like conditions and under every required light. */
const countsInFull = (check: CheckResult): boolean => check.indicative !== true && (check.missingLights ?? []).length === 0;

/**
 * Probability of one check. A value that may not be compared counts for nothing, and lights without data as one unknown more; a check
 * that is judged by its value alone counts as it stands.
 */
function ownProbability(check: CheckResult): number {
  if (check.indicative === true) return unknownProbability;
  if (check.withinProbability === undefined) return check.verdict === 'holds' ? 1 : check.verdict === 'clashes' ? 0 : unknownProbability;
  return countsInFull(check) ? check.withinProbability : unknownProbability * check.withinProbability;
}

/** Colour and near miss hold together; where one of them is certain, that is the probability of the other. */
function togetherProbability(input: JointInput, asked: readonly CheckResult[]): number {
  const [colour = 1, nearMiss = 1] = (['colour', 'near-miss'] as const).map((name) => asked.find((check) => check.check === name)?.withinProbability);
  if (typeof input.colour === 'string') return unknownProbability;
  if (Math.max(colour, nearMiss) === 1 || Math.min(colour, nearMiss) === 0) return Math.min(colour, nearMiss);
  const question = colourQuestion(input);
  const apart = nearMissQuestion(input);
  const demands = question.demands.map((demand, index) => ({ ...demand, criteria: [...demand.criteria, ...apart.demands[index].criteria] }));
  return evaluateColour(input.colour, { ...question, demands }).within;
}

function jointSentence(worst: CheckResult | undefined, verdict: Verdict, input: JointInput, masterUse: (part: string) => number | undefined): string {
  if (worst === undefined) return `Nothing is judged between ${input.names.trial} and ${input.names.standard}: all that is wanted of them is free.`;
  if (verdict !== 'clashes' || (worst.check !== 'colour' && worst.check !== 'gloss')) return worst.sentence;
  const uses = input.sides.map((side) => masterUse(side.part.id));
  if (worst.check !== 'colour' || uses.some((use) => use === undefined || use > 1)) return worst.sentence;
  const [standard, trial] = uses as readonly number[];
  const within = `Each is within its own master limit: ${input.names.standard} at ${percentOfLimit(standard)}, ${input.names.trial} at ${percentOfLimit(trial)}.`;
  return beforeGrounds(worst.sentence, within, input);
}

function judgedOn(context: JudgeContext, side: PartBasis, group: ReadingGroup | undefined): JudgedOn {
  const stand = side.colour ?? side.gloss ?? side.texture;
  const lot = stand?.specimen.lot?.id;
  const instrument = group === undefined ? undefined : context.index.instruments.get(group.instrument);
  return {
    part: side.part.id,
    source: side.source.id,
    specimen: stand?.specimen.id ?? '',
    kind: stand?.specimen.kind ?? '',
    ...(lot === undefined ? {} : { lot }),
    spots: group?.spots ?? 0,
    instrument: instrument?.name ?? group?.instrument ?? '',
    geometry: group?.geometryClass ?? 'unknown',
    ...(stand?.borrowedFrom === undefined ? {} : { borrowedFrom: stand.borrowedFrom }),
  };
}
