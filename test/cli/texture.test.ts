import type { Issue } from '../../src/issue.ts';
import { expect, test } from 'vitest';
import { bytesOf, pngBytes, sdfText } from '../formats/support/surface-files.ts';
import { parsed, run } from './memory-io.ts';
import { readText } from '../../src/formats/index.ts';
import { spectrumOfRecord, visibleTexture } from '../../src/texture/index.ts';

const points = 256;
const grid = (height: (x: number, y: number) => number): string => Array.from({ length: points }, (_, y) =>
  Array.from({ length: points }, (_, x) => height(x, y)).join(',')).join('\n');
// 2 um high, 0.64 mm long, on points of 0.01 mm.
const sine = grid((x) => 2 * Math.sin((2 * Math.PI * x) / 64));
const options = ['--spacing-mm', '0.01', '--height-unit', 'um'];

interface Output {
  surface: Record<string, unknown>;
  parameters: Record<string, number | null>;
  profile: Record<string, number | string | null> | null;
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
  expect(output.profile?.RsmMm as number).toBeCloseTo(0.64, 6);
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
  expect(output.profile?.VdiClass as number).toBeCloseTo(20 * Math.log10(40 / Math.PI), 0);
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

test('profiles along x, along y, or one row alone', async () => {
  // Amplitude 2 um along x on the upper half, 4 um on the lower; along y every column is a step of its own sign.
  const halves = grid((x, y) => (y < 128 ? 2 : 4) * Math.sin((2 * Math.PI * x) / 64));
  const profileOf = async (...words: string[]) => parsed<Output>(await run(['texture', 'h.csv', ...options, ...words, '--json'], { 'h.csv': halves })).profile;
  const close = (value: unknown, expected: number): void => expect(Math.abs((value as number) / expected - 1)).toBeLessThan(0.005);
  // ISO 21920-2 by hand: Ra 2A/pi, Rz 2A, RSm the period.
  const all = await profileOf();
  close(all?.RaUm, 6 / Math.PI);
  close(all?.RsmMm, 0.64);
  expect(all).toMatchObject({ along: 'x', profiles: 256 });
  expect(all).not.toHaveProperty('row');
  for (const [row, amplitude] of [[1, 2], [128, 2], [129, 4], [256, 4]] as const) {
    const one = await profileOf('--profile', String(row));
    expect(one).toMatchObject({ along: 'x', row, profiles: 1 });
    close(one?.RsmMm, 0.64);
    expect(Math.round((one?.RaUm as number) / (2 / Math.PI))).toBe(amplitude);
  }
  const down = await profileOf('--profile', 'y');
  expect(down).toMatchObject({ along: 'y', profiles: 256 });
  // A step between 2s and 4s has Ra |s|; the mean of |sin| is 2/pi.
  close(down?.RaUm, 2 / Math.PI);
  const text = (await run(['texture', 'h.csv', ...options, '--profile', '7'], { 'h.csv': halves })).stdout;
  expect(text).toMatch(/profiles +row 7/);
});

test('missing points are counted, in text and as JSON', async () => {
  const holed = grid((x, y) => ((x + 3 * y) % 50 === 0 ? NaN : 2 * Math.sin((2 * Math.PI * x) / 64))).replaceAll('NaN', '');
  const output = parsed<Output>(await run(['texture', 'h.csv', ...options, '--json'], { 'h.csv': holed }));
  const missing = output.surface.missing as number;
  expect(missing).toBe(Array.from({ length: points * points }, (_, index) => (index % points) + 3 * Math.floor(index / points)).filter((sum) => sum % 50 === 0).length);
  expect((output.parameters.SqUm ?? 0) / Math.SQRT2).toBeCloseTo(1, 2);
  expect((await run(['texture', 'h.csv', ...options], { 'h.csv': holed })).stdout).toMatch(new RegExp(`missing +${missing} \\(2\\.0 %\\)`));
});

test('a pair that differs in pitch alone is told from one that differs in depth alone', async () => {
  const files = { 'a.csv': sine, 'deep.csv': grid((x) => 3 * Math.sin((2 * Math.PI * x) / 64)), 'fine.csv': grid((x) => 2 * Math.sin((2 * Math.PI * x) / 32)) };
  const told = async (other: string) => parsed<Output>(await run(['texture', 'a.csv', '--with', other, ...options, '--view-mm', '400', '--json'], files)).difference as { apart: string[] };
  expect((await told('deep.csv')).apart).toEqual(['depth']);
  expect((await told('fine.csv')).apart[0]).toBe('pitch');
  expect((await run(['texture', 'a.csv', '--with', 'deep.csv', ...options, '--view-mm', '400'], files)).stdout).toMatch(/seen, as\s+far as [\d.]+ m, in\s+depth/);
});

test('what was measured is written as a reading that a cabin reads', async () => {
  const words = ['texture', 'a.csv', ...options, '--specimen', 'door-1', '--spot', 'grip', '--instrument', 'Profiler (invented)', '--out', 'out/door.json'];
  const result = await run([...words, '--json'], { 'a.csv': sine });
  const [file] = result.files;
  expect(file?.path).toBe('out/door.json');
  const read = readText({ text: file?.content ?? '' });
  expect(read.issues).toEqual([]);
  const [record] = read.value?.records ?? [];
  expect(record).toMatchObject({ specimen: 'door-1', spot: { name: 'grip' }, data: { quantity: 'texture', visible: { source: 'rendered', lamp: { elevationDeg: 45, azimuthDeg: 45 } } } });
  const { parameters } = parsed<Output>(result);
  if (record?.data.quantity !== 'texture' || record.data.visible === undefined) throw new Error('no texture');
  expect(record.data.parameters.sqUm).toBe(parameters.SqUm);
  const seen = visibleTexture(spectrumOfRecord(record.data.visible), { viewMm: 700, illuminanceLx: 2000, reflectance: 0.05 });
  expect(seen.visibleContrast / (parsed<Output>(result).visible?.visibleContrast as number)).toBeCloseTo(1, 2);

  const values = Array.from({ length: 64 * 64 }, (_, index) => Math.round(20000 + 4000 * Math.sin((2 * Math.PI * (index % 64)) / 16)));
  const picture = { 'p.png': pngBytes({ width: 64, height: 64, depth: 16, values }) };
  const shot = await run(['texture', 'p.png', '--mm-per-pixel', '0.1', '--transfer', 'linear', '--capture', 'booth 1', '--specimen', 's', '--out', 'p.json'], picture);
  const kept = readText({ text: shot.files[0]?.content ?? '' }).value?.records[0]?.data;
  expect(kept).toMatchObject({ parameters: {}, visible: { source: 'photograph', capture: 'booth 1' } });
});

test('bad options and bad files exit 2 with every issue', async () => {
  const codes = async (...words: string[]): Promise<string[]> => {
    const result = await run(['texture', ...words, '--json'], { 'x.csv': '1,2\n3,x\n', 'y.csv': sine });
    expect(result.exit).toBe(2);
    return parsed<{ issues: Issue[] }>(result).issues.map(({ code }) => code);
  };
  expect(await codes('x.csv', ...options)).toEqual(['not-a-number']);
  for (const profile of ['z', '0', '-1', '1.5']) expect(await codes('y.csv', ...options, '--profile', profile)).toEqual(['unknown-value']);
  expect(await codes('y.csv', ...options, '--profile', '257')).toEqual(['out-of-range']);
  expect(await codes('y.csv', ...options, '--out', 'o.json')).toEqual(['missing-option']);
  expect(await codes('nowhere.sdf')).toEqual(['cannot-read']);
  expect(await codes('y.csv')).toContain('spacing-undeclared');
  expect(await codes('y.csv', '--form', 'cubic')).toEqual(['unknown-value']);
  expect(await codes('y.csv', '--spacing-mm', '0', '--s-filter-mm', 'x', '--reflectance', '1.5', '--lamp-azimuth', '720')).toEqual(Array(4).fill('bad-number'));
  expect(await codes('y.csv', '--with', 'x.csv', ...options)).toEqual(['not-a-number']);
});
