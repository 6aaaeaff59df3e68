import { describe, expect, it } from 'vitest';
import { judge } from '../../src/harmony/judge.ts';
import type { CheckResult } from '../../src/harmony/judgement.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import type { RuleBook } from '../../src/rules/rule-book.ts';
import { spectrumOf, twoPartCabin } from '../support/two-part-cabin.ts';

const book = builtInRuleBooks[0]!;
/** Two greys of L* 50 and 50.9, where no cap on dL* holds. */
const level = (lightness: number): readonly number[] => spectrumOf(() => ((lightness + 16) / 116) ** 3);
const colourOf = (by: RuleBook, gapMm: number): CheckResult =>
  judge(twoPartCabin({ curve: level(50) }, { curve: level(50.9) }, { gapMm, viewMm: 700 }), by).joints[0]!.checks.find(({ check }) => check === 'colour')!;
const shares = (note: string): readonly number[] => [...note.matchAll(/(\d+) % (?:of the limit )?under/g)].map((match) => Number(match[1]));

describe('the factor of the visible gap', () => {
  // Gap of 10 mm from 700 mm: 2 atan(10 / 1400) = 49.1'; 1 + (49.1 - 5) / 220 = 1.20, by hand from the formula of the book.
  const factor = 1.2;

  it('that is off is told with and without, and the verdict is that without', () => {
    const colour = colourOf(book, 10);
    expect(colour.factorNotes).toHaveLength(1);
    const [note] = colour.factorNotes!;
    expect(note).toContain('The factor of the visible gap is switched off: with it (the limit times 1.20)');
    const [on, off] = shares(note!);
    expect(off).toBe(Math.round(100 * (colour.limitUse ?? 0)));
    expect(Math.abs(on! - off! / factor)).toBeLessThanOrEqual(1);
  });

  it('that is on is told the other way round', () => {
    const colour = colourOf({ ...book, gapFactor: { ...book.gapFactor, enabled: true } }, 10);
    const [note] = colour.factorNotes!;
    expect(note).toContain('is switched on');
    const [on, off] = shares(note!);
    expect(on).toBe(Math.round(100 * (colour.limitUse ?? 0)));
    expect(Math.abs(on! - off! / factor)).toBeLessThanOrEqual(1);
  });

  it('is not spoken of where it would change nothing', () => {
    expect(colourOf(book, 0.5).factorNotes).toBeUndefined();
  });
});

describe('kL from texture', () => {
  it('that is switched on without a visible texture is said not to act', () => {
    const colour = colourOf({ ...book, textureLightness: { ...book.textureLightness, enabled: true } }, 0.5);
    expect(colour.factorNotes?.[0]).toMatch(/^kL from texture is switched on and does not act: minVisibleContrast is not known/);
  });
});
