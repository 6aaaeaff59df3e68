import { afterEach, expect, test } from 'vitest';
import { SingleOwner } from '../../../components/platform/single-owner.ts';
import type { OwnerMessage } from '../../../components/platform/single-owner.ts';

/** Two owners in one page stand for two tabs: locks and channels are shared by the origin, not by the page. */
const owners: SingleOwner[] = [];
const tab = (): SingleOwner => {
  const owner = new SingleOwner('test');
  owners.push(owner);
  return owner;
};
afterEach(() => owners.splice(0).forEach((owner) => owner.dispose()));

const next = (owner: SingleOwner, type: string): Promise<unknown> =>
  new Promise((resolve) => owner.addEventListener(type, (event) => resolve((event as CustomEvent).detail), { once: true }));

test('one tab owns a document, another does not, until it is let go', async () => {
  const [one, two] = [tab(), tab()];
  expect(await one.claim('a')).toBe(true);
  expect(await two.claim('a')).toBe(false);
  expect(await two.claim('b')).toBe(true);
  expect([one.document, two.document]).toEqual(['a', 'b']);
  expect([...await two.allOwned()].sort()).toEqual(['a', 'b']);
  await one.release();
  expect(await two.claim('a')).toBe(true);
  expect([...await one.allOwned()]).toEqual(['a']);
});

test('others are told of what a tab claims, saves and lets go', async () => {
  const [one, two] = [tab(), tab()];
  const heard: OwnerMessage[] = [];
  two.addEventListener('message', (event) => heard.push((event as CustomEvent<OwnerMessage>).detail));
  await one.claim('c');
  one.tell({ kind: 'saved', document: 'c', at: 5 });
  const last = next(two, 'message');
  await one.release();
  await last;
  await new Promise((resolve) => setTimeout(resolve, 50));
  expect(heard).toEqual([{ kind: 'claimed', document: 'c' }, { kind: 'saved', document: 'c', at: 5 }, { kind: 'released', document: 'c' }]);
});

test('an owner that is asked gives way once it has written what is left', async () => {
  const [one, two] = [tab(), tab()];
  await one.claim('d');
  let written = false;
  one.addEventListener('give-way', () => setTimeout(() => {
    written = true;
    void one.release();
  }, 100));
  expect(await two.takeOver('d')).toBe(true);
  expect([written, one.document, two.document]).toEqual([true, undefined, 'd']);
});

test('a document that its tab has let go is taken over at once, and asks nothing of that tab', async () => {
  const [one, two] = [tab(), tab()];
  await one.claim('f');
  expect(await two.claim('f')).toBe(false);
  await one.release();
  let asked = false;
  one.addEventListener('give-way', () => { asked = true; });
  expect(await two.takeOver('f')).toBe(true);
  expect([asked, one.document, two.document]).toEqual([false, undefined, 'f']);
  expect(await one.claim('f')).toBe(false);
});

test('from a tab that hangs the document is taken, and it learns of it when it wakes', async () => {
  const [one, two] = [tab(), tab()];
  await one.claim('e');
  const lost = next(one, 'lost');
  expect(await two.takeOver('e')).toBe(true);
  expect(await lost).toBe('e');
  expect([one.document, two.document]).toEqual([undefined, 'e']);
}, 20_000);
