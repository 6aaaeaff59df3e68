import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Ageing, CabinComparison } from '../../src/harmony/compare/index.ts';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { spectrumOf, twoPartCabin } from '../support/two-part-cabin.ts';
import { parsed, run } from '../cli/memory-io.ts';
import { markupFaults } from './markup-faults.ts';
import { readCsv } from './read-csv.ts';

const demo = join(import.meta.dirname, '..', '..', 'demo-data');
const files = {
  'slate.cabin.json': readFileSync(join(demo, 'shuttle-slate.cabin.json')), 'chalk.cabin.json': readFileSync(join(demo, 'shuttle-chalk.cabin.json')),
  'two.cabin.json': serialiseCabin(twoPartCabin({ curve: spectrumOf(() => 0.06) }, { curve: spectrumOf(() => 0.06) })),
};
const written = async (out: string, ...words: string[]): Promise<string> => {
  const result = await run(['report', 'slate.cabin.json', '--out', out, ...words], files);
  expect(result.exit).toBe(0);
  return result.files[0].content;
};
interface ReportJson { readonly comparison?: CabinComparison; readonly ageing: readonly Ageing[]; readonly files: readonly { readonly role: string; readonly name: string }[] }

describe('a report of a cabin beside another', () => {
  let page: string;
  let json: ReportJson & { readonly comparison: CabinComparison };
  let rows: ReturnType<typeof readCsv>;
  beforeAll(async () => {
    const against = ['--against', 'chalk.cabin.json'];
    page = await written('r.html', ...against);
    json = JSON.parse(await written('r.json', ...against)) as typeof json;
    rows = readCsv(await written('r.csv', ...against));
  }, 60_000);

  test('has the section, the file compared with among its inputs, and is well formed', () => {
    expect(page).toContain('<h2 id="compared-title">Compared with</h2>');
    expect(markupFaults(page)).toEqual([]);
    expect(json.files.map(({ role, name }) => [role, name])).toContainEqual(['compared cabin', 'chalk.cabin.json']);
  });

  test('the rows of the CSV are the changes of the JSON, number for number', () => {
    const changed = json.comparison.joints.filter(({ kind }) => kind !== 'same');
    const compared = rows.filter(({ row }) => row === 'compared joint');
    expect(compared.map(({ id, limitUseBefore, limitUse }) => [id, limitUseBefore, limitUse]))
      .toEqual(changed.map(({ id, before, after }) => [id, String(before?.limitUse ?? ''), String(after?.limitUse ?? '')]));
    const values = rows.filter(({ row }) => row === 'compared check').map(({ id, check, valueBefore, value, valueChange }) => [id, check, valueBefore, value, valueChange]);
    expect(values).toEqual(changed.flatMap(({ id, checks }) => checks.map(({ check, before, after, change }) => [id, check, ...[before?.value, after?.value, change].map((value) => String(value ?? ''))])));
    expect(compared.length).toBeGreaterThan(10);
  });

  test('shows both states on maps of one frame, the changed verdicts numbered alike, and what changed at each', () => {
    const section = page.slice(page.indexOf('id="compared"'), page.indexOf('id="ageing"'));
    const maps = [...section.matchAll(/<svg xmlns[^>]*aria-label="Map of the cabin[\s\S]*?<\/svg>/g)].map(([map]) => map);
    expect(maps).toHaveLength(2);
    const of = (map: string | undefined, verdict: string): number => (map?.match(new RegExp(`class="joint ${verdict}"`, 'g')) ?? []).length;
    const count = (side: 'before' | 'after', verdict: string): number => json.comparison.joints.filter((joint) => joint[side]?.verdict === verdict).length;
    maps.forEach((map, index) => {
      for (const verdict of ['clashes', 'open']) expect(of(map, verdict)).toBe(count(index === 0 ? 'before' : 'after', verdict));
      const changed = json.comparison.joints.filter(({ kind }) => kind === 'verdict').length;
      expect((map.match(/class="number"/g) ?? []).length).toBe(Math.min(9, changed));
    });
    // The light colourway before is drawn in its own colours: fewer than two thirds of the faces, those carried over, have the same one now.
    const fills = maps.map((map) => [...map.matchAll(/<path class="sample"[^>]*fill="(#\w+)"/g)].map(([, fill]) => fill));
    expect(fills[0]?.length).toBe(fills[1]?.length);
    expect(fills[0]?.filter((fill, index) => fill === fills[1]?.[index]).length).toBeLessThan((fills[0]?.length ?? 0) / 1.5);
    const text = section.replace(/<[^>]+>/g, '');
    for (const { kind, names } of json.comparison.joints) if (kind === 'verdict') expect(text).toContain(`${names[0]} and ${names[1]}`);
    expect(text).toContain('What changed at it');
  });

  test('every number of the section is one of the JSON in full precision', () => {
    const section = page.slice(page.indexOf('id="compared"'), page.indexOf('id="ageing"'));
    const known = new Set(JSON.stringify(json.comparison).match(/-?\d+(?:\.\d+)?(?:e-?\d+)?/g));
    const printed = [...section.matchAll(/<data value="([^"]*)">/g)].map(([, value]) => value);
    expect(printed.length).toBeGreaterThan(100);
    expect(printed.filter((value) => !known.has(value))).toEqual([]);
  });
});

describe('ageing in the report', () => {
  test('is there where specimens were exposed, with grades and joints in the page, the JSON and the CSV', async () => {
    const [page, json, rows] = [await written('r.html'), JSON.parse(await written('r.json')) as ReportJson, readCsv(await written('r.csv'))];
    const [ageing] = json.ageing;
    expect(ageing.to).toBe('light-exposed');
    expect(ageing.parts.length).toBeGreaterThan(3);
    const graded = rows.filter(({ row, check }) => row === 'aged part' && check === 'colour');
    expect(graded.map(({ id, value, grade, gradeValue }) => [id, value, grade, gradeValue]))
      .toEqual(ageing.parts.map(({ part, cie76, greyScale }) => [part, String(cie76), greyScale.grade, String(greyScale.value)]));
    const section = page.slice(page.indexOf('id="ageing"'));
    for (const { greyScale } of ageing.parts) expect(section).toContain(`<data value="${greyScale.value}">`);
    expect(section).toContain('ISO 105-A05');
    expect(ageing.holdThenClash.length).toBeGreaterThan(0);
  }, 60_000);

  test('is left out where none was', async () => {
    const { files: [page] } = await run(['report', 'two.cabin.json', '--out', 'r.html'], files);
    expect(page.content).not.toContain('id="ageing"');
    expect(page.content).not.toContain('id="compared"');
  });
});

describe('what a cabin is compared with', () => {
  test('may be another stage of its own', async () => {
    const json = JSON.parse(await written('r.json', '--stage', 'light-exposed', '--against-stage', 'new')) as ReportJson;
    expect([json.comparison?.before.stage, json.comparison?.after.stage]).toEqual(['new', 'light-exposed']);
  }, 60_000);

  test.each([
    [['--against', 'none.cabin.json'], 'cannot-read'],
    [['--against-stage', 'light-exposd'], 'unknown-stage'],
    [['--against', 'two.cabin.json', '--against-stage', 'light-exposed'], 'unknown-stage'],
  ])('is refused with %j', async (words, code) => {
    const result = await run(['report', 'slate.cabin.json', '--out', 'r.html', '--json', ...words], files);
    expect(result).toMatchObject({ exit: 2, files: [] });
    expect(parsed<{ issues: { code: string }[] }>(result).issues.map((issue) => issue.code)).toContain(code);
  });
});
