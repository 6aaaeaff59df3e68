import { expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { HeldCabins, ToldCabins } from '../../src/workers/told-cabins.ts';
import type { CabinNews } from '../../src/workers/told-cabins.ts';
import { bigCabin } from '../bench/big-cabin.ts';
import { smallCabin } from '../support/small-cabin.ts';

/** Both ends, what is told copied on the way. */
function ends() {
  const [told, held, news] = [new ToldCabins(), new HeldCabins(), [] as CabinNews[]];
  const tell = (...cabins: readonly Cabin[]): readonly Cabin[] => told.tell(cabins, (one) => {
    news.push(one);
    held.take(structuredClone(one));
  }).map((number) => held.of(number));
  return { told, held, tell, kinds: () => news.splice(0).map(({ kind }) => kind) };
}

test('a cabin is told once, one that differs a little from it as its change, and the worker has what the page has', () => {
  const { tell, kinds } = ends();
  const first = bigCabin({ parts: 60, joints: 120, seed: 2 });
  const part = { ...first.parts[7], name: 'Other' } as Cabin['parts'][number];
  const edited: Cabin = { ...first, name: 'Edited', parts: first.parts.with(7, part), joints: first.joints.toSpliced(3, 1) };
  expect(tell(first)).toEqual([first]);
  expect(kinds()).toEqual(['cabin']);
  expect(tell(edited, first)).toEqual([edited, first]);
  expect(kinds()).toEqual(['changed cabin']);
  const [again] = tell(edited);
  expect(again).toEqual(edited);
  expect(kinds()).toEqual(['forget cabins']);
  // The worker knows it by what it is, so that what it worked out for it serves again.
  expect(tell(edited)[0]).toBe(again);
  expect(kinds()).toEqual([]);
});

test('another cabin goes whole, also under the same id; one that was forgotten is told anew', () => {
  const { tell, kinds } = ends();
  const [first, other] = [bigCabin({ parts: 500, joints: 900, seed: 2 }), { ...bigCabin({ parts: 500, joints: 900, seed: 3 }), id: bigCabin({ parts: 500, joints: 900, seed: 2 }).id }];
  expect(tell(first, smallCabin())).toEqual([first, smallCabin()]);
  expect(kinds()).toEqual(['cabin', 'cabin']);
  expect(tell(other)).toEqual([other]);
  expect(kinds()).toEqual(['cabin', 'forget cabins']);
  expect(tell(first)).toEqual([first]);
  expect(kinds()).toEqual(['cabin', 'forget cabins']);
});

test('a cabin that the worker reads by itself is not told to it, even where it comes while others are forgotten', () => {
  const { told, held, tell, kinds } = ends();
  const number = told.reserve();
  tell(smallCabin());
  tell(bigCabin({ parts: 4, joints: 3, seed: 2 }));
  const read = smallCabin();
  held.take({ kind: 'cabin', number, cabin: structuredClone(read) });
  kinds();
  told.known(read, number);
  expect(tell(read)).toEqual([read]);
  expect(kinds()).toEqual(['forget cabins']);
});
