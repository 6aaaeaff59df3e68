import fc from 'fast-check';
import { expect, test } from 'vitest';
import { serialiseCabin } from '../../src/cabin/index.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { jointPath } from '../../src/cabin/index.ts';
import { judge } from '../../src/harmony/judge.ts';
import type { Reading } from '../../src/readings/reading.ts';
import { builtInRuleBooks } from '../../src/rules/index.ts';
import { cabinPieces, GatheredCabin, mostInPiece } from '../../src/workers/cabin-pieces.ts';
import type { CabinPiece } from '../../src/workers/cabin-pieces.ts';
import type { Telling } from '../../src/workers/judge-in-steps.ts';
import { Opening } from '../../src/workers/opening.ts';
import type { Opened } from '../../src/workers/opening.ts';
import { Session } from '../../src/workers/session.ts';
import type { SessionReply } from '../../src/workers/session-protocol.ts';
import { tellingPace } from '../../src/workers/telling-pace.ts';
import { bigCabin } from '../bench/big-cabin.ts';
import { smallCabin } from '../support/small-cabin.ts';

const [book] = builtInRuleBooks;
type Pace = (judged: number, told: number) => Telling;

/** Opens a cabin in a session, every message copied as between a page and its worker; gives what the page could show on the way and at last. */
function opened(cabin: Cabin, pace: Pace = () => 'nothing'): { readonly shown: readonly Opened[]; readonly whole: ReturnType<Opening['end']>; readonly told: readonly SessionReply[] } {
  const opening = new Opening();
  const shown: Opened[] = [];
  const told: SessionReply[] = [];
  const last = new Session(() => pace).answer({ kind: 'open', text: serialiseCabin(cabin), file: 'cabin.json' }, (reply) => {
    told.push(reply);
    if (reply.kind === 'progress') return;
    if (reply.kind !== 'opening' && reply.kind !== 'read' && reply.kind !== 'judging') throw new Error(`${reply.kind} while opening`);
    const now = opening.take(structuredClone(reply));
    if (now !== undefined) shown.push(now);
  });
  if (last.kind !== 'judged') throw new Error(JSON.stringify(last));
  return { shown, whole: opening.end(structuredClone(last)), told };
}

const weigh = (piece: CabinPiece): number => {
  const of = (specimens: readonly { readonly readings: readonly unknown[] }[]): number => specimens.reduce((sum, { readings }) => sum + readings.length, 0);
  switch (piece.kind) {
    case 'head': return 0;
    case 'piece': return piece.readings.length;
    case 'joints': return piece.items.length;
    case 'masters': return piece.items.length + of(piece.items);
    case 'parts': return piece.items.length + piece.items.reduce((sum, part) => sum + of(part.sources.flatMap(({ specimens }) => specimens)), 0);
  }
};

test('a cabin in pieces is the same cabin again, and no piece is heavy, however its readings lie', () => {
  const plain = smallCabin();
  const reading = plain.parts[0]?.sources[0]?.specimens[0]?.readings[0] as Reading;
  fc.assert(fc.property(fc.array(fc.constantFrom(0, 3, 400, 999, 1000, 2500), { minLength: 1, maxLength: plain.parts.length }), (counts) => {
    const cabin: Cabin = {
      ...plain,
      masters: [{ id: 'heavy', kind: 'master', readings: Array.from({ length: 2100 }, () => reading) }, { id: 'light', kind: 'master', readings: [reading] }],
      parts: plain.parts.map((part, place) => ({
        ...part, sources: part.sources.map((source) => ({ ...source, specimens: source.specimens.map((specimen) => ({ ...specimen, readings: Array.from({ length: counts[place] ?? 1 }, () => reading) })) })),
      })),
    };
    const gathered = new GatheredCabin();
    for (const piece of cabinPieces(cabin)) {
      expect(weigh(piece)).toBeLessThanOrEqual(mostInPiece);
      gathered.take(structuredClone(piece));
    }
    expect(gathered.gathered()).toEqual(cabin);
  }), { numRuns: 25 });
});

test('what is shown at last is what judging all at once gives, with every joint where it runs', () => {
  for (const cabin of [smallCabin({ ruleBook: 'ciede2000' }), bigCabin({ parts: 40, joints: 90, seed: 5 })]) {
    const { whole } = opened(cabin);
    expect(JSON.parse(JSON.stringify(whole.judgement))).toEqual(JSON.parse(JSON.stringify(judge(cabin, book))));
    expect(whole.cabin).toEqual(JSON.parse(serialiseCabin(cabin)));
    expect([...whole.paths]).toEqual(cabin.joints.flatMap((joint) => {
      const path = jointPath(cabin, joint);
      return path === undefined ? [] : [[joint.id, path]];
    }));
  }
});

test('the parts are shown first and then ever more joints in the order of the document, with the counts of those', () => {
  const cabin = bigCabin({ parts: 40, joints: 90, seed: 5 });
  const { shown, whole, told } = opened(cabin, (judged) => (judged % 20 === 0 ? 'joints' : judged % 5 === 0 ? 'count' : 'nothing'));
  expect(shown[0]?.judgement.joints).toEqual([]);
  expect(shown[0]?.judgement.parts.map(({ id }) => id)).toEqual(cabin.parts.map(({ id }) => id));
  expect(shown.map(({ judgement }) => judgement.joints.length)).toEqual([0, 20, 40, 60, 80, 90]);
  for (const { judgement } of shown) {
    const { holds, open, clashes, accepted } = judgement.summary;
    expect(holds + open + clashes + accepted).toBe(judgement.joints.length);
    expect(judgement.joints).toEqual(whole.judgement.joints.slice(0, judgement.joints.length));
  }
  expect(told.flatMap((reply) => (reply.kind === 'progress' ? [Math.round(reply.share * 90)] : []))).toEqual([5, 10, 15, 25, 30, 35, 45, 50, 55, 65, 70, 75, 85, 90]);
  // No joint is told of twice.
  expect(told.flatMap((reply) => (reply.kind === 'judging' ? reply.joints.map(({ id }) => id) : []))).toEqual(cabin.joints.map(({ id }) => id));
});

test('joints are told of soon, then in ever larger lots, and how many there are in between', () => {
  // A clock by which every joint takes 3 ms.
  let now = 0;
  const pace = tellingPace(6000, () => now);
  const lots: number[] = [];
  const silences: number[] = [];
  let [told, heard] = [0, 0];
  for (let judged = 1; judged <= 6000; judged += 1) {
    now += 3;
    const telling = pace(judged, told);
    if (telling === 'nothing') continue;
    silences.push(now - heard);
    heard = now;
    if (telling !== 'joints') continue;
    lots.push(judged - told);
    told = judged;
  }
  expect((lots[0] ?? 0) * 3).toBeLessThan(60);
  expect(lots.every((lot, place) => place < 2 || lot >= (lots[place - 1] ?? 0))).toBe(true);
  expect(Math.max(...lots)).toBe(200);
  expect(lots.length).toBeLessThan(40);
  expect(Math.max(...silences)).toBeLessThan(160);
  // Of a small cabin only their number is told of.
  const few = tellingPace(300, () => now);
  expect(Array.from({ length: 300 }, (_, judged) => {
    now += 3;
    return few(judged + 1, 0);
  })).not.toContain('joints');
});

test('a cabin that is handed over in pieces is judged, and edits go on from it', () => {
  const cabin = smallCabin({ ruleBook: 'ciede2000' });
  const session = new Session();
  for (const piece of cabinPieces(cabin)) session.gather(structuredClone(piece));
  const opening = new Opening(cabin);
  const last = session.answer({ kind: 'take' }, (reply) => {
    if (reply.kind === 'opening' || reply.kind === 'read' || reply.kind === 'judging') opening.take(structuredClone(reply));
  });
  if (last.kind !== 'judged') throw new Error(last.kind);
  expect(opening.end(last).judgement).toEqual(judge(cabin, book));
  const after = session.answer({ kind: 'edit', patch: { fields: { name: 'Renamed' }, gone: [], lists: {} } }, () => undefined);
  expect(after.kind === 'changed' && after.patch.fields.cabin).toBe('Renamed');
});
