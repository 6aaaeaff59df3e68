import { expect, test } from 'vitest';
import { movedView, nearestTowards, parseView, transformBetween, viewBoxOf, viewText, zoomedView } from '../../components/model/map-gestures.ts';
import { matrixStep } from '../../components/model/matrix-cells.ts';
import { mapPlace } from '../../src/report/figures/map-place.ts';

const points = [[0, 0], [2000, 1000]] as const;
const whole = mapPlace(points, 840, 440, 20);

test('the whole fits with its margin, and px lead back to millimetres', () => {
  expect(whole.scale).toBeCloseTo(0.4, 12);
  expect(whole.toScreen([0, 0])).toEqual([20, 20]);
  expect(whole.toScreen([2000, 1000])).toEqual([820, 420]);
  whole.toCabin(whole.toScreen([123, 456])).forEach((value, axis) => expect(value).toBeCloseTo([123, 456][axis] as number, 9));
});

test('zooming keeps the point under the pointer where it is, and out again is the whole', () => {
  const about = [700, 100] as const;
  const before = whole.toCabin(about);
  const near = mapPlace(points, 840, 440, 20, zoomedView(whole, 3, about, [840, 440]));
  expect(near.scale).toBeCloseTo(1.2, 12);
  near.toCabin(about).forEach((value, axis) => expect(value).toBeCloseTo(before[axis] as number, 9));
  expect(zoomedView(near, 1 / 3, about, [840, 440])).toBeUndefined();
});

test('a move by px is a move by millimetres of that scale', () => {
  const near = mapPlace(points, 840, 440, 20, { zoom: 2, centre: [1000, 500] });
  expect(movedView(near, [80, -40]).centre).toEqual([900, 550]);
});

test('what was drawn at one place shows through a view box as at another: the same corners of the box', () => {
  const near = mapPlace(points, 840, 440, 20, { zoom: 4, centre: [300, 700] });
  const [x, y, width, height] = viewBoxOf(whole, near, [840, 440]).split(' ').map(Number);
  const [left, top] = whole.toScreen(near.toCabin([0, 0]));
  const [right, bottom] = whole.toScreen(near.toCabin([840, 440]));
  expect([x, y, (x ?? 0) + (width ?? 0), (y ?? 0) + (height ?? 0)].map((value) => Math.round((value ?? 0) * 10))).toEqual([left, top, right, bottom].map((value) => Math.round(value * 10)));
});

test('moved as a whole, what was drawn at one place lies where another place has it', () => {
  const near = mapPlace(points, 840, 440, 20, { zoom: 4, centre: [300, 700] });
  const [x = NaN, y = NaN, share = NaN] = [.../translate\((.+)px, (.+)px\) scale\((.+)\)/.exec(transformBetween(whole, near)) ?? []].slice(1).map(Number);
  for (const point of [[0, 0], [2000, 1000], [700, 345]] as const) {
    const [left, top] = whole.toScreen(point);
    const [wantedLeft, wantedTop] = near.toScreen(point);
    expect(x + left * share).toBeCloseTo(wantedLeft, 1);
    expect(y + top * share).toBeCloseTo(wantedTop, 1);
  }
});

test('a view goes through an address and back; nonsense is the whole', () => {
  expect(parseView(viewText({ zoom: 2.5, centre: [700, -20] }))).toEqual({ zoom: 2.5, centre: [700, -20] });
  for (const text of [undefined, '', '2', '2,1', '2,1,1,1', 'x,1,1', '0.5,0,0', '1,2,', 'Infinity,0,0']) expect(parseView(text)).toBeUndefined();
});

test('an arrow key goes to the nearest in its direction and to nothing behind', () => {
  const items = [{ name: 'near', at: [10, 2] as const }, { name: 'far', at: [40, 0] as const }, { name: 'up', at: [0, -10] as const }, { name: 'left', at: [-5, 0] as const }];
  expect(nearestTowards([0, 0], 'ArrowRight', items)?.name).toBe('near');
  expect(nearestTowards([10, 2], 'ArrowRight', items)?.name).toBe('far');
  expect(nearestTowards([0, 0], 'ArrowUp', items)?.name).toBe('up');
  expect(nearestTowards([0, 0], 'ArrowDown', items)).toBeUndefined();
});

test('keys in the matrix stay inside it', () => {
  expect(matrixStep({ row: 0, column: 4 }, 'ArrowRight', false, 5)).toEqual({ row: 0, column: 4 });
  expect(matrixStep({ row: 3, column: 4 }, 'PageUp', false, 5)).toEqual({ row: 0, column: 4 });
  expect(matrixStep({ row: 3, column: 4 }, 'Home', false, 5)).toEqual({ row: 3, column: 0 });
  expect(matrixStep({ row: 3, column: 4 }, 'End', true, 5)).toEqual({ row: 4, column: 4 });
  expect(matrixStep({ row: 3, column: 4 }, 'x', false, 5)).toBeUndefined();
});
