import { describe, expect, it } from 'vitest';
import { labToXyz, lightByName, spectrumToLab, weightsFor } from '../../src/colour/index.ts';
import type { Lab } from '../../src/quantities.ts';
import { decide, matchCriteria, normalCdf, pooledCovariance, pooledVariance, sampleCovariance, stackedProbability } from '../../src/readings/index.ts';
import { builtInRuleBooks, compileRuleBook, reachability, reachabilityRows, ruleBookById, typicalVariables } from '../../src/rules/index.ts';
import type { MaterialClass, ResolvedRule } from '../../src/rules/index.ts';

/** Seeded normals by the polar method over a linear congruential generator: independent of the product's own. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return (state + 0.5) / 2 ** 32;
  };
  return () => {
    for (;;) {
      const [x, y] = [2 * uniform() - 1, 2 * uniform() - 1];
      const square = x * x + y * y;
      if (square > 0 && square < 1) return x * Math.sqrt((-2 * Math.log(square)) / square);
    }
  };
}

const experiments = 100;
const solid = (material: string) => ({ material, surface: 'solid' as const, zone: '' });
const prior = 8;

/** Readings of one side under all lights, as if each light showed the deviation of D65 unchanged. */
function side(next: () => number, sd: readonly number[], spots: number, rotations: number): { readonly mean: readonly number[]; readonly spread: Float64Array } {
  const readings = Array.from({ length: spots }, () => sd.map((each) =>
    Array.from({ length: rotations }, () => each * next()).reduce((sum, value) => sum + value, 0) / rotations));
  const mean = sd.map((_, axis) => readings.reduce((sum, reading) => sum + reading[axis]!, 0) / spots);
  const assumed = sd.flatMap((each, row) => sd.map((_, column) => (row === column ? each ** 2 / rotations : 0)));
  return { mean, spread: pooledCovariance(assumed, sampleCovariance(readings), spots, prior).map((entry) => entry / spots) };
}

function shareThatHolds(rule: ResolvedRule, row: MaterialClass, centre: Lab, seed: number): number {
  const next = normals(seed);
  const required = rule.colour.lights.filter((light) => light.standing === 'required');
  const { formula, kL, kC, kH, l, c, components } = rule.colour;
  const size = 3 * required.length;
  let held = 0;
  for (let run = 0; run < experiments; run += 1) {
    const [p, q] = [0, 1].map(() => side(next, row.readingSd, row.wanted.spots, row.wanted.rotations ?? 1)) as [ReturnType<typeof side>, ReturnType<typeof side>];
    const covariance = Float64Array.from({ length: size * size }, (_, at) => {
      const entry = 3 * (Math.floor(at / size) % 3) + ((at % size) % 3);
      return p.spread[entry]! + q.spread[entry]!;
    });
    const moved = (mean: readonly number[]): Lab => [centre[0] + mean[0]!, centre[1] + mean[1]!, centre[2] + mean[2]!];
    const lights = required.map(({ limit }) => ({
      standard: moved(p.mean), trial: moved(q.mean), criteria: matchCriteria({ name: formula, kL, kC, kH, l, c }, limit, components),
    }));
    const within = stackedProbability({ lights, covariance, points: 1024 }).all;
    if (decide({ rule: 'guarded', confidence: 0.95, within, excess: -Infinity, inside: true }) === 'holds') held += 1;
  }
  return held / experiments;
}

const books = builtInRuleBooks.map((book) => ({ book, compiled: compileRuleBook(book).value! }));
const cases = books.flatMap(({ book, compiled }) => book.materials.map((row) => ({ title: `${row.material} in ${book.id}`, row, compiled })));

describe('identical parts on one instrument', () => {
  // Dark grey and beige of common trim; invented colours.
  it.each(cases)('hold in colour in 90 % of seeded experiments: $title', ({ row, compiled }) => {
    for (const centre of [[27.5, 0.2, -0.6], [68, 3.2, 14.5]] as const) {
      const rule = compiled.resolve([solid(row.material), solid(row.material)], { kind: 'edge' }, { ...typicalVariables, meanL: centre[0] });
      expect(shareThatHolds(rule, row, centre, 17)).toBeGreaterThanOrEqual(0.9);
    }
  });

  it.each(cases)('hold in gloss in 90 % of seeded experiments, if it applies: $title', ({ row, compiled }) => {
    for (const meanGloss of row.family === 'shiny' ? [85, 60] : [2, 12]) {
      const { gloss } = compiled.resolve([solid(row.material), solid(row.material)], { kind: 'edge' }, { ...typicalVariables, meanGloss });
      if (!gloss.applicable) {
        expect(row.family).toBe('pile');
        continue;
      }
      const next = normals(23);
      let held = 0;
      for (let run = 0; run < 2000; run += 1) {
        const sides = [0, 1].map(() => {
          const readings = Array.from({ length: row.wanted.spots }, () => row.glossSd * next());
          const mean = readings.reduce((sum, value) => sum + value, 0) / readings.length;
          const sample = readings.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (readings.length - 1);
          return { mean, variance: pooledVariance(row.glossSd ** 2, sample, readings.length, prior) / readings.length };
        });
        const [difference, sd] = [sides[1]!.mean - sides[0]!.mean, Math.sqrt(sides[0]!.variance + sides[1]!.variance)];
        const within = normalCdf((gloss.limit - difference) / sd) - normalCdf((-gloss.limit - difference) / sd);
        if (within >= 0.95) held += 1;
      }
      expect(held / 2000).toBeGreaterThanOrEqual(0.9);
    }
  });
});

describe('reachability', () => {
  const { rows, issues } = reachability(ruleBookById('ciede2000')!);

  it('gives every material a chance on one instrument and a smaller one on two', () => {
    expect(issues).toEqual([]);
    expect(rows.map(({ materials: [a, b] }) => [a, b])).toEqual(ruleBookById('ciede2000')!.materials.map(({ material }) => [material, material]));
    for (const { colour, gloss } of rows) {
      for (const chance of [colour, gloss]) {
        if (chance === undefined) continue;
        expect(chance.oneInstrument).toBeGreaterThanOrEqual(0.9);
        expect(chance.twoInstruments).toBeLessThanOrEqual(chance.oneInstrument);
      }
    }
    expect(rows.filter(({ gloss }) => gloss === undefined).map(({ materials }) => materials[0])).toEqual(['textile', 'headliner', 'carpet', 'thread']);
  });

  it('asks more spots of the noisier side of a pair where the smoother side sets the limit', () => {
    // Identical parts at L* 27.5: dL* alone nearly decides, since the spread along L* is three times the others. It holds where
    // |mean| <= cap - 1.6449 sd, so the chance is a little below 2 Phi(cap / sd - 1.6449) - 1; the cap is the smaller of the two,
    // the readings' sd 0.50 for thread and as in the table of the book for the other. Phi by a rational approximation
    // (Abramowitz and Stegun 26.2.17, to 7.5e-8).
    const phi = (x: number): number => {
      const t = 1 / (1 + 0.2316419 * x);
      const sum = t * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
      return 1 - (Math.exp(-x * x / 2) / Math.sqrt(2 * Math.PI)) * sum;
    };
    for (const id of ['ciede2000', 'cmc']) {
      const pairs = reachability(ruleBookById(id)!, { pairs: true }).rows;
      expect(pairs).toHaveLength(66);
      for (const { colour } of pairs) expect(colour!.oneInstrument).toBeGreaterThanOrEqual(0.9);
      const raised = pairs.filter(({ materials, spots }) => materials.some((material, i) =>
        spots[i] !== ruleBookById(id)!.materials.find((row) => row.material === material)!.wanted.spots));
      expect(raised.map(({ materials, spots }) => [...materials, ...spots])).toEqual([
        ['moulded', 'thread', 5, 7], ['painted', 'thread', 5, 6], ['soft-skin', 'thread', 5, 5], ['thread', 'gloss-black', 5, 5],
      ]);
      const [cap, other] = [[0.7, 0.7, 0.8, 0.8], [0.15, 0.10, 0.15, 0.10]] as const;
      raised.forEach(({ materials, spots, colour }, i) => {
        const thread = materials.indexOf('thread');
        const sd = Math.sqrt(0.5 ** 2 / spots[thread]! + other[i]! ** 2 / spots[1 - thread]!);
        const bound = 2 * phi(cap[i]! / sd - 1.6449) - 1;
        expect(colour!.oneInstrument).toBeLessThan(bound + 0.01);
        expect(colour!.oneInstrument).toBeGreaterThan(bound - 0.03);
        // With one spot less the aim would be missed.
        const fewer = Math.sqrt(0.5 ** 2 / (spots[thread]! - 1) + other[i]! ** 2 / spots[1 - thread]!);
        expect(2 * phi(cap[i]! / fewer - 1.6449) - 1).toBeLessThan(0.905);
      });
    }
  });

  it('equals the closed form in one dimension', () => {
    // Two moulded parts, gloss limit 0.5, sd 0.1, 5 spots each, two instruments of sd 0.15: the sd of the difference is
    // sqrt(2 * 0.01 / 5 + 2 * 0.0225) = 0.22136. It holds where |d| <= 0.5 - 1.6449 * 0.22136 = 0.13590, as the far limit is out of reach,
    // and the chance of that is 2 Phi(0.13590 / 0.22136) - 1 = 2 * 0.73037 - 1 = 0.4607; by hand with a table of Phi.
    // The far limit takes a little: held where both tails sum to 0.05.
    expect(rows[0]!.gloss!.twoInstruments).toBeGreaterThan(0.43);
    expect(rows[0]!.gloss!.twoInstruments).toBeLessThan(0.4617);
  });

  it('is the same on every run', () => {
    expect(reachability({ ...ruleBookById('ciede2000')! }).rows).toEqual(rows);
  });

  it('prints as rows of the book', () => {
    const printed = reachabilityRows(rows);
    expect(printed[0]).toMatchObject({ group: 'reachability', subject: 'moulded', value: '100', unit: '%' });
    expect(printed).toHaveLength(2 * (11 + 7));
  });

  it('is empty, with the faults, for a faulty book', () => {
    const broken = reachability({ ...ruleBookById('cmc')!, lights: [] });
    expect(broken.rows).toEqual([]);
    expect(broken.issues).not.toEqual([]);
  });
});

describe('the greys of the computation', () => {
  // L* from the reflectance by ISO/CIE 11664-4: 116 R^(1/3) - 16.
  it.each([[0.0527, 27.49], [0.3798, 68.01]])('reflectance %d has L* %d', (reflectance, L) => {
    const lab = spectrumToLab({ startNm: 400, stepNm: 10, values: Array<number>(31).fill(reflectance) }, lightByName('D65')!, 10);
    expect(lab[0]).toBeCloseTo(L, 1);
    expect(labToXyz(lab, weightsFor(lightByName('D65')!, 10, 400, 10, 31).white)[1]).toBeCloseTo(100 * reflectance, 6);
  });
});
