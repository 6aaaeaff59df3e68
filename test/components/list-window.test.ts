import fc from 'fast-check';
import { expect, test } from 'vitest';
import { ListHeights, shownItems } from '../../components/model/list-window.ts';

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
