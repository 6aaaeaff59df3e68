import type { Issue } from '../../src/issue.ts';
import { describe, expect, test } from 'vitest';
import { lightNames } from '../../src/colour/index.ts';
import { parsed, run } from './memory-io.ts';

const wavelengths = Array.from({ length: 31 }, (_, index) => 400 + 10 * index);
const flat = (id: string, value: number, nm = wavelengths): string => `${id},${nm.map(() => value).join(',')}\n`;
const header = (first: string, nm = wavelengths): string => `${first},${nm.join(',')}\n`;
const triples = `${header('id')}${flat('white', 1)}${flat('grey', 0.5)}`;

interface ColourRow {
  readonly id: string;
  readonly light: string;
  readonly observer: number;
  readonly method: string;
  readonly xyz: number[];
  readonly lab: number[];
  readonly lch: number[];
}

describe('colour', () => {
  test('has exactly the promised fields and defaults', async () => {
    const result = await run(['colour', 'a.csv', '--json'], { 'a.csv': triples });
    expect(result).toMatchObject({ exit: 0, stderr: '', files: [] });
    const { results } = parsed<{ results: ColourRow[] }>(result);
    expect(Object.keys(results[0])).toEqual(['id', 'light', 'observer', 'method', 'xyz', 'lab', 'lch']);
    expect(results.map(({ id, light, observer, method }) => [id, light, observer, method])).toEqual([['white', 'D65', 10, 'e308'], ['grey', 'D65', 10, 'e308']]);
  });

  // ISO/CIE 11664-4: a neutral of Y/Yn = 0.5 has L* = 116 * 0.5^(1/3) - 16 = 76.0693, a* = b* = 0, under every light.
  test('neutral spectra are neutral under every light, observer and method', async () => {
    for (const method of ['e308', '1nm']) {
      for (const observer of ['2', '10']) {
        const words = ['colour', '-', '--json', '--method', method, '--observer', observer, ...lightNames.flatMap((name) => ['--light', name])];
        const { results } = parsed<{ results: ColourRow[] }>(await run(words, { '-': triples }));
        expect(results).toHaveLength(2 * lightNames.length);
        for (const row of results) {
          expect(row.method).toBe(method);
          expect(row.lab[0]).toBeCloseTo(row.id === 'white' ? 100 : 116 * Math.cbrt(0.5) - 16, 10);
          expect(Math.hypot(row.lab[1], row.lab[2])).toBeLessThan(1e-9);
          expect(row.xyz[1]).toBeCloseTo(row.id === 'white' ? 100 : 50, 1);
        }
      }
    }
  });

  test('5 nm data are summed at 1 nm; asking for e308 there is answered with a warning', async () => {
    const nm = Array.from({ length: 61 }, (_, index) => 400 + 5 * index);
    const file = { 'a.csv': `${header('id', nm)}${flat('grey', 0.5, nm)}` };
    const plain = await run(['colour', 'a.csv', '--json'], file);
    expect(parsed<{ results: ColourRow[] }>(plain).results[0].method).toBe('1nm');
    const asked = await run(['colour', 'a.csv', '--json', '--method', 'e308'], file);
    expect(parsed<{ results: ColourRow[] }>(asked).results[0].method).toBe('1nm');
    expect(asked.stderr).toContain('method-not-available');
  });

  test('per cent only as declared', async () => {
    const file = { 'a.csv': `${header('id')}${flat('grey', 50)}` };
    const refused = await run(['colour', 'a.csv', '--json'], file);
    expect(refused.exit).toBe(2);
    const { results } = parsed<{ results: ColourRow[] }>(await run(['colour', 'a.csv', '--json', '--scale', 'percent'], file));
    expect(results[0].lab[0]).toBeCloseTo(116 * Math.cbrt(0.5) - 16, 10);
    const declared = await run(['colour', 'a.csv', '--json'], { 'a.csv': `# scale: percent\n${file['a.csv']}` });
    expect(parsed(declared)).toEqual({ results });
  });

  test('prints an aligned table with rounded numbers', async () => {
    const { stdout } = await run(['colour', 'a.csv'], { 'a.csv': triples });
    const lines = stdout.trimEnd().split('\n');
    expect(lines).toHaveLength(3);
    expect(new Set(lines.map((line) => line.length)).size).toBe(1);
    expect(lines[2]).toMatch(/^grey +D65 +10° +e308 .* 76\.07 +0\.00 +0\.00/);
  });

  test('an unknown light is refused with the nearest name', async () => {
    const result = await run(['colour', 'a.csv', '--light', 'FL12', '--json'], { 'a.csv': triples });
    expect(result.exit).toBe(2);
    expect(parsed<{ issues: Issue[] }>(result).issues[0]).toMatchObject({ code: 'unknown-light', path: '--light', found: 'FL12' });
  });

  test('the faults of a table have lines and columns, all of them', async () => {
    const result = await run(['colour', 'a.csv', '--json'], { 'a.csv': `${header('id')}${flat('x', 0.5).replace('0.5', 'oops')}${flat('x', Number.NaN)}` });
    expect(result.exit).toBe(2);
    const { issues } = parsed<{ issues: Issue[] }>(result);
    expect(issues.length).toBeGreaterThan(2);
    for (const issue of issues.filter(({ severity }) => severity === 'error')) expect(issue).toMatchObject({ file: 'a.csv', line: expect.any(Number), column: expect.any(Number) });
  });
});

describe('difference', () => {
  // Sharma, Wu, Dalal, Color Research and Application 30, 21 (2005), table 1, pairs 1 and 7.
  const pairs = 'id,L1,a1,b1,L2,a2,b2\np1,50,2.6772,-79.7751,50,0,-82.7485\np7,50,0,0,50,-1,2\n';

  test('has exactly the promised fields; CIEDE2000 and CIE76 as published', async () => {
    const result = await run(['difference', '-', '--json'], { '-': pairs });
    expect(result).toMatchObject({ exit: 0, stderr: '' });
    const { results } = parsed<{ results: Record<string, number>[] }>(result);
    expect(Object.keys(results[0])).toEqual([
      'id', 'cie76', 'cie94', 'cie94Textile', 'cmc21', 'cmc11', 'ciede2000', 'ciede2000kL2', 'din99o', 'cam02ucs', 'cam16ucs', 'dL', 'da', 'db', 'dC', 'dH',
    ]);
    expect(results[0].ciede2000).toBeCloseTo(2.0425, 4);
    expect(results[1].ciede2000).toBeCloseTo(2.3669, 4);
    expect(results[0].cie76).toBeCloseTo(Math.hypot(2.6772, 82.7485 - 79.7751), 12);
    expect(results[1]).toMatchObject({ dL: 0, da: -1, db: 2 });
  });

  // Equal means and a covariance of the difference equal to the unit matrix: CIE76 follows the chi distribution of 3 degrees of freedom,
  // mean 2 sqrt(2/pi), median sqrt(2.365974) (chi-square table), P(<= 1) = erf(1/sqrt 2) - sqrt(2/pi) exp(-1/2) = 0.198748.
  test('covariances add the distribution of the chosen formula', async () => {
    const covariances = ['c1', 'c2'].flatMap((side) => ['LL', 'La', 'Lb', 'aa', 'ab', 'bb'].map((term) => side + term));
    const half = '0.5,0,0,0.5,0,0.5';
    const file = { 'a.csv': `id,L1,a1,b1,L2,a2,b2,${covariances.join(',')},limit\nx,50,0,0,50,0,0,${half},${half},1\n` };
    const { results } = parsed<{ results: Record<string, number>[] }>(await run(['difference', 'a.csv', '--formula', 'cie76', '--json'], file));
    expect(Object.keys(results[0]).slice(-6)).toEqual(['mean', 'sd', 'p5', 'p50', 'p95', 'withinProbability']);
    expect(results[0].mean).toBeCloseTo(2 * Math.sqrt(2 / Math.PI), 2);
    // Within 1 % of the value: the sum has 16,384 points.
    expect(Math.abs(results[0].p50 / Math.sqrt(2.365974) - 1)).toBeLessThan(0.01);
    expect(results[0].withinProbability).toBeCloseTo(0.198748, 3);
    const { stdout } = await run(['difference', 'a.csv', '--formula', 'cie76'], file);
    expect(stdout).toContain('Distribution of CIE76');
  });

  test('without covariances there is no distribution', async () => {
    expect((await run(['difference', '-'], { '-': pairs })).stdout).not.toContain('Distribution');
  });
});

describe('metamerism', () => {
  const rows = (standard: number, trial: number): string => `${header('pair,role')}${flat('p,standard', standard)}${flat('p,trial', trial)}`;

  // Flat spectra keep L* under every light: the residual is the difference of L*, and a factor or a shift removes it under all lights.
  test('has exactly the promised fields; flat pairs are not metameric', async () => {
    const result = await run(['metamerism', 'a.csv', '--json'], { 'a.csv': rows(0.5, 0.45) });
    const { results } = parsed<{ results: Record<string, number | string>[] }>(result);
    expect(results.map((row) => row.test)).toEqual(['A', 'FL11']);
    for (const row of results) {
      expect(Object.keys(row)).toEqual(['pair', 'test', 'formula', 'residual', 'multiplicative', 'additive', 'parametric']);
      expect(row).toMatchObject({ pair: 'p', formula: 'cie76' });
      expect(row.residual).toBeCloseTo(116 * (Math.cbrt(0.5) - Math.cbrt(0.45)), 8);
      for (const index of ['multiplicative', 'additive']) expect(row[index]).toBeCloseTo(0, 6);
    }
  });

  test('a spectrum against itself has no difference by any index', async () => {
    const { results } = parsed<{ results: Record<string, number>[] }>(await run(['metamerism', 'a.csv', '--json', '--test', 'LED-B3', '--formula', 'ciede2000'], { 'a.csv': rows(0.3, 0.3) }));
    for (const index of ['residual', 'multiplicative', 'additive', 'parametric']) expect(results[0][index]).toBeCloseTo(0, 9);
  });

  test.each([
    [`${header('pair,role')}${flat('p,standard', 0.5)}`, 'incomplete-pair'],
    [`${header('pair,role')}${flat('p,standard', 0.5)}${flat('p,batch', 0.5)}`, 'unknown-role'],
    [`${header('id')}${flat('x', 0.5)}`, 'missing-column'],
  ])('a table that does not make pairs is refused (%#)', async (text, code) => {
    const result = await run(['metamerism', 'a.csv', '--json'], { 'a.csv': text });
    expect(result.exit).toBe(2);
    expect(parsed<{ issues: Issue[] }>(result).issues.map((issue) => issue.code)).toContain(code);
  });
});

describe('gloss', () => {
  // By hand: spots 2 and 4 (the mean of 3 and 5): mean 3, sd sqrt(2).
  test('averages readings to spots, then spots to the mean', async () => {
    const result = await run(['gloss', '-', '--json'], { '-': 'specimen,angle,gloss,spot,haze\np,60,2,s1,\np,60,3,s2,\np,60,5,s2,\np,20,80,s1,12\n' });
    expect(parsed(result)).toEqual({
      results: [{ specimen: 'p', angle: 60, mean: 3, sd: Math.SQRT2, spots: 2 }, { specimen: 'p', angle: 20, mean: 80, sd: 0, spots: 1, haze: 12 }],
    });
  });

  test('a reading without a spot is a spot of its own', async () => {
    const result = await run(['gloss', '-', '--json'], { '-': 'specimen,angle,gloss\np,60,1\np,60,2\np,60,3\n' });
    expect(parsed(result)).toEqual({ results: [{ specimen: 'p', angle: 60, mean: 2, sd: 1, spots: 3 }] });
  });
});

describe('verify', () => {
  test('every check value is within tolerance, in the promised shape', async () => {
    const result = await run(['verify', '--json']);
    const { summary, results } = parsed<{ summary: { checked: number; ok: number }; results: Record<string, unknown>[] }>(result);
    expect(result.exit).toBe(0);
    expect(results.filter((row) => row.ok !== true)).toEqual([]);
    expect(summary).toEqual({ checked: results.length, ok: results.length });
    expect(results.length).toBeGreaterThan(300);
    for (const row of results) expect(Object.keys(row)).toEqual(['formula', 'source', 'kind', 'input', 'expected', 'got', 'deviation', 'tolerance', 'ok']);
    // Each value says of what kind it is.
    for (const kind of ['published table', 'worked example', 'derived']) expect(results.filter((row) => row.kind === kind).length, kind).toBeGreaterThan(20);
    // The record covers every family of formulas that the product computes.
    for (const name of ['CIEDE2000', 'CIE94', 'CMC', 'CAM02-UCS', 'CAM16-UCS', 'DIN99o', 'E308', 'Sprague', 'bandpass', 'metamerism', 'Fresnel', 'gloss', 'VDI 3400', 'grey scale', 'white point']) {
      expect(results.some((row) => String(row.formula).includes(name)), name).toBe(true);
    }
  });

  test('prints one line a value and the count', async () => {
    const { stdout } = await run(['verify']);
    expect(stdout).toMatch(/Adjoin \S+: (\d+) of \1 check values within tolerance\.\n$/);
  });
});
