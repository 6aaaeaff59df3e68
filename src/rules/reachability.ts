import type { Material } from '../cabin/cabin.ts';
import { lightByName, localMetric, spectrumToLab } from '../colour/index.ts';
import type { Observer, Spectrum } from '../colour/index.ts';
import type { Issue } from '../issue.ts';
import type { Matrix3 } from '../quantities.ts';
import { labCarrier, multiplyMatrix3, normalCdf, quadraticForm3, quasiNormal, transposeMatrix3 } from '../readings/index.ts';
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
  readonly colour?: Chance;
  readonly gloss?: Chance;
}

type Triple = readonly [L: number, a: number, b: number];

const observer: Observer = 10;
const draws = 256;
const points = 512;
const glossDraws = 4096;
const seed = 4;
/** Mean GU at 60 degrees taken for two shiny materials; the others are taken at their typical low gloss. */
const typicalShine = 85;

/** Even greys from 400 to 700 nm, near L* 27.5 and L* 68: a dark and a light trim colour. The worse of the two counts. */
const greys: readonly Spectrum[] = [0.0527, 0.3798].map((reflectance) => ({ startNm: 400, stepNm: 10, values: Array<number>(31).fill(reflectance) }));

/** Readings that a side's mean stands on: the rotations of a spot are averaged in it. */
const readingsOf = ({ wanted }: MaterialClass): number => wanted.spots * (wanted.rotations ?? 1);

/** Quadratic form of a light's metric, brought to deviations under D65: P' Q P. */
function carriedMetric(metric: Matrix3, carrier: LabCarrier, light: number): Matrix3 {
  const p = carrier.subarray(9 * light, 9 * light + 9);
  return multiplyMatrix3(multiplyMatrix3(transposeMatrix3(p), metric), p);
}

/** Whether a deviation under D65 is within every limit under every light of a rule, by the formula's local metric. */
function limitTest(rule: ResolvedRule, grey: Spectrum): (L: number, a: number, b: number) => boolean {
  const lights = rule.colour.lights.flatMap(({ light, limit, standing }) => {
    const known = lightByName(light);
    return standing === 'required' && known !== undefined ? [{ name: light, light: known, observer, limit, mean: spectrumToLab(grey, known, observer) }] : [];
  });
  const carrier = labCarrier({ spectrum: grey, lights });
  const { formula, kL, kC, kH, l, c, components } = rule.colour;
  const forms = lights.map(({ mean, limit }, index) =>
    ({ form: carriedMetric(localMetric({ name: formula, kL, kC, kH, l, c }, mean, mean), carrier, index), square: limit * limit }));
  const axes = components.flatMap(({ component, min = -Infinity, max = Infinity }) => {
    const row = ['dL', 'da', 'db'].indexOf(component);
    return row < 0 ? [] : lights.map((_, light) => ({ slopes: carrier.subarray(9 * light + 3 * row, 9 * light + 3 * row + 3), min, max }));
  });
  return (L, a, b) => forms.every(({ form, square }) => quadraticForm3(form, L, a, b) <= square)
    && axes.every(({ slopes, min, max }) => {
      const value = slopes[0]! * L + slopes[1]! * a + slopes[2]! * b;
      return value >= min && value <= max;
    });
}

function colourChance(rule: ResolvedRule, grey: Spectrum, variance: Triple, confidence: number): number {
  const inside = limitTest(rule, grey);
  const [L, a, b] = variance.map(Math.sqrt) as [number, number, number];
  const means = quasiNormal(3, draws, seed);
  const noise = quasiNormal(3, points, seed + 1);
  let held = 0;
  for (let draw = 0; draw < 3 * draws; draw += 3) {
    let within = 0;
    for (let point = 0; point < 3 * points; point += 3) {
      if (inside(L * (means[draw]! + noise[point]!), a * (means[draw + 1]! + noise[point + 1]!), b * (means[draw + 2]! + noise[point + 2]!))) within += 1;
    }
    if (within >= confidence * points) held += 1;
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

function pairReachability(compiled: CompiledRuleBook, a: MaterialClass, b: MaterialClass): Reachability {
  const { assumed, decision } = compiled.book;
  const side = (row: MaterialClass): RuleSide => ({ material: row.material, surface: 'solid', zone: '' });
  const intent = { colour: 'match' } as const;
  const share = 2 * (1 - assumed.correlation.different);
  const variances = [0, share].map((instruments) => ([0, 1, 2] as const).map((axis) =>
    a.readingSd[axis] ** 2 / readingsOf(a) + b.readingSd[axis] ** 2 / readingsOf(b) + instruments * assumed.agreementSd[axis] ** 2) as unknown as Triple);
  const [one, two] = variances.map((variance) => Math.min(...greys.map((grey) => {
    const [meanL] = spectrumToLab(grey, lightByName('D65')!, observer);
    const rule = compiled.resolve([side(a), side(b)], { kind: 'edge', intent }, { ...typicalVariables, meanL });
    return rule.colour.notJudged === undefined ? colourChance(rule, grey, variance, decision.confidence) : Number.NaN;
  })));
  const meanGloss = [a, b].every((row) => row.family === shinyFamily) ? typicalShine : typicalVariables.meanGloss;
  const { gloss, intent: wanted } = compiled.resolve([side(a), side(b)], { kind: 'edge', intent }, { ...typicalVariables, meanGloss });
  const glossVariance = (instruments: number): number =>
    a.glossSd ** 2 / a.wanted.spots + b.glossSd ** 2 / b.wanted.spots + instruments * assumed.agreementGlossSd ** 2;
  return {
    materials: [a.material, b.material],
    ...(Number.isNaN(one) ? {} : { colour: { oneInstrument: one!, twoInstruments: two! } }),
    ...(gloss.applicable && wanted.gloss === 'match' ? {
      gloss: { oneInstrument: glossChance(gloss.limit, glossVariance(0), decision.confidence), twoInstruments: glossChance(gloss.limit, glossVariance(share), decision.confidence) },
    } : {}),
  };
}

/**
 * How often identical parts would be called `holds` under the guarded rule, for every material against itself or, with `pairs`, against every
 * other. The spreads are the book's own, taken as known: sd of a reading over the spots wanted, rotations averaged, and
 * for two instruments twice the agreement variance. Seeded and deterministic; the chance is exact to about 0.02. Differences are sized by the
 * formula's local metric; components dC and dH are left out, having no direction at grey.
 */
export function reachability(source: RuleBook, options: { readonly pairs?: boolean } = {}): { readonly rows: readonly Reachability[]; readonly issues: readonly Issue[] } {
  const { value: compiled, issues } = compileRuleBook(source);
  if (compiled === undefined) return { rows: [], issues };
  const { materials } = compiled.book;
  const rows = materials.flatMap((a, index) =>
    (options.pairs === true ? materials.slice(index) : [a]).map((b) => pairReachability(compiled, a, b)));
  return { rows, issues };
}
