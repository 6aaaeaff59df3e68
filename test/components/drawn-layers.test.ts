import { expect, test } from 'vitest';
import { DrawnLayers } from '../../components/figures/drawn-layers.ts';
import { mapLayers, placeOfMap } from '../../src/report/figures/cabin-map.ts';
import type { CabinMapInput, CabinMapSize, MapJoint, MapPart } from '../../src/report/figures/cabin-map.ts';
import type { MapPlace } from '../../src/report/figures/map-place.ts';
import { MapMemory } from '../../src/report/figures/map-memory.ts';
import { printTheme } from '../../src/report/figures/theme.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';

const side = 40;
const verdicts = ['holds', 'open', 'clashes'] as const;
const size = { width: 700, height: 500, interactive: true } as const;

/** A square of parts, each joined to its right neighbour. */
function squareOf(columns: number): CabinMapInput {
  const parts = Array.from({ length: columns * columns }, (_, at): MapPart => {
    const [x, y] = [side * (at % columns), side * Math.floor(at / columns)];
    return { id: `p${at}`, name: `Part ${at}`, outline: [[x, y], [x + side, y], [x + side, y + side], [x, y + side]], fill: '#444444', line: at % 50 === 7 };
  });
  const joints = parts.slice(1).map((part, at): MapJoint => ({ id: `j${at}`, path: part.outline.slice(0, 2), verdict: verdicts[at % 3] as MapJoint['verdict'], label: `Joint ${at}` }));
  return { title: 'Map', parts, joints, zones: [{ id: 'z', name: 'Zone', parts: parts.map(({ id }) => id) }] };
}

const placeOf = (input: CabinMapInput, of: CabinMapSize): MapPlace => placeOfMap(input, of) as MapPlace;

test('whatever changes between and during its frames, a map ends as one that is drawn at once', () => {
  const random = seededNumbers(11);
  const pick = (count: number): number => Math.floor(count * random());
  const drawn = new DrawnLayers();
  const memory = new MapMemory();
  let input = squareOf(40);
  let view: CabinMapSize['view'];
  let unfinished = 0;
  for (let round = 0; round < 60; round += 1) {
    switch (pick(6)) {
      case 0: input = { ...input, parts: input.parts.with(pick(input.parts.length), { ...input.parts[0] as MapPart, id: `other ${round}`, fill: '#777777' }) }; break;
      case 1: input = { ...input, joints: input.joints.with(pick(input.joints.length), { ...input.joints[pick(9)] as MapJoint, id: `other ${round}`, accepted: round % 2 === 0 }) }; break;
      case 2: input = { ...input, rested: new Set(input.joints.filter(() => random() < 0.3).map(({ id }) => id)) }; break;
      case 3: input = { ...input, selected: [`p${pick(1600)}`], part: `p${pick(1600)}`, highlight: `j${pick(1500)}` }; break;
      case 4: view = { zoom: 1 + 3 * random(), centre: [800 * random(), 800 * random()] }; break;
      default: input = { ...input, joints: input.joints.slice(0, 1200 + pick(300)) };
    }
    const of: CabinMapSize = { ...size, memory, ...(view === undefined ? {} : { view }) };
    // Some changes come while the one before is still being drawn.
    const frames = pick(4) === 0 ? 1 : Infinity;
    let made = drawn.draw(mapLayers(input, of, printTheme), placeOf(input, of), 300);
    for (let frame = 1; !made.finished && frame < frames; frame += 1) {
      unfinished += 1;
      made = drawn.draw(mapLayers(input, of, printTheme), placeOf(input, of), 300);
    }
    if (!made.finished) continue;
    const { memory: _, ...anew } = of;
    const whole = mapLayers(input, anew, printTheme);
    expect(made.layers.map(({ key }) => key)).toEqual(whole.map(({ key }) => key));
    expect(made.layers.map(({ made: one }) => one)).toEqual(whole.map(({ make }) => make()));
    expect(made.layers.every(({ place }) => place.scale === placeOf(input, of).scale)).toBe(true);
  }
  expect(unfinished).toBeGreaterThan(60);
});

test('no frame draws more than it may, and what waits is shown as it was, where it was', () => {
  const input = squareOf(40);
  const drawn = new DrawnLayers();
  const whole = mapLayers(input, size, printTheme);
  const first = drawn.draw(whole, placeOf(input, size), 300);
  const weights = new Map(whole.map(({ key, weight }) => [key, weight]));
  expect(first.layers[0]?.key).toBe('faces 0');
  expect(first.layers.reduce((sum, { key }) => sum + (weights.get(key) ?? Infinity), 0)).toBeLessThanOrEqual(300);
  let frames = 1;
  while (!drawn.draw(whole, placeOf(input, size), 300).finished) frames += 1;
  expect(frames).toBeGreaterThanOrEqual(1600 / 300);
  const nearer: CabinMapSize = { ...size, view: { zoom: 2, centre: [100, 100] } };
  const then = drawn.draw(mapLayers(input, nearer, printTheme), placeOf(input, nearer), 300);
  expect(then.finished).toBe(false);
  expect(then.layers.length).toBe(whole.length);
  expect(then.layers[0]?.place.view.zoom).toBe(2);
  expect(then.layers[2]?.place.view.zoom).toBe(1);
});

test('while one looks about nothing is drawn but what follows the pointer', () => {
  const input = squareOf(4);
  const drawn = new DrawnLayers();
  drawn.draw(mapLayers(input, size, printTheme), placeOf(input, size), 300);
  const nearer: CabinMapSize = { ...size, view: { zoom: 2, centre: [100, 100] } };
  const { layers, finished } = drawn.draw(mapLayers({ ...input, highlight: 'j1' }, nearer, printTheme), placeOf(input, nearer), 0);
  expect(finished).toBe(false);
  expect(layers.map(({ place }) => place.view.zoom)).toEqual(layers.map(({ key }) => (key === 'halo' ? 2 : 1)));
});

test('in a frame that is late one layer is drawn, and what follows the pointer', () => {
  const input = squareOf(40);
  const drawn = new DrawnLayers();
  const whole = mapLayers({ ...input, highlight: 'j1' }, size, printTheme);
  const { layers, finished } = drawn.draw(whole, placeOf(input, size), Infinity, () => true);
  expect(finished).toBe(false);
  expect(layers.map(({ key }) => key)).toEqual([whole[0]?.key, 'halo']);
});
