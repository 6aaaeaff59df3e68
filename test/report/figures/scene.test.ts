import { expect, test } from 'vitest';
import { cabinMap, jointUnder, placeOfMap } from '../../../src/report/figures/cabin-map.ts';
import type { CabinMapInput } from '../../../src/report/figures/cabin-map.ts';
import { coveredGrid } from '../../../src/report/figures/covered-grid.ts';
import type { CoveredGrid } from '../../../src/report/figures/covered-grid.ts';
import { mapPlace } from '../../../src/report/figures/map-place.ts';
import type { MapPlace } from '../../../src/report/figures/map-place.ts';
import { inkOn } from '../../../src/report/figures/ink-on.ts';
import { jointStrip, pixelsAtAngle } from '../../../src/report/figures/joint-strip.ts';
import { limitScale, limitScaleX } from '../../../src/report/figures/limit-scale.ts';
import { spectralDifference } from '../../../src/report/figures/spectra-plot.ts';
import { printTheme } from '../../../src/report/figures/theme.ts';
import { drawing, element, serialiseScene } from '../../../src/report/scene.ts';
import type { SceneElement, SceneNode } from '../../../src/report/scene.ts';
import { seededNumbers } from '../../support/seeded-numbers.ts';

const every = (node: SceneNode): SceneElement[] => (typeof node === 'string' ? [] : [node, ...node.children.flatMap(every)]);
const ofClass = (node: SceneNode, name: string): SceneElement[] => every(node).filter((one) => String(one.attributes['class'] ?? '').split(' ').includes(name));

test('text and attributes cannot leave their place', () => {
  expect(serialiseScene(element('text', { 'aria-label': '"><script>' }, 'a < b & "c"'))).toBe(
    '<text aria-label="&quot;&gt;&lt;script&gt;">a &lt; b &amp; &quot;c&quot;</text>');
});

test('numbers are rounded to hundredths, negative zero is zero, absent attributes are left out', () => {
  expect(serialiseScene(element('rect', { x: 1.23456, y: -0.001, width: undefined, hidden: false }))).toBe('<rect x="1.23" y="0"/>');
});

test('a drawing without a name is hidden from those who cannot see it', () => {
  expect(drawing(1, 1, undefined).attributes['aria-hidden']).toBe('true');
  expect(drawing(1, 1, 'Map').attributes['aria-label']).toBe('Map');
});

test('a gap fills the angle on the screen at 600 mm that it fills in the cabin', () => {
  // 1 mm at 600 mm is 1 mm on a screen at 600 mm, 96 px an inch of 25.4 mm.
  expect(pixelsAtAngle(1, 600)).toBeCloseTo(96 / 25.4, 9);
  expect(pixelsAtAngle(1, 1200)).toBeCloseTo(48 / 25.4, 9);
});

test('a strip shows both colours as they were given, and hatches the side that has none', () => {
  const strip = jointStrip({ fills: ['#123456', undefined], kind: 'gap', gapMm: 1, viewMm: 600 }, { width: 100, height: 60 }, printTheme);
  expect(ofClass(strip, 'sample').map((one) => one.attributes['fill'])).toEqual(['#123456']);
  expect(ofClass(strip, 'no-colour')).toHaveLength(1);
});

test('a closed strip has nothing between its sides', () => {
  const strip = jointStrip({ fills: ['#123456', '#234567'], kind: 'gap', gapMm: 3, viewMm: 600 }, { width: 100, height: 60, closed: true }, printTheme);
  expect(strip.children).toHaveLength(2);
});

test('the limit stands in the middle of a scale of 200 %, and what lies beyond its end stays at the end', () => {
  const x = limitScaleX({ width: 200 });
  expect([x(0), x(1), x(2), x(7)]).toEqual([0, 100, 200, 200]);
  expect(ofClass(limitScale({ verdict: 'clashes', limitUse: 7 }, { width: 200, height: 18 }, printTheme), 'beyond')).toHaveLength(1);
});

test('verdicts differ without their hue: solid, dashed, saw', () => {
  const core = (verdict: 'holds' | 'open' | 'clashes', accepted = false): SceneElement =>
    ofClass(limitScale({ verdict, accepted, limitUse: 1 }, { width: 200, height: 18 }, printTheme), 'core')[0] as SceneElement;
  expect(core('holds').attributes['stroke-dasharray']).toBeUndefined();
  expect(core('open').attributes['stroke-dasharray']).toBeDefined();
  expect(String(core('clashes').attributes['d']).length).toBeGreaterThan(4 * String(core('holds').attributes['d']).length);
  expect(Number(core('clashes').attributes['stroke-width'])).toBeGreaterThan(1.5 * Number(core('clashes', true).attributes['stroke-width']));
});

test('without a value a scale still shows its limit', () => {
  const scale = limitScale({ verdict: 'open', limitUse: undefined }, { width: 200, height: 18 }, printTheme);
  expect(ofClass(scale, 'limit')).toHaveLength(1);
  expect(ofClass(scale, 'value')).toHaveLength(0);
});

test('a map keeps proportions, is centred, and stays inside its margin', () => {
  const place = mapPlace([[0, 0], [200, 100]], 440, 440, 20).toScreen;
  expect(place([0, 0])).toEqual([20, 120]);
  expect(place([200, 100])).toEqual([420, 320]);
});

const square = (x: number): [number, number][] => [[x, 0], [x + 100, 0], [x + 100, 100], [x, 100]];
const twoParts: CabinMapInput = {
  title: 'Map',
  parts: [{ id: 'a', name: 'A', outline: square(0), fill: '#333333' }, { id: 'b', name: 'B', outline: square(110) }],
  joints: [
    { id: 'j', path: [[105, 0], [105, 100]], verdict: 'clashes', label: 'A and B' },
    { id: 'k', path: [[0, 50], [210, 50]], verdict: 'holds', label: 'A and B', lead: true },
  ],
  zones: [{ id: 'z', name: 'Zone', parts: ['a', 'b'] }],
};

test('a map draws every part and joint, the clashes last, and hatches what has no colour', () => {
  const map = cabinMap(twoParts, { width: 600, height: 300 }, printTheme);
  expect(ofClass(map, 'face')).toHaveLength(2);
  expect(ofClass(map, 'hatch')).toHaveLength(1);
  expect(ofClass(map, 'joint').map((one) => one.attributes['data-joint'])).toEqual(['k', 'j']);
  expect(serialiseScene(map)).toContain('>Zone<');
});

test('a map to work on draws the same lines in few paths, and what can be hit about the joint that is pointed at', () => {
  const plain = cabinMap(twoParts, { width: 600, height: 300 }, printTheme);
  const map = cabinMap({ ...twoParts, highlight: 'j' }, { width: 600, height: 300, interactive: true }, printTheme);
  expect(ofClass(map, 'joint-lines')).toHaveLength(2);
  const ways = (of: SceneElement, name: string): unknown[] => ofClass(of, name).map((one) => one.attributes['d']);
  // The last casing and core are those of the halo, which is drawn larger; of the lead both ends are one path each in the plain map.
  const lines = every(map).filter((one) => one.attributes['class'] === 'joint-lines');
  expect(lines.flatMap((line) => ways(line, 'core')).join('')).toBe(ways(plain, 'core').join(''));
  expect(lines.flatMap((line) => ways(line, 'casing')).join('')).toBe(ways(plain, 'casing').join(''));
  expect(ofClass(map, 'hit').map((one) => one.attributes['data-joint'])).toEqual(['j']);
});

test('the joint under a point is the nearest within eight px, and none beyond', () => {
  const place = placeOfMap(twoParts, { width: 600, height: 300 }) as MapPlace;
  const at = (x: number, y: number, offset: number): string | undefined => {
    const [left, top] = place.toScreen([x, y]);
    return jointUnder(twoParts, place, [left + offset, top])?.id;
  };
  expect(at(105, 20, 0)).toBe('j');
  expect(at(105, 20, 7.9)).toBe('j');
  expect(at(105, 20, 8.1)).toBeUndefined();
  // Where both are within reach the nearer one; beyond the end of a line the distance to its end counts.
  expect(at(108, 50, 0)).toBe('k');
  expect(at(0, 50, -7.9)).toBe('k');
  expect(at(0, 50, -8.1)).toBeUndefined();
});

test('a raster of only the cells about a box says of the box what the whole raster says', () => {
  const random = seededNumbers(5);
  const point = (): [number, number] => [240 * random() - 20, 180 * random() - 20];
  for (let round = 0; round < 200; round += 1) {
    const polygons = Array.from({ length: 4 }, () => Array.from({ length: 3 }, point));
    const lines = [[point(), point()]];
    const [[left, top], wide, high] = [point(), 30 * random(), 20 * random()];
    const box = { left, top, right: left + wide, bottom: top + high };
    const asked = (grid: CoveredGrid): boolean => grid.bare(box.left, box.top, box.right, box.bottom);
    expect(asked(coveredGrid(polygons, lines, 200, 140, 4, box))).toBe(asked(coveredGrid(polygons, lines, 200, 140, 4)));
  }
});

test('a map without outlines is empty and does not fail', () => {
  expect(cabinMap({ title: 'Map', parts: [], joints: [] }, { width: 10, height: 10 }, printTheme).children).toEqual([]);
});

test.each([['#000000', '#ffffff'], ['#ffffff', '#000000'], ['color(srgb 0.2 0.2 0.2)', '#ffffff'], ['color(display-p3 0.9 0.9 0.8)', '#000000']])('the ink on %s is %s', (fill, ink) => {
  expect(inkOn(fill)).toBe(ink);
});

test('a fill in another notation has no ink of its own', () => {
  expect(inkOn('rebeccapurple')).toBeUndefined();
});

test('the difference of spectra stands at the wavelengths that both have', () => {
  const standard = { name: 'a', startNm: 400, stepNm: 10, values: [0.1, 0.2, 0.3] };
  const trial = { name: 'b', startNm: 390, stepNm: 20, values: [0.5, 0.25, 0.35] };
  expect(spectralDifference(standard, trial)).toEqual([[410, 0.25 - 0.2]]);
});
