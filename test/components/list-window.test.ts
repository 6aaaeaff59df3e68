import fc from 'fast-check';
import { expect, test } from 'vitest';
import { grownSpan, ListHeights, shownItems } from '../../components/model/list-window.ts';

const usual = 100;
const lists = fc.array(fc.option(fc.integer({ min: 1, max: 400 }), { nil: undefined }), { minLength: 1, maxLength: 60 });

/** Heights as they were measured, the others as usual. */
function measured(heights: readonly (number | undefined)[]): ListHeights {
  const made = new ListHeights(usual);
  made.setItems(heights.map((_, place) => `item-${place}`));
  heights.forEach((height, place) => {
    if (height !== undefined) made.measure(`item-${place}`, height);
  });
  return made;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0);

test('what is rendered and what is left bare are together as high as the whole list, wherever one looks', () => {
  fc.assert(fc.property(lists, fc.nat(80), fc.nat(80), fc.array(fc.integer({ min: -3, max: 80 }), { maxLength: 3 }), (heights, from, length, beside) => {
    const { items, after } = shownItems(measured(heights), { from, to: from + length }, beside);
    const high = (place: number): number => heights[place] ?? usual;
    const places = items.map(({ place }) => place);
    expect(places).toEqual([...new Set(places)].sort((a, b) => a - b));
    for (const place of beside) if (place >= 0 && place < heights.length) expect(places).toContain(place);
    for (let place = from; place < Math.min(from + length, heights.length); place += 1) expect(places).toContain(place);
    expect(sum(items.map(({ place, before }) => before + high(place))) + after).toBeCloseTo(sum(heights.map((each) => each ?? usual)), 6);
    // Every item lies where it would lie were all of them rendered.
    let top = 0;
    for (const { place, before } of items) {
      top += before;
      expect(top).toBeCloseTo(sum(heights.slice(0, place).map((each) => each ?? usual)), 6);
      top += high(place);
    }
  }));
});

test('the item at a height is the one whose edges lie about it', () => {
  fc.assert(fc.property(lists, fc.nat(4000), (heights, px) => {
    const list = measured(heights);
    const tops = heights.map((_, place) => sum(heights.slice(0, place).map((each) => each ?? usual)));
    const plain = tops.findLastIndex((top) => top <= px);
    expect(list.at(px)).toBe(plain);
  }));
});

test('what was measured stays with its item in another order', () => {
  const list = measured([50, 300]);
  list.setItems(['item-1', 'item-0', 'new']);
  expect([0, 1, 2, 3].map((place) => list.offset(place))).toEqual([0, 300, 350, 450]);
});

test('step by step all is rendered that is to be, what is seen first of all, and never more than a step at a time', () => {
  fc.assert(fc.property(lists, fc.nat(60), fc.nat(60), fc.nat(6000), fc.integer({ min: 1, max: 500 }), (heights, from, length, top, px) => {
    const list = measured(heights);
    const span = (margin: number) => ({ from: list.at(Math.max(0, top - margin)), to: list.at(top + 300 + margin) + 1 });
    const [seen, all] = [span(0), span(700)];
    let now: { readonly from: number; readonly to: number } = { from, to: from + length };
    for (let frame = 0; frame <= heights.length && (now.from !== all.from || now.to !== all.to); frame += 1) {
      const next = grownSpan(list, now, seen, all, px);
      expect(next.from).toBeGreaterThanOrEqual(all.from);
      expect(next.to).toBeLessThanOrEqual(all.to);
      expect(next.from).toBeLessThanOrEqual(seen.from);
      expect(next.to).toBeGreaterThanOrEqual(seen.to);
      const known = new Set(Array.from({ length: Math.max(0, now.to - now.from) }, (_, at) => now.from + at));
      const made = Array.from({ length: next.to - next.from }, (_, at) => next.from + at).filter((place) => !known.has(place) && (place < seen.from || place >= seen.to));
      const largest = Math.max(usual, ...heights.map((each) => each ?? usual));
      expect(sum(made.map((place) => heights[place] ?? usual))).toBeLessThanOrEqual(2 * (px + 2 * largest));
      now = next;
    }
    expect(now).toEqual(all);
  }));
});

test('after a leap what is seen is rendered first, with an item on either side, and growth begins from there', () => {
  const list = measured(Array.from({ length: 40 }, () => undefined));
  const [seen, all] = [{ from: 20, to: 24 }, { from: 11, to: 33 }];
  const leapt = grownSpan(list, { from: 0, to: 9 }, seen, all, 300);
  expect(leapt).toEqual({ from: 19, to: 25 });
  const next = grownSpan(list, leapt, seen, all, 300);
  // 300 px hold three items of 100 px.
  expect([19 - next.from, next.to - 25]).toEqual([3, 3]);
  expect(grownSpan(list, { from: 30, to: 40 }, { from: 0, to: 4 }, { from: 0, to: 13 }, 300)).toEqual({ from: 0, to: 5 });
});
