import type { Issue } from '../../src/issue.ts';
import { expect, test } from 'vitest';
import { bytesOf, pngBytes, sdfText } from '../formats/support/surface-files.ts';
import { parsed, run } from './memory-io.ts';

const points = 256;
const grid = (height: (x: number, y: number) => number): string => Array.from({ length: points }, (_, y) =>
  Array.from({ length: points }, (_, x) => height(x, y)).join(',')).join('\n');
// 2 um high, 0.64 mm long, on points of 0.01 mm.
const sine = grid((x) => 2 * Math.sin((2 * Math.PI * x) / 64));
const options = ['--spacing-mm', '0.01', '--height-unit', 'um'];

interface Output {
  surface: Record<string, unknown>;
  parameters: Record<string, number | null>;
  profile: Record<string, number | null> | null;
  visible: Record<string, unknown> | null;
  with?: Output;
  difference?: Record<string, unknown> | null;
}

test('a grid of heights as JSON, with the keys that callers rely on', async () => {
  const result = await run(['texture', 'sine.csv', ...options, '--json'], { 'sine.csv': sine });
  expect(result.exit).toBe(0);
  const output = parsed<Output>(result);
  expect(Object.keys(output).slice(0, 2)).toEqual(['surface', 'parameters']);
  expect(output.surface).toMatchObject({ width: 256, height: 256, spacingMm: [0.01, 0.01], missing: 0, kind: 'heights', format: 'csv' });
  expect(Object.keys(output.parameters)).toEqual(['SaUm', 'SqUm', 'Ssk', 'Sku', 'SpUm', 'SvUm', 'SzUm', 'SalMm', 'Str', 'StdDeg', 'Sdq', 'Sdr']);
  // ISO 25178-2 over whole periods, by hand: 2A/pi, A/sqrt 2, 1.5; cos(2 pi t/p) = 0.2.
  expect(output.parameters.SaUm! / (4 / Math.PI)).toBeCloseTo(1, 2);
  expect(output.parameters.SqUm).toBeCloseTo(Math.SQRT2, 6);
  expect(output.parameters.Sku).toBeCloseTo(1.5, 6);
  expect(output.parameters.SalMm).toBeCloseTo(0.218 * 0.64, 4);
  expect(output.parameters.Str).toBe(0);
  expect(output.profile?.RsmMm).toBeCloseTo(0.64, 6);
  expect(output.visible).toMatchObject({ source: 'rendered', viewMm: 700, illuminanceLx: 2000, reflectance: 0.05, lamp: { elevationDeg: 45, azimuthDeg: 45 } });
});

test('the same heights as SDF give the same parameters, whatever the file is called', async () => {
  const values = sine.split(/[,\n]/u).map(Number);
  const sdf = sdfText(points, points, values, { Yscale: '1e-5' });
  const [a, b] = await Promise.all([run(['texture', 'x', ...options, '--json'], { x: sine }), run(['texture', '-', '--json'], { '-': bytesOf(sdf) })]);
  const [first, second] = [parsed<Output>(a), parsed<Output>(b)];
  expect(second.surface).toMatchObject({ format: 'sdf' });
  for (const [key, value] of Object.entries(first.parameters)) expect(second.parameters[key]).toBeCloseTo(value!, 9);
});

test('form, filters and tools', async () => {
  const tilted = grid((x, y) => 0.5 * x - 0.3 * y + 2 * Math.sin((2 * Math.PI * x) / 32));
  const plain = await run(['texture', 'x.csv', ...options, '--json'], { 'x.csv': tilted });
  expect(plain.stderr).toMatch(/tilted/);
  const level = await run(['texture', 'x.csv', ...options, '--form', 'plane', '--of', 'tool', '--l-filter-mm', '2', '--json'], { 'x.csv': tilted });
  const output = parsed<Output>(level);
  expect(level.stderr).toBe('');
  expect(Math.abs(output.parameters.SqUm! / Math.SQRT2 - 1)).toBeLessThan(0.01);
  // VDI 3400 class of Ra 4/pi um: 20 log10(12.73).
  expect(output.profile?.VdiClass).toBeCloseTo(20 * Math.log10(40 / Math.PI), 0);
});

test('a photograph has visible texture and no heights', async () => {
  const values = Array.from({ length: 200 * 200 }, (_, index) => Math.round(20000 + 4000 * Math.sin((2 * Math.PI * (index % 200)) / 20)));
  const result = await run(['texture', 'p.png', '--mm-per-pixel', '0.05', '--transfer', 'linear', '--json'], { 'p.png': pngBytes({ width: 200, height: 200, depth: 16, values }) });
  const output = parsed<Output>(result);
  expect(output.surface).toMatchObject({ width: 200, height: 200, spacingMm: [0.05, 0.05], missing: 0, kind: 'photograph' });
  expect(Object.values(output.parameters)).toEqual(Array(12).fill(null));
  expect(output.visible).toMatchObject({ source: 'photograph' });
  expect(output.visible).not.toHaveProperty('lamp');
  expect(Math.abs((output.visible?.pitchMm as number) - 1)).toBeLessThan(0.03);
  expect((output.visible?.rmsContrast as number) / (0.2 / Math.SQRT2)).toBeCloseTo(1, 2);
});

test('a pair is told apart, in text and as JSON', async () => {
  const files = { 'a.csv': sine, 'b.csv': grid((x) => 4 * Math.sin((2 * Math.PI * x) / 64)), 'c.csv': sine };
  const words = ['texture', 'a.csv', '--with', 'b.csv', ...options];
  const output = parsed<Output>(await run([...words, '--json'], files));
  expect(output.with?.parameters.SqUm).toBeCloseTo(2 * Math.SQRT2, 6);
  expect(output.difference).toMatchObject({ vanishes: { kind: 'at' } });
  const { difference, strength, pattern } = output.difference as { difference: number; strength: number; pattern: number };
  expect(difference).toBeGreaterThan(1);
  expect(strength / difference).toBeCloseTo(1, 2);
  expect(pattern).toBeLessThan(0.1 * difference);
  const text = (await run(words, files)).stdout;
  expect(text).toMatch(/a\.csv +b\.csv/);
  expect(text).toMatch(/Sa +1\.272 µm +2\.544 µm/);
  expect(text).toMatch(/Difference .*: seen, as far as/s);
  expect((await run(['texture', 'a.csv', '--with', 'c.csv', ...options], files)).stdout).toMatch(/not seen/);
  expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
});

test('bad options and bad files exit 2 with every issue', async () => {
  const codes = async (...words: string[]): Promise<string[]> => {
    const result = await run(['texture', ...words, '--json'], { 'x.csv': '1,2\n3,x\n', 'y.csv': sine });
    expect(result.exit).toBe(2);
    return parsed<{ issues: Issue[] }>(result).issues.map(({ code }) => code);
  };
  expect(await codes('x.csv', ...options)).toEqual(['not-a-number']);
  expect(await codes('nowhere.sdf')).toEqual(['cannot-read']);
  expect(await codes('y.csv')).toContain('spacing-undeclared');
  expect(await codes('y.csv', '--form', 'cubic')).toEqual(['unknown-value']);
  expect(await codes('y.csv', '--spacing-mm', '0', '--s-filter-mm', 'x', '--reflectance', '1.5', '--lamp-azimuth', '720')).toEqual(Array(4).fill('bad-number'));
  expect(await codes('y.csv', '--with', 'x.csv', ...options)).toEqual(['not-a-number']);
});
