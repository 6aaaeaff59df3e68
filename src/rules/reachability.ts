import type { Material } from '../cabin/cabin.ts';
import { lightByName, localMetric, spectrumToLab } from '../colour/index.ts';
import type { Observer, Spectrum } from '../colour/index.ts';
import type { Issue } from '../issue.ts';
import type { Matrix3 } from '../quantities.ts';
import { labCarrier, multiplyMatrix3, normalCdf, quasiNormal, transposeMatrix3 } from '../readings/index.ts';
import type { LabCarrier } from '../readings/index.ts';
import { compileRuleBook } from './compile-rule-book.ts';
import type { CompiledRuleBook } from './compile-rule-book.ts';
import { shinyFamily } from './default-intent.ts';
import { typicalVariables } from './expression-range.ts';
import type { MaterialClass, ResolvedRule, RuleBook, RuleSide } from './rule-book.ts';

/** Chance that a check of two identical parts is called `holds`. */
export interface Chance {
  /** Both sides in one session of one instrument. */
  readonly oneInstrument: number;
  /** Two instruments without agreement sets. */
  readonly twoInstruments: number;
}

/** How a book fares on identical parts of two materials, by its assumed spreads and the readings it wants. Absent where the check is not
 * applicable or, for gloss, not wanted by default. */
export interface Reachability {
  readonly materials: readonly [Material, Material];
  /**
   * Spots wanted of each material beside the other: those of its own row, and more of the side whose mean is the noisier where
   * identical parts would else hold in colour on one instrument in less than {@link aimedChance}; the book's `maximumSpots` at most.
   */
  readonly spots: readonly [number, number];
  readonly colour?: Chance;
  readonly gloss?: Chance;
}

/** The rows of a book, or the faults for which it has none. */
export interface ReachabilityResult {
  readonly rows: readonly Reachability[];
  readonly issues: readonly Issue[];
}

type Triple = readonly [L: number, a: number, b: number];

/** Chance at which identical parts shall be called `holds` on one instrument, by the spots that a pair is asked for. */
export const aimedChance = 0.9;

const observer: Observer = 10;
const draws = 256;
const points = 512;
const glossDraws = 4096;
const seed = 4;
/** Mean GU at 60 degrees taken for two shiny materials; the others are taken at their typical low gloss. */
const typicalShine = 85;

/** Standard normal triples: deviations of the two means, and what they may be in truth. */
interface Draws {
  readonly means: Float64Array;
  readonly noise: Float64Array;
}

/** Even greys from 400 to 700 nm, near L* 27.5 and L* 68: a dark and a light trim colour. The worse of the two counts. */
const greys: readonly Spectrum[] = [0.0527, 0.3798].map((reflectance) => ({ startNm: 400, stepNm: 10, values: Array<number>(31).fill(reflectance) }));

/** Variance of the mean of so many spots of a material: the rotations of a spot are averaged in it. */
const meanVariance = ({ readingSd, wanted }: MaterialClass, spots: number): Triple =>
  readingSd.map((sd) => sd ** 2 / (spots * (wanted.rotations ?? 1))) as unknown as Triple;

const total = (variance: Triple): number => variance[0] + variance[1] + variance[2];

/** Quadratic form of a light's metric, brought to deviations under D65: P' Q P. */
function carriedMetric(metric: Matrix3, carrier: LabCarrier, light: number): Matrix3 {
  const p = carrier.subarray(9 * light, 9 * light + 9);
  return multiplyMatrix3(multiplyMatrix3(transposeMatrix3(p), metric), p);
}

/** Whether a deviation under D65 is within every limit under every light of a rule, by the formula's local metric. */
type LimitTest = (L: number, a: number, b: number) => boolean;

function limitTest(rule: ResolvedRule, grey: Spectrum): LimitTest {
  const lights = rule.colour.lights.flatMap(({ light, limit, standing }) => {
    const known = lightByName(light);
    return standing === 'required' && known !== undefined ? [{ name: light, light: known, observer, limit, mean: spectrumToLab(grey, known, observer) }] : [];
  });
  const carrier = labCarrier({ spectrum: grey, lights });
  const { formula, kL, kC, kH, l, c, components } = rule.colour;
  // Six entries a light: the quadratic form over the squared limit, each entry off the diagonal with its twin.
  const forms = Float64Array.from(lights.flatMap(({ mean, limit }, index) => {
    const form = carriedMetric(localMetric({ name: formula, kL, kC, kH, l, c }, mean, mean), carrier, index);
    return [form[0], form[4], form[8], form[1] + form[3], form[2] + form[6], form[5] + form[7]].map((entry) => entry / limit ** 2);
  }));
  // Five entries a component and light: its slopes along L*, a*, b* and its two limits.
  const axes = Float64Array.from(components.flatMap(({ component, min = -Infinity, max = Infinity }) => {
    const row = ['dL', 'da', 'db'].indexOf(component);
    return row < 0 ? [] : lights.flatMap((_, light) => [...carrier.subarray(9 * light + 3 * row, 9 * light + 3 * row + 3), min, max]);
  }));
  return (L, a, b) => {
    for (let at = 0; at < forms.length; at += 6) {
      const value = forms[at]! * L * L + forms[at + 1]! * a * a + forms[at + 2]! * b * b + forms[at + 3]! * L * a + forms[at + 4]! * L * b + forms[at + 5]! * a * b;
      if (value > 1) return false;
    }
    for (let at = 0; at < axes.length; at += 5) {
      const value = axes[at]! * L + axes[at + 1]! * a + axes[at + 2]! * b;
      if (value < axes[at + 3]! || value > axes[at + 4]!) return false;
    }
    return true;
  };
}

function colourChance(inside: LimitTest, variance: Triple, confidence: number, { means, noise }: Draws): number {
  const [L, a, b] = variance.map(Math.sqrt) as [number, number, number];
  let held = 0;
  for (let draw = 0; draw < 3 * draws; draw += 3) {
    let outside = 0;
    for (let point = 0; point < 3 * points && outside <= (1 - confidence) * points; point += 3) {
      if (!inside(L * (means[draw]! + noise[point]!), a * (means[draw + 1]! + noise[point + 1]!), b * (means[draw + 2]! + noise[point + 2]!))) outside += 1;
    }
    if (outside <= (1 - confidence) * points) held += 1;
  }
  return held / draws;
}

function glossChance(limit: number, variance: number, confidence: number): number {
  const sd = Math.sqrt(variance);
  const normals = quasiNormal(1, glossDraws, seed);
  let held = 0;
  for (let draw = 0; draw < glossDraws; draw += 1) {
    const mean = sd * normals[draw]!;
    if (normalCdf((limit - mean) / sd) - normalCdf((-limit - mean) / sd) >= confidence) held += 1;
  }
  return held / glossDraws;
}

function pairReachability(compiled: CompiledRuleBook, a: MaterialClass, b: MaterialClass, drawn: Draws): Reachability {
  const { assumed, decision: { confidence } } = compiled.book;
  const side = (row: MaterialClass): RuleSide => ({ material: row.material, surface: 'solid', zone: '' });
  const sides = [side(a), side(b)] as const;
  const edge = { kind: 'edge', intent: { colour: 'match' } } as const;
  const share = 2 * (1 - assumed.correlation.different);
  const tests = greys.flatMap((grey) => {
    const [meanL] = spectrumToLab(grey, lightByName('D65')!, observer);
    const rule = compiled.resolve(sides, edge, { ...typicalVariables, meanL });
    return rule.colour.notJudged === undefined ? [limitTest(rule, grey)] : [];
  });
  const chance = (spots: readonly [number, number], instruments: number): number => {
    const [p, q] = [meanVariance(a, spots[0]), meanVariance(b, spots[1])];
    const variance = p.map((own, axis) => own + q[axis]! + instruments * assumed.agreementSd[axis]! ** 2) as unknown as Triple;
    return Math.min(...tests.map((inside) => colourChance(inside, variance, confidence, drawn)));
  };
  const judged = tests.length === greys.length;
  const spots = judged ? spotsForPair(a, b, assumed.maximumSpots, (each) => chance(each, 0)) : [a.wanted.spots, b.wanted.spots] as const;
  const meanGloss = [a, b].every((row) => row.family === shinyFamily) ? typicalShine : typicalVariables.meanGloss;
  const { gloss, intent: wanted } = compiled.resolve(sides, edge, { ...typicalVariables, meanGloss });
  const glossVariance = (instruments: number): number =>
    a.glossSd ** 2 / spots[0] + b.glossSd ** 2 / spots[1] + instruments * assumed.agreementGlossSd ** 2;
  return {
    materials: [a.material, b.material],
    spots,
    ...(judged ? { colour: { oneInstrument: chance(spots, 0), twoInstruments: chance(spots, share) } } : {}),
    ...(gloss.applicable && wanted.gloss === 'match' ? {
      gloss: { oneInstrument: glossChance(gloss.limit, glossVariance(0), confidence), twoInstruments: glossChance(gloss.limit, glossVariance(share), confidence) },
    } : {}),
  };
}

/** One spot more of the noisier side at a time, until the chance is what it shall be. */
function spotsForPair(a: MaterialClass, b: MaterialClass, most: number, chance: (spots: readonly [number, number]) => number): readonly [number, number] {
  let spots: readonly [number, number] = [a.wanted.spots, b.wanted.spots];
  while (chance(spots) < aimedChance) {
    const same = a.material === b.material;
    const first = total(meanVariance(a, spots[0])) > total(meanVariance(b, spots[1]));
    const next: readonly [number, number] = [spots[0] + (same || first ? 1 : 0), spots[1] + (same || !first ? 1 : 0)];
    if (Math.max(...next) > most) break;
    spots = next;
  }
  return spots;
}

/**
 * How often identical parts would be called `holds` under the guarded rule, for every material against itself or, with `pairs`, against every
 * other. The spreads are the book's own, taken as known: sd of a reading over the spots wanted of the pair, rotations averaged, and
 * for two instruments twice the agreement variance. Seeded and deterministic; the chance is exact to about 0.02. Differences are sized by the
 * formula's local metric; components dC and dH are left out, having no direction at grey.
 * A book object is computed once; books are never changed in place.
 */
export function reachability(source: RuleBook, { pairs = false }: { readonly pairs?: boolean } = {}): ReachabilityResult {
  const known = pairs ? knownOfPairs : knownOfMaterials;
  const result = known.get(source) ?? computed(source, pairs);
  known.set(source, result);
  return result;
}

const knownOfMaterials = new WeakMap<RuleBook, ReachabilityResult>();
const knownOfPairs = new WeakMap<RuleBook, ReachabilityResult>();

function computed(source: RuleBook, pairs: boolean): ReachabilityResult {
  const { value: compiled, issues } = compileRuleBook(source);
  if (compiled === undefined) return { rows: [], issues };
  const { materials } = compiled.book;
  const drawn: Draws = { means: quasiNormal(3, draws, seed), noise: quasiNormal(3, points, seed + 1) };
  const rows = materials.flatMap((a, index) =>
    (pairs ? materials.slice(index) : [a]).map((b) => pairReachability(compiled, a, b, drawn)));
  return { rows, issues };
}
