import { beforeAll, describe, expect, test } from 'vitest';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { printPdf } from '../../src/cli/pdf/print-pdf.ts';
import { runCommand } from '../../src/cli/router.ts';
import type { CommandResult } from '../../src/cli/verb.ts';
import { chromiumPath } from '../support/chromium.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { memoryIo, parsed } from './memory-io.ts';

const files = { 'small.cabin.json': serialiseCabin(smallCabin()) };
let chromium: string;
beforeAll(async () => { chromium = await chromiumPath(); });

const report = (program: string, ...words: string[]): Promise<CommandResult> =>
  runCommand(['report', 'small.cabin.json', '--out', 'r.pdf', ...words], { ...memoryIo(files), printPdf: (page) => printPdf(page, program) });

describe('report --out x.pdf', () => {
  // A4 is 210 mm by 297 mm (ISO 216) and Letter 8.5 in by 11 in (ANSI Y14.1), here in points of 1/72 in.
  test.each([[[], [210 / 25.4 * 72, 297 / 25.4 * 72]], [['--paper', 'letter'], [8.5 * 72, 11 * 72]]])('prints %j tagged, with an outline, on its paper', async (words, [width, height]) => {
    const { exit, files: [file] } = await report(chromium, ...words);
    expect(exit).toBe(0);
    const text = Buffer.from(file.content).toString('latin1');
    expect(text.slice(0, 5)).toBe('%PDF-');
    // Names of ISO 32000-1: the tree of structure, the mark of a tagged file, the outline and the language.
    for (const name of ['/StructTreeRoot', '/MarkInfo', '/Outlines', '/Lang']) expect(text).toContain(name);
    const boxes = [...text.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)];
    expect(boxes.length).toBeGreaterThan(3);
    for (const box of boxes) {
      expect(Math.abs(Number(box[1]) - width)).toBeLessThan(1);
      expect(Math.abs(Number(box[2]) - height)).toBeLessThan(1);
    }
  }, 120_000);

  test('says so and writes nothing where there is no Chromium', async () => {
    const result = await report('/nowhere/chromium', '--json');
    expect(result).toMatchObject({ exit: 2, files: [] });
    expect(parsed<{ issues: { code: string; found: string }[] }>(result).issues).toMatchObject([{ code: 'no-chromium', found: '/nowhere/chromium' }]);
  });

  test('says so where the program named does not print', async () => {
    const result = await report('/bin/true', '--json');
    expect(result).toMatchObject({ exit: 2, files: [] });
    expect(parsed<{ issues: { code: string }[] }>(result).issues).toMatchObject([{ code: 'cannot-print' }]);
  }, 30_000);
});
