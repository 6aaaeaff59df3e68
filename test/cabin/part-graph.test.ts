import { describe, expect, it } from 'vitest';
import type { Cabin, Joint } from '../../src/cabin/cabin.ts';
import { farthestPair, partGraph } from '../../src/cabin/part-graph.ts';
import { smallCabin } from '../support/small-cabin.ts';

/** Parts a, b, ... in two zones, and joints as pairs of letters; a capital second letter makes a sight line. */
function cabinOf(zones: Readonly<Record<string, string>>, joints: readonly string[]): Cabin {
  const parts = Object.entries(zones).flatMap(([zone, letters]) => [...letters].map((id) => ({ id, name: id, zone, sources: [] })));
  const list = joints.map((pair, index): Joint => ({ id: `j${index}`, parts: [pair.charAt(0), pair.charAt(1).toLowerCase()], kind: /[A-Z]/u.test(pair) ? 'sightline' : 'edge' }));
  return { ...smallCabin(), parts, joints: list };
}

const touching = (joint: Joint): boolean => joint.kind !== 'sightline';

describe('partGraph', () => {
  const graph = partGraph(cabinOf({ front: 'abcd', rear: 'efgh' }, ['ab', 'bc', 'cd', 'ad', 'de', 'ef', 'gH', 'ba']));

  it('finds neighbours once each, in the order of the joints', () => {
    expect(graph.neighbours('a')).toEqual(['b', 'd']);
    expect(graph.neighbours('g', touching)).toEqual([]);
    expect(graph.jointsBetween('a', 'b').map(({ id }) => id)).toEqual(['j0', 'j7']);
    expect(graph.jointsOf('h').map(({ id }) => id)).toEqual(['j6']);
    expect(graph.neighbours('nobody')).toEqual([]);
  });

  it('finds connected sets over all parts and within zones', () => {
    expect(graph.connectedSets(touching)).toEqual([['a', 'b', 'c', 'd', 'e', 'f']]);
    expect(graph.zoneSets(touching)).toEqual([{ zone: 'front', parts: ['a', 'b', 'c', 'd'] }, { zone: 'rear', parts: ['e', 'f'] }]);
    expect(graph.connectedSets(() => false)).toEqual([]);
  });

  it('finds paths of fewest joints', () => {
    expect(graph.shortestPath('b', 'e')).toEqual(['b', 'a', 'd', 'e']);
    expect(graph.shortestPath('b', 'e', undefined, ['b', 'c', 'd', 'e'])).toEqual(['b', 'c', 'd', 'e']);
    expect(graph.shortestPath('a', 'g')).toBeUndefined();
    expect(graph.shortestPath('a', 'a')).toEqual(['a']);
  });
});

describe('farthestPair', () => {
  it('takes the largest distance, the first of equals, and passes over unknown ones', () => {
    const places: Readonly<Record<string, number>> = { a: 0, b: 5, c: 5 };
    const apart = (a: string, b: string): number | undefined => {
      const [from, to] = [places[a], places[b]];
      return from === undefined || to === undefined ? undefined : Math.abs(from - to);
    };
    expect(farthestPair(['a', 'b', 'c', 'x'], apart)).toEqual(['a', 'b']);
    expect(farthestPair(['x', 'y'], apart)).toBeUndefined();
  });
});
