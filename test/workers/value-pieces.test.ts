import fc from 'fast-check';
import { expect, test } from 'vitest';
import { GatheredValue, mostInPiece, valuePieces, weightUpTo } from '../../src/workers/value-pieces.ts';
import type { ValuePiece } from '../../src/workers/value-pieces.ts';
import { bigCabin } from '../bench/big-cabin.ts';
import { smallCabin } from '../support/small-cabin.ts';

/** Puts pieces together that were each copied as between a page and a worker. */
function gathered(pieces: Iterable<ValuePiece>): unknown {
  const coming = new GatheredValue();
  for (const piece of pieces) {
    const done = coming.take(structuredClone(piece));
    if (done !== undefined) return done.whole;
  }
  throw new Error('no piece was the last');
}

/** Every number, text and object in a value, counted by looking at its JSON: plain values only. */
const countOf = (value: unknown): number => {
  let count = 0;
  JSON.stringify(value, (_, item: unknown) => {
    count += 1;
    return item;
  });
  return count;
};

const plainValues = fc.letrec<{ value: unknown }>((tie) => ({
  value: fc.oneof(
    { maxDepth: 4, depthSize: 'large' },
    fc.integer(), fc.string(), fc.boolean(), fc.constant(null), fc.constant(undefined),
    fc.array(tie('value'), { maxLength: 12 }), fc.dictionary(fc.string(), tie('value'), { maxKeys: 12 }),
    fc.array(fc.tuple(fc.oneof(fc.string(), fc.integer()), tie('value')), { maxLength: 6 }).map((entries) => new Map(entries)),
    fc.uint8Array({ maxLength: 9 }),
  ),
})).value;

test('any value in pieces is that value again, in the same order of keys, however small the pieces', () => {
  fc.assert(fc.property(plainValues, fc.integer({ min: 1, max: 40 }), (value, most) => {
    const again = gathered(valuePieces(value, most));
    expect(again).toEqual(structuredClone(value));
    expect(JSON.stringify(again)).toBe(JSON.stringify(value));
  }), { numRuns: 300 });
});

test('a key of any name is a key like others', () => {
  const value: unknown = JSON.parse('{"__proto__":[1,2,3],"constructor":[4,5,6],"list":[7,8,9]}');
  const again = gathered(valuePieces(value, 2));
  expect(JSON.stringify(again)).toBe(JSON.stringify(value));
  expect(Object.getPrototypeOf(again)).toBe(Object.prototype);
});

test('what is small goes as one; of a large cabin no piece is heavy, wherever its readings lie, and nothing is sent twice', () => {
  expect([...valuePieces(smallCabin())]).toHaveLength(1);
  const spread = bigCabin({ parts: 600, joints: 1500, seed: 4 });
  const [reading] = spread.parts[0]?.sources[0]?.specimens[0]?.readings ?? [];
  const heap = { ...smallCabin(), masters: [{ id: 'heavy', kind: 'master', readings: Array.from({ length: 4000 }, () => reading) }] };
  for (const cabin of [spread, heap]) {
    const pieces = [...valuePieces(cabin)];
    expect(pieces.length).toBeGreaterThan(4);
    for (const { value, items } of pieces) expect(countOf(items ?? value)).toBeLessThan(1.2 * mostInPiece);
    // Few messages as well: each costs the page a task.
    expect(pieces.length).toBeLessThan(4 + (2 * countOf(cabin)) / mostInPiece);
    expect(pieces.reduce((sum, { value, items }) => sum + countOf(items ?? value), 0)).toBeLessThan(1.1 * countOf(cabin));
    expect(pieces.map(({ last }) => last)).toEqual(pieces.map((_, place) => place === pieces.length - 1));
    expect(gathered(pieces)).toEqual(cabin);
  }
});

test('values follow one another', () => {
  const coming = new GatheredValue();
  const heard = [[1, 2, 3, 4], 'text', { a: [5, 6], b: 7 }].flatMap((value) => [...valuePieces(value, 2)]).map((piece) => coming.take(structuredClone(piece)));
  expect(heard.flatMap((done) => (done === undefined ? [] : [done.whole]))).toEqual([[1, 2, 3, 4], 'text', { a: [5, 6], b: 7 }]);
});

test('weighing stops just beyond what is asked', () => {
  let looked = 0;
  const counted = new Proxy(Array.from({ length: 1000 }, () => 1), { get: (list, key) => {
    if (typeof key === 'string' && /^\d+$/.test(key)) looked += 1;
    return Reflect.get(list, key) as unknown;
  } });
  expect(weightUpTo(counted, 50)).toBeGreaterThan(50);
  expect(looked).toBeLessThan(60);
  expect(weightUpTo([1, 'two', { three: 3 }], 50)).toBeCloseTo(5 + 3 / 64);
});
