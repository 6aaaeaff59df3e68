import { describe, expect, it } from 'vitest';
import { serialiseCabin } from '../../src/cabin/index.ts';
import type { RequestSheet } from '../../src/report/requests/index.ts';
import { spectrumOf, twoPartCabin } from '../support/two-part-cabin.ts';
import { parsed, run } from './memory-io.ts';

const grey = spectrumOf(() => 0.06);
const files = { 'c.cabin.json': serialiseCabin(twoPartCabin({ curve: grey }, { curve: grey, conditions: 'sphere' })) };

describe('adjoin requests', () => {
  it('prints what is asked of whom', async () => {
    const result = await run(['requests', 'c.cabin.json'], files);
    expect(result.exit).toBe(0);
    expect(result.stdout).toMatch(/^An invented maker\n/u);
    expect(result.stdout).toMatch(/R-[0-9A-Z]{8} {2}Panel B/u);
  });

  it('writes the page and the table by the ending of the file', async () => {
    const page = await run(['requests', 'c.cabin.json', '--supplier', 'maker', '--out', 'out/sheet.html'], files);
    expect(page.files.map(({ path }) => path)).toEqual(['out/sheet.html']);
    expect(page.files[0].content).toMatch(/^<!doctype html>/u);
    const table = await run(['requests', 'c.cabin.json', '--supplier', 'An invented maker', '--out', 'sheet.csv'], files);
    expect(table.files[0].content).toMatch(/^# scale: fraction\r\nrequest,/u);
    expect(table.stdout).toBe('Wrote sheet.csv: 1 line for 1 supplier.\n');
  });

  it('gives the sheets as JSON', async () => {
    const { sheets } = parsed<{ sheets: RequestSheet[] }>(await run(['requests', 'c.cabin.json', '--json'], files));
    expect(sheets.map(({ supplier, lines }) => [supplier.id, lines.length])).toEqual([['maker', 1]]);
  });

  it('refuses an unknown supplier or ending and writes nothing', async () => {
    for (const words of [['--supplier', 'makr'], ['--out', 'sheet.pdf']]) {
      const result = await run(['requests', 'c.cabin.json', ...words, '--json'], files);
      expect(result).toMatchObject({ exit: 2, files: [] });
      expect(parsed<{ issues: { code: string }[] }>(result).issues).toHaveLength(1);
    }
  });
});
