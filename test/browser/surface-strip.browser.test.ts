import { converter, differenceCiede2000 } from 'culori';
import { afterAll, beforeEach, describe, expect, test } from 'vitest';
import '../../components/figures/surface/adjoin-surface-strip.ts';
import type { AdjoinSurfaceStrip, Painted } from '../../components/figures/surface/adjoin-surface-strip.ts';
import { litScene, usualLamp } from '../../components/figures/surface/lamp.ts';
import type { LampSetting } from '../../components/figures/surface/lamp.ts';
import { openRows, stepShadow, stripLayout } from '../../components/figures/surface/strip-layout.ts';
import type { Painting } from '../../components/figures/surface/strip-request.ts';
import { surfacePainter } from '../../components/figures/surface/surface-painter.ts';
import { surfaceSide } from '../../components/figures/surface/surface-side.ts';
import { colourOfLab } from '../../components/model/part-colours.ts';
import type { PartColour } from '../../components/model/part-colours.ts';
import { lightByName, whitePoint } from '../../src/colour/index.ts';
import type { PartAppearance } from '../../src/harmony/judgement.ts';
import type { Lab } from '../../src/quantities.ts';
import { synthesiseSurfaceSteps, runSteps } from '../../src/texture/index.ts';
import { mount, until } from '../support/screen.ts';

interface Material {
  readonly name: string;
  readonly material: string;
  readonly lab: Lab;
  readonly gloss?: number;
  readonly texture?: PartAppearance['texture'];
}

const grains = { fine: { saUm: 4.7, salMm: 0.22, str: 0.43 }, skin: { saUm: 6.3, salMm: 0.31, str: 0.62 }, hide: { saUm: 7.8, salMm: 0.53, str: 0.7 }, deep: { saUm: 18, salMm: 0.5, str: 0.8 } };
const slate: Material = { name: 'slate skin', material: 'soft-skin', lab: [26.4, 0, -0.9], gloss: 2.1, texture: grains.skin };
const hide: Material = { name: 'dark hide', material: 'leather', lab: [27.2, 0.3, -0.6], gloss: 3, texture: grains.hide };
const black: Material = { name: 'gloss black', material: 'gloss-black', lab: [5.35, -0.1, -0.5], gloss: 86.9 };
const ox: Material = { name: 'ox-blood hide', material: 'leather', lab: [24, 30, 17], gloss: 4, texture: grains.deep };
const chalk: Material = { name: 'chalk moulding', material: 'moulded', lab: [82, 1, 6], gloss: 1.8, texture: grains.fine };
const white: Material = { name: 'white moulding', material: 'moulded', lab: [95, 0, 2], gloss: 6, texture: grains.deep };
const chrome: Material = { name: 'satin metal', material: 'metallised', lab: [74, 0, 1], gloss: 58 };
const cloth: Material = { name: 'cloth without readings', material: 'textile', lab: [45, 2, 8] };

const colourOf = ({ lab }: Material, light = 'D65'): PartColour => colourOfLab(lab, whitePoint(lightByName(light)!, 10), 'srgb');
const sideOf = (of: Material, light?: string) => surfaceSide(of.name, of.material, {
  gloss: of.gloss === undefined ? [] : [{ angle: 60, mean: of.gloss, sd: 0.1, spots: 5 }], texture: of.texture,
} as unknown as PartAppearance, colourOf(of, light));

interface Wanted { readonly lamp?: LampSetting; readonly kind?: 'gap' | 'edge' | 'step'; readonly magnification?: number; readonly light?: string }

async function painted(pair: readonly [Material, Material], { lamp = usualLamp, kind = 'gap', magnification = 1, light }: Wanted = {}) {
  let how: Painted | undefined;
  document.addEventListener('adjoin-painted', (event) => { how = (event as CustomEvent<Painted>).detail; }, { once: true });
  const strip = await mount<AdjoinSurfaceStrip>('adjoin-surface-strip', {
    joint: { kind, gapMm: 1, stepMm: 1, viewMm: 700 }, sides: [sideOf(pair[0], light), sideOf(pair[1], light)],
    fills: [colourOf(pair[0], light).css, colourOf(pair[1], light).css], lamp, magnification,
  });
  strip.style.width = '420px';
  strip.style.height = '180px';
  const { painted: painting, contrast } = await until('a picture', () => how);
  await strip.updateComplete;
  const canvas = strip.renderRoot.querySelector('canvas')!;
  return { strip, canvas, painting, contrast, image: canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height) };
}

const toLab = converter('lab65');
const dE00 = differenceCiede2000();
/** Light of an encoded channel, IEC 61966-2-1. */
const linear = (value: number): number => (value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4);

/** CIEDE2000, by culori, between the mean of the light of a side's open face and the colour that the side should have. */
function deviation(image: ImageData, side: 0 | 1, css: string, { kind = 'gap', magnification = 1, lamp = usualLamp }: Wanted): number {
  const layout = stripLayout({ fills: [css, css], kind, gapMm: 1, stepMm: 1, viewMm: 700 }, { width: 420, height: 180, magnification }, devicePixelRatio);
  const shadow = kind === 'step' ? stepShadow(layout, 1, litScene(lamp, 700).towards).end : 0;
  const [first, end] = openRows(layout, side, shadow);
  const sum = [0, 0, 0];
  for (let at = first * image.width; at < end * image.width; at += 1) for (let channel = 0; channel < 3; channel += 1) sum[channel]! += linear(image.data[4 * at + channel]! / 255);
  const [r, g, b] = sum.map((value) => value / ((end - first) * image.width)) as [number, number, number];
  return dE00(toLab({ mode: 'lrgb', r, g, b }), css);
}

/** Spread of the encoded green of a side, steps of 8 bits. */
function spread(image: ImageData, side: 0 | 1): number {
  const half = Math.floor(image.height / 2);
  const [first, end] = side === 0 ? [4, half - 14] : [half + 14, image.height - 4];
  let [sum, squares, count] = [0, 0, 0];
  for (let at = first * image.width; at < end * image.width; at += 1) {
    const value = image.data[4 * at + 1]!;
    sum += value;
    squares += value * value;
    count += 1;
  }
  return Math.sqrt(squares / count - (sum / count) ** 2);
}

beforeEach(() => surfacePainter.prefer('webgl2'));
afterAll(() => surfacePainter.prefer('webgl2'));

const pairs: readonly (readonly [Material, Material])[] = [[slate, hide], [black, slate], [ox, chrome], [chalk, white], [cloth, chalk]];
const lamps: readonly LampSetting[] = [usualLamp, { fromDeg: 0, elevationDeg: 45, tiltDeg: 23 }, { fromDeg: -70, elevationDeg: 15, tiltDeg: -10 }];

describe.each(['webgl2', 'canvas'] as const)('painted by %s', (painting: Painting) => {
  beforeEach(() => surfacePainter.prefer(painting));

  test.each(pairs.map((pair) => [pair[0].name, pair[1].name, pair] as const))('%s and %s keep their colours in the mean to 0.3 CIEDE2000 under every lamp', async (_first, _second, pair) => {
    for (const lamp of lamps) {
      const result = await painted(pair, { lamp });
      expect(result.painting).toBe(painting);
      for (const index of [0, 1] as const) expect(deviation(result.image, index, colourOf(pair[index]).css!, { lamp })).toBeLessThan(0.3);
    }
  });

  test('and so they do at a step, magnified, and under another light', async () => {
    for (const wanted of [{ kind: 'step' }, { kind: 'edge', magnification: 4 }, { light: 'A' }, { magnification: 2.8 }] as const) {
      const { image } = await painted([slate, chalk], wanted);
      const light = 'light' in wanted ? wanted.light : undefined;
      for (const index of [0, 1] as const) expect(deviation(image, index, colourOf([slate, chalk][index]!, light).css!, wanted)).toBeLessThan(0.3);
    }
  });

  test('a grain shows, a side without readings is plain', async () => {
    const { image } = await painted([hide, cloth], { magnification: 3 });
    expect(spread(image, 0)).toBeGreaterThan(1);
    expect(spread(image, 1)).toBeLessThan(0.6);
  });

  test('a deeper grain has more contrast, a lower lamp too', async () => {
    const matt: Material = { ...chalk, gloss: undefined, texture: grains.hide };
    const shallow: Material = { ...matt, texture: { ...grains.hide, saUm: 3.9 } };
    const { image } = await painted([matt, shallow], { magnification: 3 });
    expect(spread(image, 0) / spread(image, 1)).toBeGreaterThan(1.6);
    // Lambert: contrast goes with the cotangent of the lamp's elevation; 2.7 times at 20 degrees what it is at 45.
    const low = await painted([matt, shallow], { magnification: 3, lamp: { ...usualLamp, elevationDeg: 20 } });
    expect(spread(low.image, 0)).toBeGreaterThan(2 * spread(image, 0));
  });
});

/** Correlation of two pictures, over the green of one side. */
function likeness(a: ImageData, b: ImageData): number {
  const rows = Math.floor(a.height / 2) - 14;
  const values = [a, b].map(({ data, width }) => Array.from({ length: rows * width }, (_, at) => data[4 * at + 1]!));
  const means = values.map((list) => list.reduce((sum, value) => sum + value, 0) / list.length);
  let [product, first, second] = [0, 0, 0];
  values[0]!.forEach((value, at) => {
    const [x, y] = [value - means[0]!, values[1]![at]! - means[1]!];
    product += x * y;
    first += x * x;
    second += y * y;
  });
  return product / Math.sqrt(first * second);
}

test('graphics card and processor paint the same picture', async () => {
  const lamp = { fromDeg: 40, elevationDeg: 35, tiltDeg: 12 };
  const deep: Material = { ...chalk, texture: grains.deep };
  for (const pair of [[deep, hide], [chrome, black]] as const) {
    const images: ImageData[] = [];
    for (const painting of ['webgl2', 'canvas'] as const) {
      surfacePainter.prefer(painting);
      images.push((await painted(pair, { lamp, magnification: 3 })).image);
    }
    expect(likeness(images[0]!, images[1]!)).toBeGreaterThan(0.98);
  }
});

test('measured heights are drawn as they are: a groove is where it was measured, the map its own mirror image beyond its edges', async () => {
  // Ridges along y every millimetre, lit from the left: dark and bright flanks with that period.
  const points = 400;
  const heights = Float64Array.from({ length: points * points }, (_, at) => 40 * Math.sin((2 * Math.PI * (at % points)) / 50));
  const map = { width: points, height: points, spacingMm: [0.02, 0.02] as const, values: heights, missing: 0 };
  let how: Painted | undefined;
  document.addEventListener('adjoin-painted', (event) => { how = (event as CustomEvent<Painted>).detail; }, { once: true });
  const grey = colourOf({ ...cloth, lab: [60, 0, 0] });
  const side = surfaceSide('a', 'moulded', { gloss: [] } as unknown as PartAppearance, grey, map);
  const strip = await mount<AdjoinSurfaceStrip>('adjoin-surface-strip', {
    joint: { kind: 'edge', viewMm: 700 }, sides: [side, side], fills: [grey.css, grey.css], lamp: { fromDeg: -90, elevationDeg: 30, tiltDeg: 0 }, magnification: 6,
  });
  strip.style.width = '420px';
  strip.style.height = '60px';
  await until('a picture', () => how);
  const canvas = strip.renderRoot.querySelector('canvas')!;
  const row = canvas.getContext('2d')!.getImageData(0, 20, canvas.width, 1).data;
  const perMm = stripLayout({ fills: [undefined, undefined], kind: 'edge', viewMm: 700 }, { width: 420, height: 60, magnification: 6 }, devicePixelRatio).perMm;
  const correlation = (lag: number): number => {
    const value = (x: number): number => row[4 * x + 1]!;
    const length = Math.min(canvas.width, Math.floor(7 * perMm)) - lag;
    let sum = 0;
    for (let x = 0; x < length; x += 1) sum += (value(x) - 140) * (value(x + lag) - 140);
    return sum / length;
  };
  const best = Array.from({ length: 30 }, (_, index) => Math.floor(perMm) - 12 + index).reduce((found, lag) => (correlation(lag) > correlation(found) ? lag : found));
  expect(Math.abs(best - perMm)).toBeLessThanOrEqual(1);
});

test('the picture follows the number of device pixels and lies exactly on them', async () => {
  const { canvas, strip } = await painted([slate, hide]);
  expect(canvas.width).toBe(Math.round(strip.clientWidth * devicePixelRatio));
  expect(canvas.getBoundingClientRect().width).toBeCloseTo(canvas.width / devicePixelRatio, 6);
});

test('until it is painted, and wherever it cannot be, the strip is plain in the colours of its sides', async () => {
  const pair = [slate, hide] as const;
  const strip = await mount<AdjoinSurfaceStrip>('adjoin-surface-strip', {
    joint: { kind: 'gap', gapMm: 1, viewMm: 700 }, sides: [sideOf(pair[0]), sideOf(pair[1])], fills: [colourOf(pair[0]).css, colourOf(pair[1]).css],
  });
  const fills = () => [...strip.renderRoot.querySelectorAll('svg .sample')].map((path) => path.getAttribute('fill'));
  expect(fills()).toEqual([colourOf(pair[0]).css, colourOf(pair[1]).css]);
  strip.style.height = '60px';
  await until('the painted sides', () => fills().length === 0);
  // Another light: at once the new colours, plain, never the old picture.
  const other = pair.map((part) => colourOf(part, 'A')) as [PartColour, PartColour];
  strip.fills = [other[0].css, other[1].css];
  strip.sides = [sideOf(pair[0], 'A'), sideOf(pair[1], 'A')];
  await strip.updateComplete;
  expect(fills()).toEqual([other[0].css, other[1].css]);
  await until('the sides painted anew', () => fills().length === 0);
});

test('a wall of 93 strips paints those near the window by one worker, without WebGL on the page and without a long task in the taking', async () => {
  const contexts: string[] = [];
  const getContext = HTMLCanvasElement.prototype.getContext;
  const put = CanvasRenderingContext2D.prototype.putImageData;
  const took: number[] = [];
  HTMLCanvasElement.prototype.getContext = function patched(this: HTMLCanvasElement, ...args: Parameters<typeof getContext>) {
    contexts.push(args[0]);
    return getContext.apply(this, args);
  } as typeof getContext;
  CanvasRenderingContext2D.prototype.putImageData = function timed(this: CanvasRenderingContext2D, ...args: unknown[]) {
    const start = performance.now();
    (put as (...all: unknown[]) => void).apply(this, args);
    took.push(performance.now() - start);
  } as typeof put;
  try {
    document.body.replaceChildren();
    const list = document.createElement('div');
    Object.assign(list.style, { height: '600px', overflow: 'auto' });
    const all = [slate, hide, black, ox, chalk, white, chrome, cloth];
    const strips = Array.from({ length: 93 }, (_, index) => {
      const pair = [all[index % 8]!, all[(3 * index + 1) % 8]!] as const;
      const strip = document.createElement('adjoin-surface-strip');
      Object.assign(strip, {
        joint: { kind: 'gap', gapMm: 1, viewMm: 700 }, sides: [sideOf(pair[0]), sideOf(pair[1])], fills: [colourOf(pair[0]).css, colourOf(pair[1]).css],
      });
      Object.assign(strip.style, { height: '52px', width: '300px', marginBottom: '66px' });
      list.append(strip);
      return strip;
    });
    document.body.append(list);
    const isPainted = ({ renderRoot }: AdjoinSurfaceStrip): boolean =>
      (renderRoot.querySelector('canvas')?.width ?? 0) > 0 && renderRoot.querySelectorAll('svg .sample').length === 0;
    await until('the first strips', () => strips.slice(0, 5).every(isPainted), 40_000);
    expect(isPainted(strips[60]!)).toBe(false);
    list.scrollTop = list.scrollHeight;
    await until('the last strips', () => strips.slice(-5).every(isPainted), 40_000);
    // What is far away has given its picture back.
    await until('room', () => strips[0]!.renderRoot.querySelector('canvas')?.width === 0);
    expect(contexts.length).toBeGreaterThan(9);
    expect(contexts.filter((name) => name !== '2d')).toEqual([]);
    expect(Math.max(...took)).toBeLessThan(50);
  } finally {
    HTMLCanvasElement.prototype.getContext = getContext;
    CanvasRenderingContext2D.prototype.putImageData = put;
  }
});

test('a made surface handed over as measured looks as the made one does', async () => {
  const map = runSteps(synthesiseSurfaceSteps({ saUm: 7.8, salMm: 0.53, str: 0.7 }, { pattern: 'cells', seed: 1, width: 1024, height: 1024 }));
  const parts = [sideOf(hide), surfaceSide('measured', 'leather', { gloss: [{ angle: 60, mean: 3, sd: 0.1, spots: 5 }] } as unknown as PartAppearance, colourOf(hide), map)] as const;
  let how: Painted | undefined;
  document.addEventListener('adjoin-painted', (event) => { how = (event as CustomEvent<Painted>).detail; }, { once: true });
  const strip = await mount<AdjoinSurfaceStrip>('adjoin-surface-strip', { joint: { kind: 'edge', viewMm: 700 }, sides: parts, fills: [colourOf(hide).css, colourOf(hide).css], magnification: 3 });
  strip.style.width = '420px';
  strip.style.height = '180px';
  await until('a picture', () => how);
  const canvas = strip.renderRoot.querySelector('canvas')!;
  const image = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, canvas.height);
  const ratio = spread(image, 0) / spread(image, 1);
  expect(ratio).toBeGreaterThan(0.85);
  expect(ratio).toBeLessThan(1.18);
});
