import { expect, test } from 'vitest';
import { assumedOutlines } from '../../components/model/assumed-outlines.ts';
import { mapInput } from '../../components/model/map-input.ts';
import { partGloss, tintedParts, tintKeys, tints, worstVerdicts } from '../../components/model/map-tints.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { judge } from '../../src/harmony/judge.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { smallCabin } from '../support/small-cabin.ts';

const bare = (cabin: Cabin): Cabin => ({
  ...cabin, parts: cabin.parts.map(({ outline: _, ...part }) => part), joints: cabin.joints.map(({ path: _, ...joint }) => joint),
});
const cabin = bare(smallCabin());
const judgement = judge(cabin, builtInRuleBooks[0]);

test('parts without outlines get boxes that do not overlap, the same at every load, near the parts they are joined to', () => {
  const outlines = assumedOutlines(cabin);
  expect([...outlines.keys()]).toEqual(cabin.parts.map(({ id }) => id));
  expect([...assumedOutlines(JSON.parse(JSON.stringify(cabin)) as Cabin)]).toEqual([...outlines]);
  const middles = [...outlines.values()].map(([a, , c]) => [((a?.[0] ?? 0) + (c?.[0] ?? 0)) / 2, ((a?.[1] ?? 0) + (c?.[1] ?? 0)) / 2] as const);
  middles.forEach(([x, y], place) => middles.slice(place + 1).forEach(([otherX, otherY]) => {
    expect(Math.abs(x - otherX) > 150 || Math.abs(y - otherY) > 90).toBe(true);
  }));
});

test('where some parts are drawn, the boxes of the others lie below them', () => {
  const mixed: Cabin = { ...smallCabin(), parts: smallCabin().parts.map(({ outline, ...part }, place) => (place < 4 ? { ...part, ...(outline === undefined ? {} : { outline }) } : part)) };
  const lowest = Math.max(...mixed.parts.flatMap(({ outline = [] }) => outline.map(([, y]) => y)));
  for (const outline of assumedOutlines(mixed).values()) for (const [, y] of outline) expect(y).toBeGreaterThan(lowest);
});

test('every joint between assumed boxes is drawn, and what stays the same is the same object', () => {
  const input = mapInput(cabin, judgement, new Map(), new Map());
  expect(input.joints.map(({ id }) => id)).toEqual(cabin.joints.map(({ id }) => id));
  const again = mapInput({ ...cabin }, { ...judgement }, new Map(), new Map());
  again.joints.forEach((joint, place) => expect(joint).toBe(input.joints[place]));
  again.parts.forEach((part, place) => expect(part).toBe(input.parts[place]));
});

test('a tint by verdict takes the worst of a part, and every tint fills from its key', () => {
  const rank = { holds: 0, open: 1, clashes: 2 } as const;
  const worst = worstVerdicts(judgement);
  for (const { parts, verdict } of judgement.joints) for (const id of parts) expect(rank[worst.get(id) ?? 'holds']).toBeGreaterThanOrEqual(rank[verdict]);
  for (const tint of tints.filter((one) => one !== 'colour')) {
    const keys = tintKeys(tint).map(({ fill }) => fill);
    const filled = tintedParts(tint, judgement, new Map());
    expect(filled.size).toBeGreaterThan(2);
    for (const { fill } of filled.values()) expect(keys).toContain(fill);
  }
});

test('gloss is that at 60 degrees where it was read', () => {
  // Read at 84 GU at 20 degrees and 90 GU at 60 degrees, as the cabin says.
  expect(partGloss(judgement).get('console')).toBeCloseTo(90, 0);
});
