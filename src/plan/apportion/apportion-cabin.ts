import type { Cabin } from '../../cabin/cabin.ts';
import type { DifferenceFormula } from '../../colour/difference-formula.ts';
import { formulaLabel } from '../../colour/formula-label.ts';
import { localMetric } from '../../colour/local-metric.ts';
import { jointInput } from '../../harmony/judge-joint.ts';
import { referenceLab } from '../../harmony/joint-variables.ts';
import { judgeContext } from '../../harmony/judge-context.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import type { JudgeOptions } from '../../harmony/judge.ts';
import { partBasis } from '../../harmony/part-bases.ts';
import type { PartBasis } from '../../harmony/part-basis.ts';
import type { Issue } from '../../issue.ts';
import type { Lab, Matrix3 } from '../../quantities.ts';
import { compileRuleBook } from '../../rules/compile-rule-book.ts';
import type { RuleBook } from '../../rules/rule-book.ts';
import { shiftResponse, spectrumOf } from '../mend/shift-response.ts';
import { partOfWork, step } from '../watch.ts';
import type { Watch } from '../watch.ts';
import type { ApportionLimit, ApportionRule } from './apportion-problem.ts';
import { apportionWords, toleranceSheets } from './apportion-words.ts';
import type { ToleranceSheet } from './apportion-words.ts';
import { worstOnBoundary } from './drawn-parts.ts';
import { ellipsoidOf, semiAxes } from './ellipsoid.ts';
import type { Ellipsoid } from './ellipsoid.ts';
import { evenRadii } from './even-radii.ts';
import type { EvenRadii } from './even-radii.ts';
import { simulateTolerances } from './simulate-tolerances.ts';
import type { Simulated } from './simulate-tolerances.ts';
import { statisticalLaw } from './statistical-law.ts';
import type { StatisticalLaw } from './statistical-law.ts';
import { standsByMaster, targetBases } from './target-bases.ts';
import type { TargetKind } from './target-bases.ts';
import { glossLimit, limitsOfTerm, toleranceTerms } from './tolerance-limits.ts';
import type { ToleranceTerm } from './tolerance-limits.ts';

export interface ApportionOptions extends JudgeOptions {
  /** Worst case where absent. */
  readonly rule?: ApportionRule;
  /** What tolerances are laid about; the masters where absent. */
  readonly about?: TargetKind;
  /** How much tolerance a supplier asks for beside the others, above 0; 1 where absent. */
  readonly shares?: Readonly<Record<string, number>>;
  /** By squares: share of the parts that suppliers keep in tolerance, and share of the cabins in which a joint is to hold; 0.5 to below 1, 0.95 where absent. */
  readonly inTolerance?: number;
  readonly confidence?: number;
  /** No radius is larger; 3 where absent. */
  readonly mostRadius?: number;
  /** Cabins drawn for the check of the tolerances; 2000 where absent. */
  readonly draws?: number;
}

/** The tolerance of one part. */
export interface PartTolerance {
  readonly id: string;
  readonly supplier: string;
  /** In units of `formula` about the target; undefined where no joint limits it. */
  readonly radius: number | undefined;
  readonly formula: string;
  readonly about: 'master' | 'present' | 'no colour';
  /** CIELAB under D65 that the tolerance is laid about. */
  readonly target: Lab | undefined;
  /** The ellipsoid is { x : x' metric x <= radius^2 }. */
  readonly metric: Matrix3 | undefined;
  /** Half its lengths, the longest first, CIELAB units. */
  readonly halfAxes: readonly number[];
  /** Plus or minus, gloss units; undefined where no joint limits it. */
  readonly glossBand: number | undefined;
  /** Joints that hold its radius where it is. */
  readonly heldBy: readonly string[];
  /** What the part is held to against its master now, its own limit or that of its material; undefined where nothing is stated. */
  readonly heldTo: { readonly colour?: number; readonly gloss?: number };
}

/** Tolerances for every part: plain data. */
export interface ApportionPlan {
  readonly rule: ApportionRule;
  /** By squares: how parts scatter and how often joints are to hold; undefined for worst case. */
  readonly law: StatisticalLaw | undefined;
  readonly parts: readonly PartTolerance[];
  /** Joints that limit a radius, the tightest first; and those that limit a gloss band. */
  readonly bottlenecks: readonly string[];
  readonly glossBottlenecks: readonly string[];
  /** Joints whose targets are outside the limit: no tolerance can make them hold, and they are left out. */
  readonly targetsClash: readonly string[];
  /** Joints that no search on the boundary of two tolerances took out of their limits; worst case only. */
  readonly confirmed: { readonly joints: number; readonly worstExcess: number; readonly rounds: number } | undefined;
  readonly simulated: Simulated;
  readonly sheets: readonly ToleranceSheet[];
  readonly words: readonly string[];
  readonly issues: readonly Issue[];
}

/** Largest radius that is given out, in units of the formula: beyond it the local metric says little. Assumption, no source. */
const usualMostRadius = 3;
/** Times that limits are tightened where the search on the boundary finds the local metric too kind. */
const mostRounds = 8;
/** An excess this small counts as none, in units of the limit. */
const smallExcess = 1e-3;

interface Parts {
  readonly context: JudgeContext;
  readonly bases: ReadonlyMap<string, PartBasis>;
  readonly index: ReadonlyMap<string, number>;
  readonly shapes: readonly (Ellipsoid | undefined)[];
  readonly formulas: readonly DifferenceFormula[];
}

/**
 * Gives every part a tolerance in colour and gloss so that any two parts in tolerance hold at their joint, as large and as even as can be.
 * Colours are true ones: what measuring adds comes on top. Deterministic.
 */
export async function apportionCabin(cabin: Cabin, book: RuleBook, options: ApportionOptions = {}, watch?: Watch): Promise<ApportionPlan> {
  const rule = options.rule ?? 'worst case';
  const law = rule === 'statistical' ? statisticalLaw(options) : undefined;
  const parts = onTarget(cabin, book, options);
  const response = shiftResponse(parts.context, parts.bases, (part) => spectrumOf(parts.context, parts.bases.get(part)));
  const terms: ToleranceTerm[] = [];
  const gloss: ApportionLimit[] = [];
  for (const [index, joint] of cabin.joints.entries()) {
    await step(watch, (0.3 * index) / cabin.joints.length, 'laying out the joints');
    const { input } = jointInput(parts.context, joint, parts.bases);
    const items = input.sides.map((side) => parts.index.get(side.part.id)!) as unknown as readonly [number, number];
    terms.push(...toleranceTerms(index, input, response));
    const band = glossLimit(index, input, items);
    if (band !== undefined) gloss.push(band);
  }
  const shares = cabin.parts.map((part) => options.shares?.[parts.bases.get(part.id)!.source.supplier] ?? 1);
  const most = cabin.parts.map(() => options.mostRadius ?? usualMostRadius);
  const mostBand = cabin.parts.map(() => Infinity);
  const clashing = new Set<number>();
  const usable = (limits: readonly ApportionLimit[]): ApportionLimit[] => {
    for (const limit of limits) if (limit.limit < limit.offset) clashing.add(limit.joint);
    return limits.filter((limit) => limit.limit >= limit.offset);
  };
  const itemsOf = (term: ToleranceTerm): readonly [number, number] => [parts.index.get(term.parts[0])!, parts.index.get(term.parts[1])!];
  const shapesOf = (term: ToleranceTerm): readonly [Ellipsoid, Ellipsoid] => [parts.shapes[itemsOf(term)[0]]!, parts.shapes[itemsOf(term)[1]]!];
  const judged = terms.filter((term) => itemsOf(term).every((item) => parts.shapes[item] !== undefined));
  const perTerm = judged.map((term) => limitsOfTerm(term, itemsOf(term), shapesOf(term)));
  const brokenTerm = perTerm.map((limits) => limits.some((limit) => limit.limit < limit.offset));
  usable(perTerm.flat());
  const tighter = judged.map(() => law?.colourFactor ?? 1);
  let radii: EvenRadii;
  let limits: ApportionLimit[];
  let confirmed: ApportionPlan['confirmed'];
  for (let round = 1; ; round++) {
    limits = usable(perTerm.flatMap((own, index) => own.map((limit) => ({ ...limit, scales: [limit.scales[0] * tighter[index], limit.scales[1] * tighter[index]] as const }))));
    radii = evenRadii({ shares, most, limits }, rule);
    if (rule === 'statistical') break;
    await step(watch, 0.3 + (0.5 * round) / mostRounds, 'searching the boundaries of the tolerances');
    let worstExcess = -Infinity;
    const sized = judged.map((term) => itemsOf(term).map((item) => Math.min(1e3, radii.radii[item])) as unknown as readonly [number, number]);
    let found = false;
    judged.forEach((term, index) => {
      if (brokenTerm[index]) return;
      const excess = worstOnBoundary(term, shapesOf(term), sized[index]);
      worstExcess = Math.max(worstExcess, excess);
      if (excess <= smallExcess) return;
      found = true;
      const room = Math.max(0.02, ...perTerm[index].map((limit) => limit.limit - limit.offset));
      tighter[index] *= 1 + Math.max(0.005, Math.min(0.5, (1.1 * excess) / room));
    });
    confirmed = { joints: new Set(judged.filter((_, index) => !brokenTerm[index]).map((term) => term.joint)).size, worstExcess: Number.isFinite(worstExcess) ? worstExcess : 0, rounds: round };
    if (!found || round === mostRounds) break;
  }
  const usableGloss = usable(gloss);
  const bandLimits = law === undefined ? usableGloss : usableGloss.map((limit) => ({ ...limit, scales: [limit.scales[0] * law.glossFactor, limit.scales[1] * law.glossFactor] as const }));
  const bands = evenRadii({ shares, most: mostBand, limits: bandLimits }, rule);
  const simulated = await simulateTolerances({
    law, terms: judged.filter((term) => !clashing.has(term.joint)), itemsOf, shapes: parts.shapes, radii: radii.radii, gloss: usableGloss.filter((limit) => !clashing.has(limit.joint)), bands: bands.radii,
    joints: cabin.joints.map((joint) => joint.id), draws: options.draws ?? 2000,
  }, partOfWork(watch, 0.8, 1));
  const jointIds = (indices: readonly number[], of: readonly ApportionLimit[]): readonly string[] => [...new Set(indices.map((index) => cabin.joints[of[index].joint].id))];
  const tolerances = cabin.parts.map((part, index): PartTolerance => {
    const basis = parts.bases.get(part.id)!;
    const shape = parts.shapes[index];
    const limited = limits.some((limit) => limit.items.includes(index));
    const radius = limited && shape !== undefined && Number.isFinite(radii.radii[index]) ? radii.radii[index] : undefined;
    return {
      id: part.id, supplier: basis.source.supplier, radius, formula: formulaLabel(parts.formulas[index]),
      about: shape === undefined ? 'no colour' : standsByMaster(basis) ? 'master' : 'present',
      target: referenceLab(parts.context, basis), metric: shape?.metric, halfAxes: radius === undefined || shape === undefined ? [] : semiAxes(shape).map((axis) => axis * radius),
      glossBand: Number.isFinite(bands.radii[index]) ? bands.radii[index] : undefined,
      heldTo: limitsNow(basis),
      heldBy: jointIds(radii.bottlenecks.filter((limit) => limits[limit].items.includes(index)), limits),
    };
  });
  const plan = {
    rule, law, parts: tolerances, bottlenecks: jointIds(radii.bottlenecks, limits), glossBottlenecks: jointIds(bands.bottlenecks, usableGloss),
    targetsClash: [...clashing].sort((a, b) => a - b).map((index) => cabin.joints[index].id), confirmed, simulated, issues: termIssues(cabin, options),
  };
  return { ...plan, sheets: toleranceSheets(plan, cabin, parts.context), words: apportionWords(plan, cabin, parts.context) };
}

function limitsNow({ part: { target }, materialClass }: PartBasis): PartTolerance['heldTo'] {
  const [colour, gloss] = [target?.colourLimit ?? materialClass?.masterColourLimit, target?.glossLimit ?? materialClass?.masterGlossLimit];
  return { ...(colour === undefined ? {} : { colour }), ...(gloss === undefined ? {} : { gloss }) };
}

function onTarget(cabin: Cabin, book: RuleBook, options: ApportionOptions): Parts {
  const { value: rules, issues } = compileRuleBook(book);
  if (rules === undefined) throw new RangeError(`rule book ${book.id} does not compile: ${issues[0]?.code ?? 'unknown fault'}`);
  const context = judgeContext(cabin, rules, options.stage ?? cabin.stage ?? 'new', options.asOf ?? cabin.asOf);
  const bases = targetBases(cabin, context, new Map(cabin.parts.map((part) => [part.id, partBasis(context, part)])), options.about ?? 'master');
  const formulas = cabin.parts.map((part): DifferenceFormula => (book.formula === 'cmc'
    ? { name: 'cmc', l: book.cmc?.l ?? 2, c: book.cmc?.c ?? 1 } : { name: book.formula, kL: bases.get(part.id)!.materialClass?.kL ?? 1 }));
  const shapes = cabin.parts.map((part, index) => {
    const target = referenceLab(context, bases.get(part.id)!);
    return target === undefined ? undefined : ellipsoidOf(localMetric(formulas[index], target, target));
  });
  return { context, bases, formulas, shapes, index: new Map(cabin.parts.map((part, index) => [part.id, index])) };
}

function termIssues(cabin: Cabin, options: ApportionOptions): readonly Issue[] {
  const suppliers = new Set(cabin.parts.flatMap((part) => part.sources.map((source) => source.supplier)));
  const bad = (path: string, found: number, expected: string): Issue => ({ code: 'bad-number', severity: 'error', path, found: String(found), expected });
  const isShare = (value: number | undefined): boolean => value === undefined || (value >= 0.5 && value < 1);
  return [
    ...(isShare(options.inTolerance) ? [] : [bad('in-tolerance', options.inTolerance!, 'a share of 0.5 to below 1')]),
    ...(isShare(options.confidence) ? [] : [bad('confidence', options.confidence!, 'a share of 0.5 to below 1')]),
    ...(options.mostRadius === undefined || options.mostRadius > 0 ? [] : [bad('most-radius', options.mostRadius, 'a number above 0')]),
    ...Object.entries(options.shares ?? {}).flatMap(([supplier, share]): Issue[] => [
      ...(suppliers.has(supplier) ? [] : [{ code: 'unknown-supplier', severity: 'error' as const, path: 'capability', found: supplier, expected: `one of ${[...suppliers].join(', ')}` }]),
      ...(share > 0 && Number.isFinite(share) ? [] : [bad(`capability ${supplier}`, share, 'a number above 0')]),
    ]),
  ];
}
