import { describe, expect, it } from 'vitest';
import { readDifferenceTable } from '../../src/formats/difference-table.ts';
import { readGlossTable } from '../../src/formats/gloss-table.ts';
import { readSpectraTable } from '../../src/formats/spectra-table.ts';
import { tableIssueCodes } from '../../src/formats/table-issue-codes.ts';

const nm = Array.from({ length: 31 }, (_, index) => 400 + 10 * index);
const values = nm.map((wavelength) => Number((0.05 + wavelength / 1e4).toFixed(4)));

describe('readSpectraTable', () => {
  it('reads fractions with labels', () => {
    const { value, issues } = readSpectraTable(`id,grain,${nm.join(',')}\nx,"coarse, deep",${values.join(',')}\n`);
    expect(issues).toEqual([]);
    expect(value).toEqual({ startNm: 400, stepNm: 10, count: 31, scale: 'fraction', rows: [{ id: 'x', labels: { grain: 'coarse, deep' }, values, line: 2 }] });
  });

  it('reads the same from a declared per cent file with semicolons and commas, and by option', () => {
    const percent = values.map((entry) => String(Math.round(entry * 1e4) / 100).replace('.', ','));
    const table = `id;${nm.map((wavelength) => `${wavelength} nm`).join(';')}\r\nx;${percent.join(';')}\r\n`;
    for (const outcome of [readSpectraTable(`\ufeff# scale: percent\r\n${table}`), readSpectraTable(table, { scale: 'percent' })]) {
      expect(outcome.issues).toEqual([]);
      outcome.value?.rows[0]?.values.forEach((entry, index) => expect(entry).toBeCloseTo(values[index] ?? 0, 12));
    }
  });

  it('keeps both the id and the pair of a metamerism table', () => {
    const { value } = readSpectraTable(`pair,role,${nm.join(',')}\np,standard,${values.join(',')}\np,trial,${values.join(',')}\n`, { key: ['pair', 'role'] });
    expect(value?.rows.map(({ id, labels }) => [id, labels])).toEqual([['p standard', { pair: 'p', role: 'standard' }], ['p trial', { pair: 'p', role: 'trial' }]]);
  });

  it('refuses a file that contradicts the option', () => {
    const text = `# scale: fraction\nid,${nm.join(',')}\nx,${values.join(',')}\n`;
    expect(readSpectraTable(text, { scale: 'percent' }).issues).toContainEqual(expect.objectContaining({ code: 'scale-conflict', line: 1, column: 1 }));
  });

  it('warns where a per cent file looks like fractions, and takes it as declared', () => {
    const { value, issues } = readSpectraTable(`# scale: percent\nid,${nm.join(',')}\nx,${values.join(',')}\n`);
    expect(issues).toEqual([expect.objectContaining({ code: 'scale-doubtful', severity: 'warning' })]);
    expect(value?.rows[0]?.values[0]).toBeCloseTo(0.0009, 12);
  });
});

describe('readDifferenceTable', () => {
  it('reads pairs, in any order of columns', () => {
    expect(readDifferenceTable('b2,a2,L2,b1,a1,L1,id\n6,5,4,3,2,1,x\n')).toEqual({ value: [{ id: 'x', line: 2, standard: [1, 2, 3], trial: [4, 5, 6] }], issues: [] });
  });

  it('reads covariances into full matrices, blank ones as none, and the limit', () => {
    const header = 'id,L1,a1,b1,L2,a2,b2,c1LL,c1La,c1Lb,c1aa,c1ab,c1bb,limit';
    const { value } = readDifferenceTable(`${header}\nx,1,2,3,4,5,6,9,1,2,8,3,7,0.5\ny,1,2,3,4,5,6,,,,,,,\n`);
    expect(value?.[0]).toMatchObject({ standardCovariance: [9, 1, 2, 1, 8, 3, 2, 3, 7], limit: 0.5 });
    expect(value?.[0]).not.toHaveProperty('trialCovariance');
    expect(value?.[1]).toEqual({ id: 'y', line: 3, standard: [1, 2, 3], trial: [4, 5, 6] });
  });

  it('names a column that it does not use', () => {
    const { value, issues } = readDifferenceTable('id,L1,a1,b1,L2,a2,b2,limits\nx,1,2,3,4,5,6,1\n');
    expect(value).toHaveLength(1);
    expect(issues).toEqual([expect.objectContaining({ code: 'unknown-column', severity: 'warning', hint: 'Did you mean "limit"? The column is not used.' })]);
  });
});

describe('readGlossTable', () => {
  it('reads readings', () => {
    const { value, issues } = readGlossTable('specimen\tangle\tgloss\tspot\thaze\tinstrument\na\t60\t1,9\ts1\t\tg1\nb\t20\t84\t\t12,5\t\n');
    expect(issues).toEqual([]);
    expect(value).toEqual([{ specimen: 'a', angle: 60, gloss: 1.9, spot: 's1', instrument: 'g1', line: 2 }, { specimen: 'b', angle: 20, gloss: 84, haze: 12.5, line: 3 }]);
  });
});

describe('issue codes of tables', () => {
  it('are kebab-case words with a meaning in one line', () => {
    for (const [code, meaning] of Object.entries(tableIssueCodes)) {
      expect(code).toMatch(/^[a-z\d]+(-[a-z\d]+)*$/u);
      expect(meaning).toMatch(/^[A-Z].*\.$/u);
    }
  });
});
