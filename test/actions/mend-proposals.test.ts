import { expect, test } from 'vitest';
import { withMendProposals } from '../../src/actions/mend-proposals.ts';
import { checkChanges } from '../../src/cabin/check-changes.ts';
import { smallCabin } from '../support/small-cabin.ts';

const cabin = smallCabin();
const [first] = cabin.joints;

test('a mended joint gets the shifts of its own sides, dated as the document, and nothing else differs', () => {
  const [side] = first!.parts;
  const after = withMendProposals(cabin, [{ part: side, dL: 0.5, da: 0, db: -0.25, dGloss: 0 }], [first!.id], 'a target');
  expect(after.joints[0]!.proposals?.at(-1)).toEqual({ id: expect.stringMatching(/^proposal-\d+$/), date: cabin.asOf, shifts: [{ part: side, dL: 0.5, db: -0.25 }], note: 'a target' });
  expect(after.joints.slice(1)).toEqual(cabin.joints.slice(1));
  expect(after.parts).toBe(cabin.parts);
  expect(checkChanges(cabin, after).issues).toEqual([]);
});

test('a changed part without a mended joint gets a proposal at each of its joints, with ids of their own', () => {
  const [side] = first!.parts;
  const own = cabin.joints.filter(({ parts }) => parts.includes(side));
  const after = withMendProposals(cabin, [{ part: side, dL: 0.5, da: 0, db: 0, dGloss: 0.3 }], [], 'a target');
  const made = after.joints.flatMap(({ id, proposals }) => (proposals ?? []).filter(({ note }) => note === 'a target').map((proposal) => ({ joint: id, ...proposal })));
  expect(made.map(({ joint }) => joint)).toEqual(own.map(({ id }) => id));
  expect(new Set(made.map(({ id }) => id)).size).toBe(own.length);
});

test('without changes the joints stay the same objects', () => {
  expect(withMendProposals(cabin, [], [], '').joints.every((joint, index) => joint === cabin.joints[index])).toBe(true);
});
