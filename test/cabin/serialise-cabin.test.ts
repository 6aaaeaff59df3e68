import { describe, expect, it } from 'vitest';
import { parseCabin } from '../../src/cabin/parse-cabin.ts';
import { serialiseCabin } from '../../src/cabin/serialise-cabin.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { withNode } from '../support/edit-json.ts';

/** The same value with the keys of every object in the opposite order. */
function turned(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(turned);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).toReversed().map(([key, member]) => [key, turned(member)]));
}

describe('serialiseCabin', () => {
  it('is read back as it was', () => {
    const text = serialiseCabin(smallCabin());
    expect(JSON.parse(text)).toEqual(smallCabin());
    expect(parseCabin(text)).toEqual({ value: smallCabin(), issues: [] });
  });

  it('gives the same bytes whatever the order of the keys', () => {
    expect(serialiseCabin(turned(smallCabin()) as Cabin)).toBe(serialiseCabin(smallCabin()));
  });

  it('keeps unknown members and every digit', () => {
    const value = 0.1 + 0.2;
    const cabin = withNode(withNode(smallCabin(), 'parts[0].extra', { a: [1, { b: 'c' }] }), 'joints[0].viewMm', value) as Cabin;
    const read = parseCabin(serialiseCabin(cabin)).value;
    expect(read).toEqual(cabin);
    expect(read?.joints[0]?.viewMm).toBe(value);
  });

  it('writes lists of numbers on one line and ends with a line break', () => {
    const lines = serialiseCabin(smallCabin()).split('\n');
    expect(lines.at(-1)).toBe('');
    expect(lines.filter((line) => line.includes('"values": [')).every((line) => /\[[^[\]]+\],?\}?,?$/u.test(line))).toBe(true);
    expect(lines.some((line) => line.includes('"outline": [[0, 0], [1400, 0], [1400, 200], [0, 200]]'))).toBe(true);
  });
});
