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
import { ellipsoidOf, semiAxes } from './ellipsoid.ts';
import type { Ellipsoid } from './ellipsoid.ts';
import { evenRadii } from './even-radii.ts';
import { colourJoints, radiiBySquares } from './radii-by-squares.ts';
import type { BySquares } from './radii-by-squares.ts';
import { simulateTolerances } from './simulate-tolerances.ts';
import type { Simulated } from './simulate-tolerances.ts';
import { statisticalLaw } from './statistical-law.ts';
import type { StatisticalLaw } from './statistical-law.ts';
import { standsByMaster, targetBases } from './target-bases.ts';
import type { TargetKind } from './target-bases.ts';
import { glossLimit, limitsOfTerm, toleranceTerms } from './tolerance-limits.ts';
import type { ToleranceTerm } from './tolerance-limits.ts';
import { worstCaseRadii } from './worst-case-radii.ts';
import type { LimitedTerm, WorstCase } from './worst-case-radii.ts';

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
  readonly confirmed: WorstCase['confirmed'] | undefined;
  /** Share of the cabins in which a joint is outside its limits, as reckoned over all its lights and limits together, the largest first; by squares only. */
  readonly reckoned: readonly { readonly joint: string; readonly share: number }[] | undefined;
  readonly simulated: Simulated;
  readonly sheets: readonly ToleranceSheet[];
  readonly words: readonly string[];
  readonly issues: readonly Issue[];
}

/** Largest radius that is given out, in units of the formula: beyond it the local metric says little. Assumption, no source. */
const usualMostRadius = 3;

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
export async function apportionCabin(cabin: Cabin, book: RuleBook, asked: ApportionOptions = {}, watch?: Watch): Promise<ApportionPlan> {
  const rule = asked.rule ?? 'worst case';
  const issues = termIssues(cabin, asked);
  // Terms that are refused are reported, and the plan is made as if they had not been asked.
  const options = issues.length === 0 ? asked : { ...asked, shares: {}, inTolerance: undefined, confidence: undefined, mostRadius: undefined };
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
  const limited = limitedTerms(parts, terms);
  const usableGloss = gloss.filter(({ limit, offset }) => limit >= offset);
  const clashing = new Set([...limited.filter(({ broken }) => broken).map(({ term }) => term.joint), ...gloss.filter(({ limit, offset }) => limit < offset).map(({ joint }) => joint)]);
  const laid = await layTolerances(law, { shares, most, limited, gloss: usableGloss }, partOfWork(watch, 0.3, 0.8));
  const { radii, bands, confirmed, reckoned } = laid;
  const simulated = await simulateTolerances({
    law, terms: limited.filter(({ term }) => !clashing.has(term.joint)), shapes: parts.shapes, radii, gloss: usableGloss.filter((limit) => !clashing.has(limit.joint)), bands,
    joints: cabin.joints.map((joint) => joint.id), draws: options.draws ?? 2000,
  }, partOfWork(watch, 0.8, 1));
  const jointIds = (joints: readonly number[]): readonly string[] => [...new Set(joints.map((index) => cabin.joints[index].id))];
  const limitedParts = new Set(limited.filter(({ broken }) => !broken).flatMap(({ items }) => items));
  const heldBy = new Map<string, number[]>();
  for (const joint of laid.bottlenecks) for (const part of cabin.joints[joint].parts) heldBy.set(part, [...(heldBy.get(part) ?? []), joint]);
  const tolerances = cabin.parts.map((part, index): PartTolerance => {
    const basis = parts.bases.get(part.id)!;
    const shape = parts.shapes[index];
    const radius = limitedParts.has(index) && shape !== undefined && Number.isFinite(radii[index]) ? radii[index] : undefined;
    return {
      id: part.id, supplier: basis.source.supplier, radius, formula: formulaLabel(parts.formulas[index]),
      about: shape === undefined ? 'no colour' : standsByMaster(basis) ? 'master' : 'present',
      target: referenceLab(parts.context, basis), metric: shape?.metric, halfAxes: radius === undefined || shape === undefined ? [] : semiAxes(shape).map((axis) => axis * radius),
      glossBand: Number.isFinite(bands[index]) ? bands[index] : undefined,
      heldTo: limitsNow(basis),
      heldBy: jointIds(heldBy.get(part.id) ?? []),
    };
  });
  const plan = {
    rule, law, parts: tolerances, bottlenecks: jointIds(laid.bottlenecks), glossBottlenecks: jointIds(laid.glossBottlenecks),
    targetsClash: [...clashing].sort((a, b) => a - b).map((index) => cabin.joints[index].id), confirmed, simulated, issues,
    reckoned: reckoned === undefined ? undefined : [...reckoned].map(([joint, share]) => ({ joint: cabin.joints[joint].id, share })).sort((a, b) => b.share - a.share),
  };
  return { ...plan, sheets: toleranceSheets(plan, cabin, parts.context), words: apportionWords(plan, cabin, parts.context) };
}

/** The terms of joints both of whose parts have a colour, with their limits. */
function limitedTerms(parts: Parts, terms: readonly ToleranceTerm[]): readonly LimitedTerm[] {
  return terms.flatMap((term): LimitedTerm[] => {
    const items = term.parts.map((part) => parts.index.get(part)!) as unknown as readonly [number, number];
    const [first, second] = [parts.shapes[items[0]], parts.shapes[items[1]]];
    if (first === undefined || second === undefined) return [];
    const limits = limitsOfTerm(term, items, [first, second]);
    return [{ term, items, shapes: [first, second], limits, broken: limits.some(({ limit, offset }) => limit < offset) }];
  });
}

async function layTolerances(
  law: StatisticalLaw | undefined,
  { shares, most, limited, gloss }: { readonly shares: readonly number[]; readonly most: readonly number[]; readonly limited: readonly LimitedTerm[]; readonly gloss: readonly ApportionLimit[] },
  watch: Watch | undefined,
): Promise<Omit<BySquares, 'reckoned'> & { readonly confirmed?: WorstCase['confirmed']; readonly reckoned?: BySquares['reckoned'] }> {
  if (law !== undefined) return radiiBySquares({ law, shares, most, colour: colourJoints(limited), gloss }, watch);
  const worst = await worstCaseRadii(limited, shares, most, watch);
  const bands = evenRadii({ shares, most: shares.map(() => Infinity), limits: gloss }, 'worst case');
  return { ...worst, bands: bands.radii, glossBottlenecks: bands.bottlenecks.map((limit) => gloss[limit].joint) };
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
