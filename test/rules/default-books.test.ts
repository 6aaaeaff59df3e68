import { differenceCiede2000, differenceCmc } from 'culori';
import { describe, expect, it } from 'vitest';
import { compileRuleBook, ruleBookById, builtInRuleBooks, restoreRuleBook, describeBook, ruleMatrix } from '../../src/rules/index.ts';
import type { RuleBook } from '../../src/rules/index.ts';

const ciede2000 = ruleBookById('ciede2000')!;
const cmc = ruleBookById('cmc')!;

// Limits and wanted readings: common practice, no source. Standard deviations: assumption, no source. kL 2 for pile: CIE 116-1995 (CIE94, textiles).
const table = [
  ['moulded', 'hard', 0.7, 1, 0.7, 0.5, [0.15, 0.04, 0.06], { spots: 5 }],
  ['painted', 'hard', 0.7, 1, 0.7, 'level', [0.10, 0.04, 0.05], { spots: 5 }],
  ['soft-skin', 'skin', 0.8, 1, 0.8, 0.5, [0.15, 0.05, 0.07], { spots: 5 }],
  ['leather', 'skin', 1.0, 1, 1.0, 0.6, [0.35, 0.10, 0.15], { spots: 5, specimens: 2 }],
  ['textile', 'pile', 1.2, 2, 1.5, 'none', [0.40, 0.12, 0.15], { spots: 5, rotations: 4 }],
  ['headliner', 'pile', 1.2, 2, 1.5, 'none', [0.30, 0.10, 0.12], { spots: 5, rotations: 4 }],
  ['carpet', 'pile', 1.5, 2, 2.0, 'none', [0.60, 0.15, 0.20], { spots: 8, rotations: 4 }],
  ['thread', 'pile', 1.5, 2, 2.0, 'none', [0.50, 0.15, 0.20], { spots: 4 }],
  ['gloss-black', 'shiny', 0.8, 1, 0.8, '5 at 20', [0.10, 0.04, 0.05], { spots: 5 }],
  ['decor-film', 'shiny', 1.0, 1, 1.0, 'level', [0.20, 0.06, 0.08], { spots: 5 }],
  ['metallised', 'shiny', 1.5, 1, undefined, 'none', [0.30, 0.08, 0.10], { spots: 5 }],
] as const;

const glossOf = (row: RuleBook['materials'][number]): unknown => {
  if (row.gloss.kind === 'not applicable') return 'none';
  if (row.gloss.kind === 'level') return 'level';
  return row.gloss.angle === 60 ? row.gloss.limit : `${row.gloss.limit} at ${row.gloss.angle}`;
};

describe.each([['ciede2000', ciede2000], ['cmc', cmc]] as const)('the built-in book %s', (id, book) => {
  it('is a valid book and compiles without a remark', () => {
    expect(restoreRuleBook(JSON.parse(JSON.stringify(book)))).toEqual({ value: book, issues: [] });
    expect(compileRuleBook(book).issues).toEqual([]);
  });

  it.each(table)('has the row of %s', (material, family, limit, kL, cap, gloss, sd, wanted) => {
    const row = book.materials.find((each) => each.material === material)!;
    expect(row).toMatchObject({ family, colourLimit: limit, readingSd: sd, masterColourLimit: limit });
    // CMC(2:1) has the textile's lightness factor in itself (ISO 105-J03).
    expect(row.kL).toBe(id === 'cmc' ? 1 : kL);
    expect(row.lightnessCap).toBe(cap);
    expect(glossOf(row)).toBe(gloss);
    expect(row.wanted).toEqual(wanted);
    expect(row.masterGlossLimit).toBe(typeof gloss === 'number' ? gloss : gloss === '5 at 20' ? 5 : undefined);
    expect(row.advisory === true).toBe(material === 'metallised');
    expect(row.sameGeometryOnly === true).toBe(material === 'metallised');
  });

  it('has exactly the eleven materials', () => {
    expect(book.materials.map((row) => row.material)).toEqual(table.map(([material]) => material));
  });

  it('judges by level: 0.5 GU or 10 % of the mean up to 70 GU, above it 5 GU at 20 degrees', () => {
    // Common practice, no source.
    for (const material of ['painted', 'decor-film']) {
      expect(book.materials.find((row) => row.material === material)!.gloss).toMatchObject({ floor: 0.5, share: 0.1, switchGu60: 70, limit20: 5 });
    }
  });

  it('has the lights, factors and standings', () => {
    // Common practice, no source.
    expect(book.lights.map(({ light, factor, standing }) => (standing === 'shown' ? light : [light, factor]))).toEqual([
      ['D65', 1], ['A', 1.2], ['FL11', 1.4], ['LED-B3', 1.3], 'ID65', 'FL2', 'LED-B5', 'P2300',
    ]);
    expect(book.observer).toBe(10);
    expect(book.geometryOrder).toEqual(['45:0', 'de:8', 'di:8']);
    expect(book.standing).toMatchObject({ colour: 'required', gloss: 'required', texture: 'if-measured', metamerism: 'advisory' });
  });

  it('has the remaining values', () => {
    // Common practice, no source, but for the confidence (ISO 14253-1, default 95 %).
    expect(book.decision).toMatchObject({ rule: 'guarded', confidence: 0.95 });
    expect(book.combination).toMatchObject({ unlikeFamilyAllowance: 0.2, lightnessCapBelowL: 35 });
    expect(book.texture).toMatchObject({ ratio: [0.8, 1.25], strDifference: 0.2, vdiClass: 1 });
    expect(book.toneStep).toMatchObject({ minDL: 5, maxDL: 15, maxDH: 2 });
    expect(book.contrast.minDifference).toBe(12);
    expect(book.kinds).toEqual({ edge: 1, gap: 1, step: 1, seam: 1, sightline: 1.3 });
    expect(book.gapFactor.enabled).toBe(false);
    // Assumption, no source.
    expect(book.assumed).toMatchObject({ priorReadings: 8, correlation: { sameSession: 1, sameInstrument: 0.5, different: 0 }, maximumSpots: 50 });
  });

  it('caps gloss and lightness of the upper dash, with the caution', () => {
    // 2.0 GU60: SAE technical paper abstract (2006). L* 30: common practice, no source.
    expect(book.caps.map(({ zone, quantity, max, angle }) => [zone, quantity, max, angle])).toEqual([
      ['upper-dash', 'gloss', 2, 60], ['upper-dash', 'lightness', 30, undefined],
    ]);
    expect(book.caps[0]!.basis).toContain('SAE technical paper abstract (2006)');
    expect(book.caps[1]!.basis).toBe('common practice, no source');
    for (const cap of book.caps) expect(cap.caution).toMatch(/veiling glare.*legal visibility requirements and the responsible engineer decide/);
  });

  it('gives a basis for every value it prints', () => {
    const rows = describeBook(book);
    expect(rows.length).toBeGreaterThan(120);
    for (const row of rows) expect(row.basis, `${row.subject}: ${row.name}`).toMatch(/common practice, no source|assumption, no source|SAE|ISO|CIE|JCGM/);
    expect(rows.filter((row) => row.value === '').map((row) => row.name)).toEqual([]);
  });

  it('covers every pair of materials', () => {
    const { cells, issues } = ruleMatrix(book);
    expect(issues).toEqual([]);
    expect(cells).toHaveLength(66);
    expect(new Set(cells.map(({ materials }) => [...materials].sort().join())).size).toBe(66);
    for (const cell of cells) {
      expect(cell.rule.colour.notJudged).toBeUndefined();
      expect(cell.rule.colour.limit).toBeGreaterThan(0);
      expect(Number(cell.limit)).toBeCloseTo(cell.rule.colour.limit, 12);
    }
  });
});

describe('the two books', () => {
  it('are found by id and differ by their formula', () => {
    expect(builtInRuleBooks.map((book) => [book.id, book.formula])).toEqual([['ciede2000', 'ciede2000'], ['cmc', 'cmc']]);
    expect(cmc.cmc).toEqual({ l: 2, c: 1 });
    expect(ruleBookById('none')).toBeUndefined();
  });

  it('say honestly that the parties set the tolerances', () => {
    for (const book of builtInRuleBooks) expect(book.note).toContain('ASTM D3134 and D7195');
  });

  // Oracle: culori 4 (mode lab65).
  const lab = (l: number) => ({ mode: 'lab65' as const, l, a: 0, b: 0 });
  it.each([[23.5, 1, true], [24.5, 1, false], [45.5, 2, true], [46.5, 2, false]])('compare at L* %d with kL %d as the note of the CMC book says', (l, kL, higher) => {
    const byCmc = differenceCmc(2, 1)(lab(l), lab(l + 0.001));
    const byCiede2000 = differenceCiede2000(kL)(lab(l), lab(l + 0.001));
    expect(byCmc > byCiede2000).toBe(higher);
  });
});
