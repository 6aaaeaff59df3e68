import { expect, test } from 'vitest';
import { serialiseCabin } from '../../src/cabin/index.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { jointPath } from '../../src/cabin/index.ts';
import { judge } from '../../src/harmony/judge.ts';
import { builtInRuleBooks } from '../../src/rules/index.ts';
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
    if (reply.kind !== 'read' && reply.kind !== 'judging') throw new Error(`${reply.kind} while opening`);
    shown.push(opening.take(structuredClone(reply)));
  });
  if (last.kind !== 'judged') throw new Error(JSON.stringify(last));
  return { shown, whole: opening.end(structuredClone(last)), told };
}

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

test('a cabin that the page hands over is judged and not told back, and edits go on from it', () => {
  const cabin = smallCabin({ ruleBook: 'ciede2000' });
  const session = new Session();
  const opening = new Opening(cabin);
  const last = session.answer({ kind: 'take', cabin }, (reply) => {
    expect(reply).not.toHaveProperty('cabin');
    if (reply.kind === 'read' || reply.kind === 'judging') opening.take(structuredClone(reply));
  });
  if (last.kind !== 'judged') throw new Error(last.kind);
  expect(opening.end(last).judgement).toEqual(judge(cabin, book));
  const after = session.answer({ kind: 'edit', patch: { fields: { name: 'Renamed' }, gone: [], lists: {} } }, () => undefined);
  expect(after.kind === 'changed' && after.patch.fields.cabin).toBe('Renamed');
});
