import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { nameLines } from '../../../src/report/figures/name-lines.ts';

describe('a name over a figure', () => {
  test('is broken between words and told whole where three lines hold it', () => {
    expect(nameLines('Upper dash skin', 40)).toEqual(['Upper dash skin']);
    expect(nameLines('Mid dash skin, passenger side', 26)).toEqual(['Mid dash skin, passenger', 'side']);
    expect(nameLines('Mid dash skin, passenger side', 15)).toEqual(['Mid dash skin,', 'passenger side']);
  });

  test('is cut off with an ellipsis where they do not', () => {
    expect(nameLines('Mid dash skin, passenger side', 9)).toEqual(['Mid dash', 'skin,', 'passenge…']);
    expect(nameLines('Instrumentenhaube', 8)).toEqual(['Instrum…']);
  });

  test('takes three lines at most, none longer than asked for, with its words in order', () => {
    fc.assert(fc.property(fc.array(fc.string({ minLength: 1, maxLength: 14, unit: fc.constantFrom('a', 'b', 'c', ',', '-') }), { minLength: 1, maxLength: 9 }), fc.integer({ min: 4, max: 40 }), (words, most) => {
      const name = words.join(' ');
      const lines = nameLines(name, most);
      expect(lines.length).toBeLessThanOrEqual(3);
      for (const line of lines) expect(line.length).toBeLessThanOrEqual(most);
      if (!lines.some((line) => line.endsWith('…'))) expect(lines.join(' ')).toBe(name);
    }));
  });
});
