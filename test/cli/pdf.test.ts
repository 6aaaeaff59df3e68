import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { printPdf } from '../../src/cli/pdf/print-pdf.ts';
import { runCommand } from '../../src/cli/router.ts';
import type { CommandResult } from '../../src/cli/verb.ts';
import type { ReportModel } from '../../src/report/index.ts';
import { chromiumPath } from '../support/chromium.ts';
import type { PdfPage } from '../support/pdf-text.ts';
import { closed, readPdf, textOfPages } from '../support/pdf-text.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { memoryIo, parsed } from './memory-io.ts';

const files = { 'small.cabin.json': serialiseCabin(smallCabin()) };
let chromium: string;
beforeAll(async () => { chromium = await chromiumPath(); });

const report = (program: string, ...words: string[]): Promise<CommandResult> =>
  runCommand(['report', 'small.cabin.json', '--out', 'r.pdf', ...words], { ...memoryIo(files), printPdf: (page) => printPdf(page, program) });

/** A demo as it is printed, and the page that it is printed from. */
async function printed(cabin: string, ...words: string[]): Promise<{ readonly file: Uint8Array; readonly pages: readonly PdfPage[] }> {
  const { exit, files: [file] } = await runCommand(['report', 'demo.cabin.json', '--out', 'r.pdf', ...words], { ...memoryIo({ 'demo.cabin.json': cabin }), printPdf: (page) => printPdf(page, chromium) });
  expect(exit).toBe(0);
  return { file: file.content as Uint8Array, pages: readPdf(file.content as Uint8Array) };
}
const demo = (name: string): string => readFileSync(join(import.meta.dirname, '..', '..', 'demo-data', `${name}.cabin.json`), 'utf8');
const entities: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#39;': "'" };
const plain = (markup: string): string => closed(markup.replace(/<svg[\s\S]*?<\/svg>/g, '').replace(/<[^>]+>/g, '').replace(/&(?:amp|lt|gt|quot|#39);/g, (entity) => entities[entity] ?? ''));

// A4 is 210 mm by 297 mm (ISO 216) and Letter 8.5 in by 11 in (ANSI Y14.1), here in points of 1/72 in.
const papers = { a4: [210 / 25.4 * 72, 297 / 25.4 * 72], letter: [8.5 * 72, 11 * 72] } as const;
const millimetre = 72 / 25.4;

describe.each([['lots', 'a4'], ['shuttle-slate', 'letter']] as const)('%s printed on %s', (name, paper) => {
  let [first, again]: Awaited<ReturnType<typeof printed>>[] = [];
  let html: string;
  let model: ReportModel;
  beforeAll(async () => {
    const words = paper === 'a4' ? [] : ['--paper', paper];
    first = await printed(demo(name), ...words);
    if (paper === 'a4') again = await printed(demo(name), ...words);
    const write = async (ending: string): Promise<string> => String((await runCommand(['report', 'demo.cabin.json', '--out', `r.${ending}`], memoryIo({ 'demo.cabin.json': demo(name) }))).files[0].content);
    html = await write('html');
    model = JSON.parse(await write('json')) as ReportModel;
  }, 240_000);

  test('is tagged, with an outline and a language, and every page is of that paper', () => {
    const text = Buffer.from(first.file).toString('latin1');
    expect(text.slice(0, 5)).toBe('%PDF-');
    // Names of ISO 32000-1: the tree of structure, the mark of a tagged file, the outline and the language.
    for (const word of ['/StructTreeRoot', '/MarkInfo', '/Outlines', '/Lang']) expect(text).toContain(word);
    // Where it was printed is nobody's business, and nothing in it runs or leads out.
    expect(text).not.toMatch(/file:|adjoin-pdf|\/JavaScript|\/JS\b|\/Launch|\/URI\b/);
    expect(first.pages.length).toBeGreaterThan(8);
    for (const { width, height } of first.pages) {
      expect(Math.abs(width - papers[paper][0])).toBeLessThan(1);
      expect(Math.abs(height - papers[paper][1])).toBeLessThan(1);
    }
  });

  if (paper === 'a4') {
    test('has the same text when it is printed again', () => {
      expect(again.pages.map((page) => textOfPages([page]))).toEqual(first.pages.map((page) => textOfPages([page])));
    });
  }

  test('has every heading, caption and sentence of the page, the totals and the verdicts', () => {
    const text = textOfPages(first.pages);
    expect(text).not.toContain('\ufffd');
    const wanted = ['h1', 'h2', 'h3', 'h4', 'caption', 'figcaption'].flatMap((tag) => [...html.matchAll(new RegExp(`<${tag}[ >][\\s\\S]*?</${tag}>`, 'g'))].map(([markup]) => plain(markup)));
    expect(wanted.length).toBeGreaterThan(25);
    const { clashes, accepted, open, holds } = model.summary;
    // "1 clash" and "1 clashes" both begin so; a count of none has no place in the row of counts.
    wanted.push(...[[clashes, 'clash'], [accepted, 'accepted'], [open, open === 1 ? 'isopen' : 'areopen'], [holds, 'jointshold']].flatMap(([count, word]) => (count === 0 ? [] : [`${count}${word}`])));
    for (const { result } of model.joints) if (result.verdict === 'clashes' || result.verdict === 'open') wanted.push(closed(result.sentence), closed(result.verdict));
    wanted.push(...model.cautions.map(closed), ...model.nextSteps.flatMap(({ sentences }) => sentences.map(closed)), ...model.series?.words.slice(0, 2).map(closed) ?? []);
    expect(wanted.filter((words) => !text.includes(words))).toEqual([]);
  });

  test('cuts nothing off: all text lies between the margins, and no page lets less be seen', () => {
    const [width, height] = papers[paper];
    first.pages.forEach((page, index) => {
      // Margins of the style: 15 mm at the top and the sides, 18 mm at the foot, in which the foot line stands.
      const [left, right, top, foot] = [15 * millimetre, width - 15 * millimetre, height - 15 * millimetre, 18 * millimetre];
      const body = page.runs.filter(({ y }) => y > foot - 2);
      const outside = body.filter(({ text, x, y, size }) => text.trim() !== '' && (x < left - 2 || x + 0.3 * size > right + 2 || y + 0.6 * size > top + 2));
      expect(outside.map(({ text, x, y }) => `page ${index + 1}: ${text} at ${x.toFixed(0)}, ${y.toFixed(0)}`)).toEqual([]);
      const line = textOfPages([{ ...page, runs: page.runs.filter(({ y }) => y <= foot - 2) }]);
      expect(line).toContain(`${index + 1}of${first.pages.length}`);
      expect(line).toContain(closed(model.cabin.name));
      const { clip } = page;
      for (const [seen, margin] of [[clip?.left, left], [clip?.right, right], [clip?.bottom, foot]]) expect(Math.abs((seen ?? NaN) - (margin ?? NaN))).toBeLessThan(1);
    });
  });
});

test('long and hostile names are broken and do not make the print smaller', async () => {
  const names = ['Türverkleidungsoberteil'.repeat(8), '<script>alert(1)</script>', 'ידית דלת', 'A'.repeat(190), '"><img src=x onerror=alert(1)>'];
  const cabin = JSON.parse(demo('lots')) as { readonly parts: readonly object[]; readonly suppliers: readonly object[] };
  const named = (items: readonly object[], from: number): object[] => items.map((item, index) => ({ ...item, name: names[(index + from) % names.length] }));
  const { pages } = await printed(JSON.stringify({ ...cabin, name: 'Names', parts: named(cabin.parts, 0), suppliers: named(cabin.suppliers, 3) }));
  const text = textOfPages(pages);
  for (const name of [names[1] ?? '', names[3] ?? '', names[4] ?? '']) expect(text).toContain(closed(name));
  // The style sets the name of the cabin in 27 pt; a page that is too wide for its paper is printed smaller as a whole.
  expect(Math.max(...(pages[0]?.runs ?? []).map(({ size }) => size))).toBeGreaterThan(26);
  const [title] = pages[0]?.runs.filter(({ text: letter, size }) => letter === 'N' && size > 20) ?? [];
  expect(Math.abs((title?.size ?? 0) - 27)).toBeLessThan(0.5);
}, 120_000);

describe('report --out x.pdf', () => {
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
