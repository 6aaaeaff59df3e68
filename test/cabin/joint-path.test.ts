import { describe, expect, it } from 'vitest';
import type { Cabin, Joint } from '../../src/cabin/cabin.ts';
import { jointPath } from '../../src/cabin/joint-path.ts';
import { smallCabin } from '../support/small-cabin.ts';

const cabin = smallCabin();
const joint = (id: string, from: Cabin = cabin): Joint => {
  const found = from.joints.find((candidate) => candidate.id === id);
  if (found === undefined) throw new Error(`no joint ${id}`);
  return found;
};

// Outlines and gaps stand in test/support/small-cabin.ts; the middles of the gaps are computed by hand.
describe('jointPath', () => {
  it('runs along the border, with the part on either hand', () => {
    expect(jointPath(cabin, joint('j1'))).toEqual({ kind: 'border', points: [[0, 201.5], [1400, 201.5]], left: 'dash-upper', right: 'dash-lower' });
    expect(jointPath(cabin, joint('j4'))).toMatchObject({ kind: 'border', points: [[600, 402], [800, 402]], left: 'dash-lower', right: 'console' });
  });

  it('takes the path that the joint has', () => {
    expect(jointPath(cabin, joint('j6'))).toEqual({ kind: 'border', points: [[803, 404], [803, 900]], left: 'console-side', right: 'console' });
  });

  it('leads across for a sight line', () => {
    const path = jointPath(cabin, joint('j5'));
    expect(path?.kind).toBe('lead');
    expect(path?.points.map(([x]) => x)).toEqual([-6, 1406]);
  });

  it('leads across where parts that should meet do not, and is nothing without an outline', () => {
    const far = smallCabin({ parts: cabin.parts.map((part) => (part.id === 'console' ? { ...part, outline: [[600, 700], [800, 700], [800, 900]] } : part)) });
    expect(jointPath(far, joint('j4', far))).toMatchObject({ kind: 'lead', points: [[600, 400], [600, 700]] });
    const bare = smallCabin({ parts: cabin.parts.map((part) => (part.id === 'console' ? { ...part, outline: undefined } : part)) });
    expect(jointPath(bare, joint('j4', bare))).toBeUndefined();
  });

  it('is the same object for the same document', () => {
    expect(jointPath(cabin, joint('j1'))).toBe(jointPath(cabin, joint('j1')));
  });
});
