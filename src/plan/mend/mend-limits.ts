import type { JointInput } from '../../harmony/checks/joint-input.ts';
import { colourQuestion } from '../../harmony/checks/colour.ts';
import { contrastFactor, glossQuestion } from '../../harmony/checks/gloss.ts';
import { nearMissQuestion } from '../../harmony/checks/near-miss.ts';
import { colourEvent } from '../../harmony/colour-evaluation.ts';
import type { LightDemand } from '../../harmony/colour-evaluation.ts';
import type { ColourPair, PairLight } from '../../harmony/colour-pair.ts';
import { differenceCovariance } from '../../readings/difference-covariance.ts';
import { criterionRange, criterionValue } from '../../readings/criterion-test.ts';
import { judgeEvent } from '../../readings/judge-event.ts';
import { stackedProbability } from '../../readings/stacked-probability.ts';
import { normalQuantile } from '../../readings/normal-distribution.ts';
import { scalarDifferenceVariance } from '../../readings/scalar-variance.ts';
import type { Criterion } from '../../readings/stacked-event.ts';
import { criterionState, lightCovariance } from '../../readings/stacked-excess.ts';
import type { Lab } from '../../quantities.ts';
import { criterionRangeIn } from './difference-range.ts';
import type { LabBox } from './difference-range.ts';
import { scaledOf, sumOf } from './interval.ts';
import type { Interval } from './interval.ts';
import { noShift } from './mend-problem.ts';
import type { MendItem, MendLimit, Shift, ShiftBox } from './mend-problem.ts';
import type { ShiftResponse } from './shift-response.ts';

/** What a joint asks of the shifts of its two sides. */
export interface JointDemand {
  /** Probability that all that is asked in colour holds, and in gloss; undefined where it is not asked. */
  readonly colour?: number;
  readonly gloss?: number;
  /** What is asked and could not be seen to hold even by sides that are alike: it takes readings, not changes. */
  readonly unattainable: readonly ('colour' | 'gloss')[];
  /** A required light has no data: what is asked under the others is kept, but the joint stays open. */
  readonly incomplete: boolean;
  /** Limits tightened by a margin in standard uncertainties. */
  readonly limits: (margins: JointMargins, place: Place) => readonly MendLimit[];
}

/** How many standard uncertainties are kept from the limits. */
export interface JointMargins {
  readonly colour: number;
  readonly gloss: number;
}

/** The numbers of a joint's sides in the problem, and the shifts at which the colours of this round were read. */
export interface Place {
  readonly joint: number;
  readonly items: readonly [number, number];
  readonly at: readonly [Shift, Shift];
  /** How far the sides can be taken; a distance that can only be made on one side of nought is then a straight limit. */
  readonly reach?: readonly [MendItem, MendItem];
}

/** A limit is never tightened below this share of itself, so that a plan is not asked for the impossible. */
const leastShare = 0.02;

/**
 * What a joint asks of its sides by the rule's own criteria; nothing where neither colour nor gloss is judged by numbers. `within` is the probability that its
 * colour holds, where that is known.
 */
export function jointDemand(input: JointInput, response: ShiftResponse, within?: number): JointDemand {
  const colour = colourDemand(input, response, within);
  const gloss = glossDemand(input);
  return {
    ...(colour === undefined ? {} : { colour: colour.within }),
    ...(gloss === undefined ? {} : { gloss: gloss.within }),
    incomplete: typeof input.colour !== 'string' && input.colour.missing.length > 0,
    unattainable: [...(colour?.attainable === false ? ['colour' as const] : []), ...(gloss?.attainable === false ? ['gloss' as const] : [])],
    limits: (margins, place) => [
      ...(colour?.attainable === true ? colour.limits(margins.colour, place) : []), ...(gloss?.attainable === true ? gloss.limits(margins.gloss, place) : []),
    ],
  };
}

interface Demand {
  readonly within: number;
  /** Two sides that are alike would be judged to hold: what is wanting is a change, not readings. */
  readonly attainable: boolean;
  readonly limits: (margin: number, place: Place) => readonly MendLimit[];
}

/** Everything that is asked in colour under each required light, the distance of a wanted step or contrast included. */
export function colourDemands(input: JointInput): { readonly pair: ColourPair; readonly demands: readonly LightDemand[] } | undefined {
  const { rule, colour } = input;
  const intent = rule.intent.colour;
  if (typeof colour === 'string' || colour.indicative || intent === 'free' || rule.colour.notJudged !== undefined || rule.colour.standing === 'advisory') return undefined;
  const apart = intent === 'match' ? undefined : nearMissQuestion(input);
  const demands = colourQuestion(input).demands.flatMap((demand, index): LightDemand[] => (demand.standing !== 'required' ? []
    : [{ ...demand, criteria: [...demand.criteria, ...(apart?.demands[index].criteria ?? [])] }]));
  return demands.length === 0 ? undefined : { pair: colour, demands };
}

function colourDemand(input: JointInput, response: ShiftResponse, known: number | undefined): Demand | undefined {
  const asked = colourDemands(input);
  if (asked === undefined) return undefined;
  const { pair, demands } = asked;
  const event = colourEvent(pair, { ...colourQuestion(input), demands });
  const covariance = differenceCovariance(pair.spread);
  const [standard, trial] = input.sides.map((side) => side.part.id);
  const terms = demands.flatMap((demand) => {
    const index = pair.lights.findIndex(({ light }) => light === demand.light);
    if (index < 0) return [];
    const own = lightCovariance(covariance, 3 * pair.lights.length, index);
    return demand.criteria.map((criterion) => ({
      criterion, light: pair.lights[index], state: criterionState(criterion, pair.lights[index].standard, pair.lights[index].trial, own),
      responses: [response(standard, demand.light), response(trial, demand.light)] as const,
    }));
  });
  const { rule, confidence } = input.book.decision;
  const own = differenceCovariance(event.spread);
  const probability = (lights: typeof event.lights): number => (lights.length === 0 ? 1 : stackedProbability({ lights, covariance: own }).all);
  const verdict = (lights: typeof event.lights): boolean => (lights.length === 0 || judgeEvent({ lights, covariance: own }, rule, confidence).verdict === 'holds');
  const within = known ?? probability(event.lights);
  return {
    within,
    // What holds as it is has been attained.
    attainable: input.rule.intent.colour !== 'match' || (rule === 'guarded' && within >= confidence) || verdict(event.lights.map((light) => ({ ...light, trial: light.standard }))),
    limits: (margin, place) => terms.flatMap((term) => criterionLimits(term, margin, place)),
  };
}

interface Term {
  readonly criterion: Criterion;
  readonly light: PairLight;
  readonly state: { readonly uncertainty: number };
  readonly responses: readonly [readonly number[], readonly number[]];
}

function criterionLimits({ criterion, light, state, responses }: Term, margin: number, { joint, items, at, reach }: Place): MendLimit[] {
  const value = (first: Shift, second: Shift): number =>
    criterionValue(criterion, movedLab(light.standard, responses[0], first, at[0]), movedLab(light.trial, responses[1], second, at[1]));
  const rangeIn = (first: ShiftBox, second: ShiftBox): Interval | undefined =>
    criterionRangeIn(criterion, movedBox(light.standard, responses[0], first, at[0]), movedBox(light.trial, responses[1], second, at[1]));
  const [low, high] = criterionRange(criterion);
  const kept = margin * state.uncertainty;
  const limits: MendLimit[] = [];
  if (Number.isFinite(high)) {
    const most = high > 0 ? Math.max(leastShare * high, high - kept) : high - kept;
    const convex = criterion.kind === 'difference' || criterion.component === 'dL' || criterion.component === 'da' || criterion.component === 'db';
    const bound = convex ? {} : { leastExcess: (first: ShiftBox, second: ShiftBox): number => (rangeIn(first, second)?.[0] ?? -Infinity) - most };
    limits.push({ joint, items, convex, ...bound, excess: (first, second) => value(first, second) - most });
  }
  if (Number.isFinite(low)) {
    // A signed component that must not fall below a limit is as straight as one that must not rise above one; a distance is not.
    const convex = criterion.kind === 'component' && criterion.absolute !== true && criterion.component !== 'dC' && criterion.component !== 'dH';
    const least = low < 0 ? Math.min(leastShare * low, low + kept) : low + kept;
    const signed = criterion.kind === 'component' && criterion.absolute === true ? straightRow[criterion.component] : undefined;
    const own = signed === undefined || reach === undefined ? undefined : (first: Shift, second: Shift): number =>
      movedLab(light.trial, responses[1], second, at[1])[signed] - movedLab(light.standard, responses[0], first, at[0])[signed];
    const bound = convex ? {} : { leastExcess: (first: ShiftBox, second: ShiftBox): number => least - (rangeIn(first, second)?.[1] ?? Infinity) };
    limits.push(apart(own, least, { joint, items, reach }) ?? { joint, items, convex, ...bound, excess: (first, second) => least - value(first, second) });
  }
  return limits;
}

/** Where a component that is straight in CIELAB stands in it. */
const straightRow: Readonly<Record<string, 0 | 1 | 2 | undefined>> = { dL: 0, da: 1, db: 2 };

/**
 * A distance that must be kept, of a quantity that is straight in the shifts: a straight limit where within the reach of the two sides it can come to the wanted
 * size on one side of nought only, else one with a choice of the side. Undefined where nothing is known of its sign.
 */
function apart(
  signed: ((first: Shift, second: Shift) => number) | undefined, least: number,
  { joint, items, reach }: Pick<Place, 'joint' | 'items' | 'reach'>,
): MendLimit | undefined {
  if (signed === undefined || reach === undefined || least <= 0) return undefined;
  const [lowest, highest] = rangeOf(signed, reach);
  if (lowest > -least) return { joint, items, convex: true, excess: (first, second) => least - signed(first, second) };
  if (highest < least) return { joint, items, convex: true, excess: (first, second) => least + signed(first, second) };
  return { joint, items, convex: false, apart: { signed, least, range: [lowest, highest] }, excess: (first, second) => least - Math.abs(signed(first, second)) };
}

/** Least and largest value of what is straight in the shifts of two sides within their reach; two sides that are one part count as two. */
function rangeOf(straight: (first: Shift, second: Shift) => number, reach: readonly [MendItem, MendItem]): readonly [number, number] {
  const here = straight(noShift, noShift);
  let [lowest, highest] = [here, here];
  for (const side of [0, 1] as const) {
    for (const axis of [0, 1, 2, 3]) {
      const unit = noShift.map((_, index) => (index === axis ? 1 : 0)) as unknown as Shift;
      const slope = (side === 0 ? straight(unit, noShift) : straight(noShift, unit)) - here;
      const [up, down] = [slope * reach[side].up[axis], -slope * reach[side].down[axis]];
      highest += Math.max(up, down, 0);
      lowest += Math.min(up, down, 0);
    }
  }
  return [lowest, highest];
}

function movedLab(lab: Lab, response: readonly number[], shift: Shift, from: Shift): Lab {
  const [L, a, b] = [shift[0] - from[0], shift[1] - from[1], shift[2] - from[2]];
  return [
    lab[0] + response[0] * L + response[1] * a + response[2] * b,
    lab[1] + response[3] * L + response[4] * a + response[5] * b,
    lab[2] + response[6] * L + response[7] * a + response[8] * b,
  ];
}

/** The colours that a box of shifts comes to. */
function movedBox(lab: Lab, response: readonly number[], { low, high }: ShiftBox, from: Shift): LabBox {
  return [0, 1, 2].map((row): Interval => {
    let own: Interval = [lab[row], lab[row]];
    for (const axis of [0, 1, 2]) own = sumOf(own, scaledOf([low[axis] - from[axis], high[axis] - from[axis]], response[3 * row + axis]));
    return own;
  }) as unknown as LabBox;
}

function glossDemand(input: JointInput): Demand | undefined {
  const { rule } = input;
  if (!rule.gloss.applicable || rule.intent.gloss === 'free' || rule.gloss.standing === 'advisory') return undefined;
  const question = glossQuestion(input);
  if (question === undefined) return undefined;
  const uncertainty = Math.sqrt(scalarDifferenceVariance(question.first, question.second, question.priorReadings, question.instrumentVariance));
  const { within } = question.compare(question.difference, uncertainty);
  const contrast = rule.intent.gloss === 'contrast';
  const limit = rule.gloss.limit * (contrast ? contrastFactor : 1);
  return {
    within,
    attainable: contrast || question.compare(0, uncertainty).within >= input.book.decision.confidence,
    limits: (margin, { joint, items, at, reach }) => {
      const most = contrast ? limit + margin * uncertainty : Math.max(leastShare * limit, limit - margin * uncertainty);
      const signed = (first: Shift, second: Shift): number => question.difference + (second[3] - at[1][3]) - (first[3] - at[0][3]);
      const value = (first: Shift, second: Shift): number => Math.abs(signed(first, second));
      const straight = contrast ? apart(signed, most, { joint, items, reach }) : undefined;
      return [straight ?? { joint, items, convex: !contrast, excess: (first, second) => (contrast ? most - value(first, second) : value(first, second) - most) }];
    },
  };
}

/** The margin that would bring a probability to the one asked for, in standard uncertainties, from that which gave it. */
export function nextMargin(margin: number, within: number, wanted: number): number {
  const held = (probability: number): number => normalQuantile(Math.min(1 - 1e-6, Math.max(1e-6, probability)));
  return Math.min(8, Math.max(-1, margin + held(wanted) - held(within)));
}
