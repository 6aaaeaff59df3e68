import { differenceCiede2000 } from 'culori';
import { describe, expect, it } from 'vitest';
import type { Cabin, NamedColour } from '../../src/cabin/cabin.ts';
import { parseCabin, serialiseCabin } from '../../src/cabin/index.ts';
import { spectrumToLab, lightByName } from '../../src/colour/index.ts';
import { judge } from '../../src/harmony/judge.ts';
import type { CheckResult } from '../../src/harmony/judgement.ts';
import type { Reading } from '../../src/readings/reading.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { spectra, spectrumOf, startNm, stepNm, twoPartCabin } from '../support/two-part-cabin.ts';

const book = builtInRuleBooks[0]!;
const match = { intent: { colour: 'match' as const } };
const grey = (level: number): readonly number[] => spectrumOf(() => level);
const readOn = (colour: string, level: number): Reading[] =>
  spectra(grey(level)).map((reading) => ({ ...reading, spot: { name: `${colour} ${reading.spot.name}` }, colour }));

/** Both or one of two parts as patterned sources with their colours named. */
function patterned(first: readonly Reading[], second: readonly Reading[], named: readonly (readonly NamedColour[] | undefined)[]): Cabin {
  const cabin = twoPartCabin(
    { surface: named[0] === undefined ? 'solid' : 'patterned', readings: first }, { surface: named[1] === undefined ? 'solid' : 'patterned', readings: second }, match,
  );
  return { ...cabin, parts: cabin.parts.map((part, index) => ({ ...part, sources: part.sources.map((source) => (named[index] === undefined ? source : { ...source, namedColours: named[index] })) })) };
}

const shares: readonly NamedColour[] = [{ name: 'line', areaShare: 0.2 }, { name: 'ground', areaShare: 0.8 }];
const colourOf = (cabin: Cabin): CheckResult => judge(cabin, book).joints[0]!.checks.find(({ check }) => check === 'colour')!;
const labOf = (level: number) => {
  const [l, a, b] = spectrumToLab({ startNm, stepNm, values: grey(level) }, lightByName('D65')!, 10);
  return { mode: 'lab65' as const, l, a, b };
};
const apart = (first: number, second: number): number => differenceCiede2000()(labOf(first), labOf(second));

const underD65 = (check: CheckResult): number => check.lights.find(({ light }) => light === 'D65')?.value ?? NaN;

describe('patterned surfaces', () => {
  it('without named colours are for the eye', () => {
    const cabin = twoPartCabin({ surface: 'patterned' }, { surface: 'patterned' }, match);
    expect(colourOf(cabin)).toMatchObject({ verdict: 'open', cause: 'judged by eye' });
  });

  it('with the same named colours are judged colour by colour; the worst stands, called by its name and with its own difference', () => {
    const cabin = patterned([...readOn('ground', 0.06), ...readOn('line', 0.2)], [...readOn('ground', 0.06), ...readOn('line', 0.24)], [shares, shares]);
    const colour = colourOf(cabin);
    expect(colour).toMatchObject({ verdict: 'clashes' });
    expect(colour.sentence).toContain('(line)');
    // CIEDE2000 of the two lines by the library culori.
    expect(Math.abs(underD65(colour) - apart(0.2, 0.24))).toBeLessThan(0.01);
    const like = patterned([...readOn('ground', 0.06), ...readOn('line', 0.2)], [...readOn('ground', 0.06), ...readOn('line', 0.2)], [shares, shares]);
    expect(colourOf(like).verdict).toBe('holds');
  });

  it('beside a plain part are judged by their ground, the colour with the largest share', () => {
    const ground = colourOf(patterned([...readOn('ground', 0.06), ...readOn('line', 0.2)], spectra(grey(0.06)), [shares, undefined]));
    expect(ground.verdict).toBe('holds');
    expect(ground.sentence).toContain('(ground)');
    const other = colourOf(patterned([...readOn('ground', 0.06), ...readOn('line', 0.2)], spectra(grey(0.2)), [shares, undefined]));
    expect(other.verdict).toBe('clashes');
    expect(Math.abs(underD65(other) - apart(0.06, 0.2))).toBeLessThan(0.01);
  });

  it('with colours that nothing was read on are for the eye', () => {
    expect(colourOf(patterned(spectra(grey(0.06)), spectra(grey(0.06)), [shares, undefined]))).toMatchObject({ cause: 'judged by eye' });
  });

  it('keep the colour of a reading in their file', () => {
    const cabin = patterned(readOn('ground', 0.06), spectra(grey(0.06)), [shares, undefined]);
    expect(parseCabin(serialiseCabin(cabin)).value?.parts[0]?.sources[0]?.specimens[0]?.readings[0]).toMatchObject({ colour: 'ground' });
  });
});

describe('a melange', () => {
  it('is judged by its mean, and says how far its spots lie about it', () => {
    const levels = [0.055, 0.06, 0.065];
    const readings = levels.flatMap((level, spot) => spectra(grey(level), 1).map((reading): Reading => ({ ...reading, spot: { name: `m${spot}` } })));
    const colour = colourOf(twoPartCabin({ surface: 'melange', readings }, {}, match));
    const lightness = levels.map((level) => labOf(level).l);
    const mean = lightness.reduce((sum, value) => sum + value, 0) / 3;
    // Mean colour difference from the mean of greys: the mean distance in L* alone.
    const spread = lightness.reduce((sum, value) => sum + Math.abs(value - mean), 0) / 3;
    expect(colour.sentence).toContain(`the spots of the melange Panel A lie ΔE*ab ${spread.toFixed(2)} about their mean`);
    expect(colourOf(twoPartCabin({ readings }, {}, match)).sentence).not.toContain('melange');
  });
});
