import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { create, all } from 'mathjs';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { runCommand } from '../../src/cli/router.ts';
import { percentOfLimit } from '../../src/harmony/wording.ts';
import type { ReportModel } from '../../src/report/index.ts';
import { prepareReport, reportCsv, reportHtml, reportModel } from '../../src/report/index.ts';
import { builtInRuleBooks } from '../../src/rules/index.ts';
import type { CabinSeries } from '../../src/series/index.ts';
import { memoryIo } from '../cli/memory-io.ts';
import type { PlannedLot } from '../series/support/lot-cabin.ts';
import { lotCabin, lotPart } from '../series/support/lot-cabin.ts';
import { markupFaults } from './markup-faults.ts';
import { readCsv } from './read-csv.ts';

const mathjs = create(all, {});
const file = readFileSync(join(import.meta.dirname, '..', '..', 'demo-data', 'lots.cabin.json'), 'utf8');
const document = JSON.parse(file) as Cabin;
const [book] = builtInRuleBooks;
const asked = { files: [], validation: [] };
const textOf = (page: string): string => page.replace(/<style>[\s\S]*?<\/style>/, '').replace(/<[^>]+>/g, ' ').replaceAll(/\s+/g, ' ');
const sectionOf = (page: string): string | undefined => /<section id="series"[\s\S]*?<\/section>/.exec(page)?.[0];

/** What each way out says of the demo of lots, each asked for by itself. */
let [html, json, csv, verb] = ['', '', '', ''];
let printed = '';
let model: ReportModel;
beforeAll(async () => {
  const run = async (...words: string[]): Promise<string> => {
    const result = await runCommand(words, memoryIo({ 'lots.cabin.json': file }));
    return String(result.files[0]?.content ?? result.stdout);
  };
  [html, json, csv, verb, printed] = [
    await run('report', 'lots.cabin.json', '--out', 'r.html'), await run('report', 'lots.cabin.json', '--out', 'r.json'), await run('report', 'lots.cabin.json', '--out', 'r.csv'),
    await run('series', 'lots.cabin.json', '--json'), await run('series', 'lots.cabin.json'),
  ];
  model = JSON.parse(json) as ReportModel;
}, 120_000);

describe('page, JSON, CSV and verb say the same of lots', () => {
  test('the JSON of the report carries what the verb gives, number for number', () => {
    expect(model.series).toEqual(JSON.parse(verb));
  });

  test('every number that the section marks as data is in the JSON, rounded as printed', () => {
    const known = new Set<string>();
    const collect = (value: unknown): void => {
      if (typeof value === 'number') known.add(String(value));
      else if (typeof value === 'object' && value !== null) Object.values(value).forEach(collect);
    };
    collect(model.series);
    const marked = [...(sectionOf(html) ?? '').matchAll(/<data value="([^"]*)">([^<]*)<\/data>/g)];
    expect(marked.length).toBeGreaterThan(200);
    for (const [, value, print] of marked) {
      expect(known).toContain(value);
      const shown = /^([\u2212]?\d+(?:\.\d+)?)(\u00a0%)?$/.exec(print);
      const decimals = (shown?.[1].split('.')[1] ?? '').length + (shown?.[2] === undefined ? 0 : 2);
      expect(Math.abs(Number(shown?.[1].replace('\u2212', '-')) / (shown?.[2] === undefined ? 1 : 100) - Number(value)), `${value} as ${print}`).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-9);
    }
  });

  test('the rows of the CSV are lots, trends, forecasts and sets of the JSON', () => {
    const rows = readCsv(csv);
    const found = model.series as CabinSeries;
    const of = (kind: string) => rows.filter(({ row }) => row === kind);
    expect(of('lot').map(({ id, lot, producedOn, L, b, value, limit }) => [id, lot, producedOn, L, b, value, limit]))
      .toEqual(found.parts.flatMap(({ part, lots }) => lots.map((lot) => [part, lot.id, lot.producedOn, String(lot.lab[0]), String(lot.lab[2]), String(lot.charted?.statistic), String(lot.charted?.limit)])));
    expect(of('trend').filter(({ check }) => check === 'colour').map(({ id, state, db, reachB }) => [id, state, db, reachB]))
      .toEqual(found.parts.map(({ part, trend }) => [part, trend.state, String(trend.slope?.[2]), String(trend.reach?.[2])]));
    expect(of('forecast').map(({ id, state, day, earliestDay, latestDay, limitUse }) => [id, state, day, earliestDay, latestDay, limitUse]))
      .toEqual(found.joints.map(({ joint, state, when, earliest, latest, now }) => [joint, state, when?.day ?? '', earliest?.day ?? '', latest?.day ?? '', now === undefined ? '' : String(now.use)]));
    expect(of('set')).toHaveLength([...found.sets, ...found.pairs].reduce((sum, { sets }) => sum + sets.length, 0));
  });

  test('what people read is the same on the page and from the verb', () => {
    const [page, spoken] = [textOf(sectionOf(html) ?? ''), printed.replaceAll(/\s+/g, ' ')];
    const [first] = (model.series as CabinSeries).joints;
    for (const words of [...model.series?.words.slice(0, 2) ?? [], first.when?.day, first.earliest?.day, first.latest?.day, percentOfLimit(first.now?.use ?? 0), 'It becomes yellower by 0.11 ± 0.02 b* in 30 days', 'Up-7 (lighter, bluer; T² 7.9 over 5.7)']) {
      expect(words).toBeDefined();
      expect(page.replaceAll('\u00a0', ' ')).toContain(words);
      expect(spoken).toContain(words);
    }
  });
});

describe('against the document and a general library', () => {
  test('lots and their days are those of the document, in order of production', () => {
    for (const { part, lots } of model.series?.parts ?? []) {
      const specimens = document.parts.find(({ id }) => id === part)?.sources[0]?.specimens.filter(({ lot }) => lot !== undefined) ?? [];
      const dated = specimens.map(({ lot, producedOn }) => [producedOn, lot?.id]).sort();
      expect(lots.map(({ id, producedOn }) => [producedOn, id])).toEqual(dated);
      for (const { id, producedOn } of lots) expect(textOf(sectionOf(html) ?? '')).toMatch(part === 'insert' || part === 'sill' ? /In-1|Si-1/ : new RegExp(`${id} ${producedOn}`));
    }
  });

  // T2 = (x - m)' S^-1 (x - m), S with n - 1: by the matrices of mathjs. Its limit at 0.95 for n of its own lots is (n-1)^2/n Beta(3/2, (n-4)/2):
  // 5.7025 for 10 and 5.0945 for 8, by sums over the density of the beta distribution in a script of its own (midpoints, halved to 1e-9).
  test('T2 of each lot is that of the matrices of mathjs, and its limit that of the beta distribution', () => {
    for (const { lots } of model.series?.parts ?? []) {
      const labs = lots.map(({ lab }) => [...lab]);
      const mean = [0, 1, 2].map((axis) => mathjs.mean(labs.map((lab) => lab[axis])));
      const rest = mathjs.matrix(labs.map((lab) => lab.map((value, axis) => value - mean[axis])));
      const inverse = mathjs.inv(mathjs.divide(mathjs.multiply(mathjs.transpose(rest), rest), lots.length - 1) as typeof rest);
      lots.forEach(({ charted }, index) => {
        const row = mathjs.subset(rest, mathjs.index(index, [0, 1, 2])) as unknown as typeof rest;
        const squared = mathjs.multiply(mathjs.multiply(row, inverse), mathjs.transpose(row)) as unknown as { toArray?: () => number[][] } | number;
        expect(charted?.statistic).toBeCloseTo(Number(typeof squared === 'number' ? squared : squared.toArray?.().flat()[0]), 7);
        expect(charted?.limit).toBeCloseTo(lots.length === 10 ? 5.7025 : 5.0945, 3);
      });
    }
  });
});

const plain: PlannedLot[] = Array.from({ length: 60 }, (_, lot) => ({ id: `L${lot + 1}`, day: 3 * lot, lab: [30 + 0.03 * ((7 * lot) % 11), 0.4 + 0.02 * ((lot * lot) % 7), -1 + 0.02 * ((lot * 5) % 9)] }));
const written = async (cabin: Cabin): Promise<{ page: string; model: ReportModel }> => {
  const input = await prepareReport(cabin, book, asked);
  return { page: reportHtml(input), model: reportModel(input) };
};

describe('any number of lots', () => {
  test.each([0, 1])('%i lots a part are no section and no key of the JSON', async (count) => {
    const { page, model: none } = await written(lotCabin(plain.slice(0, count), plain.slice(0, count)));
    expect(sectionOf(page)).toBeUndefined();
    expect(page).not.toContain('Lots over time');
    expect(none).not.toHaveProperty('series');
  });

  test('two lots claim nothing', async () => {
    const { page } = await written(lotCabin(plain.slice(0, 2), plain.slice(0, 1)));
    const text = textOf(sectionOf(page) ?? '');
    expect(text).toContain('2 lots are too few, it takes 5 at least');
    expect(text).not.toMatch(/NaN|undefined|Infinity|will clash/);
    expect(markupFaults(page)).toEqual([]);
  });

  test('sixty lots stand in one picture and one table', async () => {
    const { page } = await written(lotCabin(plain, plain.slice(0, 3)));
    const own = sectionOf(page) ?? '';
    expect(markupFaults(page)).toEqual([]);
    // Four panels of colour and T2 and one of gloss, a mark of two squares a lot in each.
    expect((own.match(/class="sample"/g) ?? []).length).toBeGreaterThanOrEqual(5 * 60 * 2);
    expect(own).toContain('L60');
    // No picture is taller than a page of A4 between its margins is at the width that it is drawn for: 264 mm by 180 mm (ISO 216, less 15 and 18 mm).
    for (const [, width, height] of own.matchAll(/<svg xmlns[^>]*viewBox="0 0 ([\d.]+) ([\d.]+)"/g)) expect(Number(height) / Math.max(340, Number(width))).toBeLessThan(264 / 180);
  }, 60_000);

  test('of many parts the telling ones have a block, the others a row, and all are in the JSON', async () => {
    const base = lotCabin(plain.slice(0, 6), plain.slice(0, 6));
    const parts = [...base.parts, ...Array.from({ length: 24 }, (_, index) => lotPart(`p${index}`, `Panel ${index}`, plain.slice(index, index + 6).map((lot, at) => ({ ...lot, lab: [30 + (index % 2) * 0.05 * at + 0.01 * ((at * at) % 3), 0.4, -1 + 0.01 * ((3 * at) % 4)] }))))];
    const { page, model: many } = await written({ ...base, parts });
    expect(many.series?.parts).toHaveLength(26);
    const own = sectionOf(page) ?? '';
    expect((own.match(/<h4>/g) ?? []).length).toBeLessThanOrEqual(8);
    for (const { name } of parts) expect(textOf(own)).toContain(name);
    expect(markupFaults(page)).toEqual([]);
  }, 60_000);

  test('names of lots are text', async () => {
    const hostile = plain.slice(0, 6).map((lot, index) => ({ ...lot, id: index === 0 ? '<script>alert(1)</script>' : index === 1 ? '=SUM(1)' : 'x'.repeat(400 + index) }));
    const input = await prepareReport(lotCabin(hostile, plain.slice(0, 6)), book, asked);
    expect(markupFaults(reportHtml(input))).toEqual([]);
    expect(reportHtml(input)).not.toMatch(/<script/i);
    for (const row of readCsv(reportCsv(input))) expect(row['lot'] ?? '').not.toMatch(/^\s*[=+@]/);
  }, 60_000);
});

test('the verb that is asked for fewer pairs of lots than there are says which joints it left out', async () => {
  const { cabinSeries } = await import('../../src/series/index.ts');
  const found = await cabinSeries(lotCabin(plain.slice(0, 6), plain.slice(0, 6)), book, { mostPairsOfLots: 35 });
  expect([found.pairs, found.notMatched]).toEqual([[], ['a-b']]);
  expect((await cabinSeries(lotCabin(plain.slice(0, 6), plain.slice(0, 6)), book, { mostPairsOfLots: 36 })).pairs).toHaveLength(1);
});
