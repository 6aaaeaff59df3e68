import { describe, expect, it } from 'vitest';
import { describeBook, glossRuleText, ruleBookById, ruleMatrix } from '../../src/rules/index.ts';
import type { PairRule } from '../../src/rules/index.ts';

const book = ruleBookById('ciede2000')!;
const basis = 'common practice, no source';

describe('describeBook', () => {
  const rows = describeBook(book);
  const find = (subject: string, name: string) => rows.find((row) => row.subject === subject && row.name === name);

  it('prints values with unit and basis', () => {
    expect(find('moulded', 'colour limit')).toMatchObject({ group: 'materials', value: '0.7', basis });
    expect(find('carpet', 'kL')).toMatchObject({ value: '2', basis: expect.stringContaining('CIE 116-1995') });
    expect(find('leather', 'readings wanted')).toMatchObject({ value: '5 spots, 2 specimens' });
    expect(find('carpet', 'readings wanted')).toMatchObject({ value: '8 spots, 4 rotations each' });
    expect(find('moulded', 'sd of one reading, L*, a*, b*')).toMatchObject({ value: '0.15, 0.04, 0.06', basis: 'assumption, no source' });
    expect(find('FL11', 'required')).toMatchObject({ value: 'limit times 1.4' });
    expect(find('the book', 'formula')).toMatchObject({ value: 'CIEDE2000' });
    expect(find('visible gap', 'colour limit times (switched off)')).toMatchObject({ value: 'min(1.25, 1 + max(0, gapArcmin - 5)/220)', basis: 'assumption, no source' });
    expect(find('smoother side', 'kL from texture (switched off)')).toMatchObject({ value: 'clamp(1 + (minVisibleContrast - 10)/40, 1, 2)', basis: expect.stringContaining('assumption, no source') });
    expect(find('visible texture', 'visible difference at most')).toMatchObject({ group: 'texture', value: 'max(1, minVisibleContrast ^ 0.6)', unit: 'thresholds' });
    expect(find('visible texture', 'illuminance on the parts')).toMatchObject({ value: '2000', unit: 'lx' });
    expect(find('gloss-black', 'gloss')).toMatchObject({ value: '5 GU at 20°, haze within 10', basis: 'common practice, no source; haze: assumption, no source' });
    expect(describeBook({ ...book, textureLightness: { ...book.textureLightness, enabled: true } }).some(({ name }) => name === 'kL from texture')).toBe(true);
    expect(find('upper-dash', 'gloss at most')).toMatchObject({ value: '2', unit: 'GU at 60°', caution: expect.stringContaining('responsible engineer') });
  });

  it('names CMC with its factors', () => {
    expect(describeBook(ruleBookById('cmc')!)[0]).toMatchObject({ name: 'formula', value: 'CMC(2:1)' });
  });

  it('prints every rule of a pair with its formulas', () => {
    const rule: PairRule = {
      id: 'airbag', pair: ['*', 'moulded'], kind: 'gap', basis, colour: { limit: '0.5 + 0.01 * gapArcmin', components: [{ component: 'dL', min: -0.3, belowL: 30, basis: 'b' }] },
      gloss: { kind: 'limit', limit: 0.3, angle: 60, basis: 'g' }, standing: { texture: 'required' }, defaultIntent: { gloss: 'match' },
    };
    const printed = describeBook({ ...book, rules: [rule] }).filter((row) => row.subject === 'airbag').map(({ name, value, basis: why }) => [name, value, why]);
    expect(printed).toEqual([
      ['speaks of', 'any + moulded: the material moulded and the kind gap', basis],
      ['colour limit', '0.5 + 0.01 * gapArcmin', basis],
      ['component dL below L* 30', 'from -0.3', 'b'],
      ['gloss', '0.3 GU at 60°', 'g'],
      ['intent of gloss', 'match', basis],
      ['standing of texture', 'required', basis],
    ]);
  });

  it('says where a book gives no basis', () => {
    expect(describeBook({ ...book, bases: undefined }).find((row) => row.name === 'formula')!.basis).toBe('no basis given');
  });
});

describe('ruleMatrix', () => {
  it('gives each unordered pair once, in the order of the book', () => {
    const { cells } = ruleMatrix(book);
    expect(cells[1]!.materials).toEqual(['moulded', 'painted']);
    expect(cells[1]).toMatchObject({ limit: '0.7', lightnessCap: 0.7, rules: [] });
    expect(cells.at(-1)).toMatchObject({ materials: ['metallised', 'metallised'], rules: ['metallised-pair'] });
  });

  it('shows the formula of a winning rule, and the rules that speak of a pair under some condition', () => {
    const rules: PairRule[] = [
      { id: 'any', pair: ['*', 'leather'], basis, colour: { limit: '0.6 + 0.01 * gapArcmin' } },
      { id: 'seam', pair: ['moulded', 'leather'], kind: 'seam', basis, colour: { limit: 1 } },
    ];
    const { cells } = ruleMatrix({ ...book, rules });
    const cell = cells.find(({ materials }) => materials.join() === 'moulded,leather')!;
    expect(cell).toMatchObject({ limit: '0.6 + 0.01 * gapArcmin', rules: ['any', 'seam'] });
    expect(cell.rule.id).toBe('any');
    expect(cells.find(({ materials }) => materials.join() === 'moulded,painted')!.rules).toEqual([]);
  });

  it('is empty, with the faults, for a faulty book', () => {
    const { cells, issues } = ruleMatrix({ ...book, id: '' });
    expect(cells).toEqual([]);
    expect(issues).toMatchObject([{ path: 'id' }]);
  });
});

describe('glossRuleText', () => {
  it('words the three kinds of rule', () => {
    expect(glossRuleText({ kind: 'limit', limit: 'max(0.4, 0.2 * meanGloss)', angle: 60, basis })).toBe('max(0.4, 0.2 * meanGloss) GU at 60°');
    expect(glossRuleText({ kind: 'level', floor: 0.5, share: 0.1, switchGu60: 70, limit20: 5, basis }))
      .toBe('max(0.5, 10 % of the mean) GU at 60° up to 70 GU, above it 5 GU at 20°');
    expect(glossRuleText({ kind: 'not applicable', reason: 'no flat surface', basis })).toBe('not applicable: no flat surface');
  });
});
