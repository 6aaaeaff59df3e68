import { describe, expect, it } from 'vitest';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { csvReader } from '../../../src/formats/csv-reader.ts';
import type { ReadingSet } from '../../../src/formats/reading-set.ts';
import { judge } from '../../../src/harmony/judge.ts';
import { lineId, mapReply, readLineId, requestCsv, requestHtml, requestSheets } from '../../../src/report/requests/index.ts';
import type { RequestSheet } from '../../../src/report/requests/index.ts';
import { builtInRuleBooks } from '../../../src/rules/index.ts';
import { seededNumbers } from '../../support/seeded-numbers.ts';
import { glosses, spectra, spectrumOf, twoPartCabin } from '../../support/two-part-cabin.ts';
import { markupFaults } from '../markup-faults.ts';
import { readCsv } from '../read-csv.ts';

const [book] = builtInRuleBooks;
const grey = spectrumOf(() => 0.06);
const sheetsOf = (cabin: Cabin): RequestSheet[] => requestSheets(cabin, judge(cabin, book), book);

/** Side b was read with a sphere, so that colour cannot be compared, and has no gloss. */
const cabin = twoPartCabin({ curve: grey, gloss60: 2 }, { curve: grey, conditions: 'sphere', gloss60: null });

describe('ids of request lines', () => {
  it('are the same for the same text and read as they are typed', () => {
    expect(lineId('part one')).toBe(lineId('part one'));
    const id = lineId('part one');
    expect(id).toMatch(/^R-[0-9A-HJKMNP-TV-Z]{8}$/u);
    for (const typed of [id, id.toLowerCase(), id.replace('-', ''), ` ${id} `]) expect(readLineId(typed)).toEqual({ kind: 'id', id });
  });

  it('find every single wrong character', () => {
    const alphabet = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
    const random = seededNumbers(4);
    for (let round = 0; round < 50; round++) {
      const id = lineId(String(random()));
      for (let place = 2; place < 10; place++) {
        for (const character of alphabet) {
          if (character === id[place]) continue;
          expect(readLineId(id.slice(0, place) + character + id.slice(place + 1))).toEqual({ kind: 'mistyped' });
        }
      }
    }
  });

  it('differ for 20,000 texts that differ little', () => {
    const ids = new Set(Array.from({ length: 20_000 }, (_, index) => lineId(`["cabin","new","part-${index}","source"]`)));
    // 2^35 ids: 20,000 texts make 0.006 equal pairs on average.
    expect(ids.size).toBe(20_000);
  });

  it('are no other words', () => {
    for (const text of ['', 'specimen', 'R-123', '4567', 'door-left-1']) expect(readLineId(text).kind).toBe('other');
  });
});

describe('request sheets', () => {
  const [sheet, ...others] = sheetsOf(cabin);

  it('are made by supplier, a line for each specimen, quantity and instrument', () => {
    expect(others).toEqual([]);
    expect(sheet.supplier).toEqual({ id: 'maker', name: 'An invented maker' });
    expect(sheet.lines.map(({ part, specimen, quantity, geometry, instrument, spots, have }) => [part, specimen, quantity, geometry, instrument, spots, have])).toEqual([
      ['b', 'b-specimen', 'colour', '45:0', 'Spectrophotometer one', 5, 0], ['b', 'b-specimen', 'gloss', '60°', 'glossmeter', 5, 0],
    ]);
    expect(sheet.lines[0].decides).toMatchObject([{ joint: 'a-b', neighbour: 'Panel A', check: 'colour' }]);
  });

  it('name new spots that the specimen does not have', () => {
    const numbered = spectra(grey, 3, 'sphere').map((reading, index) => ({ ...reading, spot: { name: String(index + 2) } }));
    const [line] = sheetsOf(twoPartCabin({ curve: grey }, { readings: numbered, gloss60: 2 }))[0].lines;
    expect(line.newSpots).toEqual(['1', '5', '6', '7', '8']);
  });

  it('keep the id of a line whatever else is asked', () => {
    const alone = sheetsOf(twoPartCabin({ curve: grey, gloss60: 2 }, { curve: grey, conditions: 'sphere', readings: [...spectra(grey, 5, 'sphere'), ...glosses(2)], gloss60: null }))[0];
    expect(alone.lines.map(({ quantity }) => quantity)).toEqual(['colour']);
    expect(alone.lines[0].id).toBe(sheet.lines[0].id);
    expect(new Set(sheet.lines.map(({ id }) => id)).size).toBe(sheet.lines.length);
  });

  it('gather the joints that one specimen decides and rank by their expected number', () => {
    const three: Cabin = { ...cabin, parts: [...cabin.parts, { ...cabin.parts[0], id: 'c', name: 'Panel C', sources: cabin.parts[0].sources.map((source) => ({ ...source, specimens: source.specimens.map((specimen) => ({ ...specimen, id: 'c-specimen' })) })) }],
      joints: [...cabin.joints, { ...cabin.joints[0], id: 'c-b', parts: ['c', 'b'] }] };
    const [first] = sheetsOf(three)[0].lines;
    expect(first.decides.map(({ joint, neighbour }) => [joint, neighbour])).toEqual([['a-b', 'Panel A'], ['c-b', 'Panel C']]);
    expect(first.expected).toBeCloseTo(first.decides.reduce((sum, { chance }) => sum + (chance ?? 0), 0), 12);
    expect(first.id).toBe(sheet.lines[0].id);
  });

  it('are none where nothing is open', () => {
    expect(sheetsOf(twoPartCabin({ curve: grey }, { curve: grey }))).toEqual([]);
  });
});

describe('a request sheet as a page', () => {
  it('is self-contained, without script, and says every id', () => {
    const page = requestHtml(sheetsOf(cabin));
    expect(markupFaults(page)).toEqual([]);
    expect(page).not.toMatch(/<script|https?:\/\/|src=|style=/iu);
    for (const { id } of sheetsOf(cabin)[0].lines) expect(page).toContain(id);
    expect(requestHtml(sheetsOf(cabin))).toBe(page);
  });

  it('escapes the names of the file', () => {
    const hostile = { ...cabin, parts: cabin.parts.map((part) => ({ ...part, name: '<img src=x onerror=alert(1)>' })) };
    expect(requestHtml(sheetsOf(hostile))).not.toContain('<img');
  });

  it('says so where nothing is asked', () => {
    expect(requestHtml([])).toContain('No reading is asked for');
  });
});

/** The table as it comes back: every row filled in, by the titles of its columns. */
function filled(csv: string, values: (row: Readonly<Record<string, string>>) => Readonly<Record<string, string | number>>): string {
  const [declaration, ...rest] = csv.split('\r\n');
  const text = declaration.startsWith('#') ? rest.join('\r\n') : csv;
  // Read from the text, since an object puts keys such as 400 first.
  const header = text.slice(0, text.indexOf('\r\n')).split(',');
  const lines = readCsv(text).map((row) => {
    const full: Record<string, string | number> = { ...row, ...values(row) };
    return header.map((title) => `"${String(full[title] ?? '').replaceAll('"', '""')}"`).join(',');
  });
  return [...(declaration.startsWith('#') ? [declaration] : []), header.join(','), ...lines, ''].join('\r\n');
}

const measured = { instrument: 'Theirs', geometry: '45c:0', 'measured on': '2026-03-10' };
const answer = (row: Readonly<Record<string, string>>): Readonly<Record<string, string | number>> => (row['asked quantity'].startsWith('gloss')
  ? { ...measured, geometry: '', gloss: 2.1 }
  : { ...measured, ...Object.fromEntries(Array.from({ length: 31 }, (_, index) => [String(400 + 10 * index), 0.06])) });

function returned(text: string): ReadingSet {
  const { value, issues } = csvReader.read({ text, file: 'reply.csv' });
  if (value === undefined) throw new Error(JSON.stringify(issues));
  return value;
}

describe('a returned table', () => {
  const sheets = sheetsOf(cabin);
  const csv = requestCsv(sheets);

  it('maps every row back onto part, source and specimen', () => {
    const set = returned(filled(csv, answer));
    expect(set.records).toHaveLength(10);
    const { mapped, lines, issues } = mapReply(sheets, set);
    expect(issues).toEqual([]);
    expect(mapped.map(({ record, part, source, specimen }) => [record, part, source, specimen])).toEqual(set.records.map((_, index) => [index, 'b', 'b-source', 'b-specimen']));
    expect(mapped.map(({ record, line }) => [set.records[record].data.quantity, line])).toEqual([
      ...Array.from({ length: 5 }, () => ['spectrum', sheets[0].lines[0].id]), ...Array.from({ length: 5 }, () => ['gloss', sheets[0].lines[1].id]),
    ]);
    expect(lines.map(({ spotsAsked, spotsReceived }) => [spotsAsked, spotsReceived])).toEqual([[5, 5], [5, 5]]);
  });

  it('may be any table with the ids in place of names', () => {
    const [{ id }] = sheets[0].lines;
    const set = returned(`id,spot,60 gloss\nx,1,2\n`);
    const own: ReadingSet = { ...set, records: [{ ...set.records[0], specimen: id.toLowerCase(), id: undefined, data: { quantity: 'cielab', lab: [29, 0, 0], light: 'D65', observer: 10 } }] };
    expect(mapReply(sheets, own).mapped).toEqual([{ record: 0, line: id, part: 'b', source: 'b-source', specimen: 'b-specimen' }]);
  });

  it('tells rows without an id, with a mistyped or an unknown one, and leaves them out', () => {
    const [{ id }] = sheets[0].lines;
    const wrong = `${id.slice(0, -1)}${id.endsWith('0') ? '1' : '0'}`;
    const text = filled(csv, answer).replaceAll(`"${sheets[0].lines[1].id}"`, '""');
    const set = returned(text);
    const records = set.records.map((record, index) => (index === 0 ? { ...record, labels: { ...record.labels, request: wrong } } : index === 1 ? { ...record, labels: { ...record.labels, request: lineId('elsewhere') } } : record));
    const { mapped, issues } = mapReply(sheets, { ...set, records });
    expect(mapped.map(({ record }) => record)).toEqual([2, 3, 4]);
    const codes = issues.map(({ code }) => code);
    expect(codes).toEqual(['request-mistyped', 'unknown-request', ...Array.from({ length: 5 }, () => 'request-missing'), 'request-incomplete']);
    expect(issues[0]).toMatchObject({ severity: 'error', path: 'records[0]', file: 'reply.csv', line: 3, hint: `Did you mean ${id}?` });
  });

  it('refuses another quantity and warns of another geometry, angle or specimen', () => {
    const set = returned(filled(csv, (row) => ({ ...answer(row), geometry: row['asked quantity'] === 'colour' ? 'di:8' : '', angle: row['asked quantity'] === 'colour' ? '' : 20, specimen: 'another piece' })));
    const { mapped, issues } = mapReply(sheets, set);
    expect(mapped).toHaveLength(10);
    expect(new Set(issues.map(({ code, severity }) => `${code} ${severity}`))).toEqual(new Set(['request-geometry warning', 'request-angle warning', 'request-specimen warning']));
    const swapped = { ...set, records: set.records.map((record) => ({ ...record, labels: { request: sheets[0].lines[record.data.quantity === 'gloss' ? 0 : 1].id } })) };
    expect(mapReply(sheets, swapped)).toMatchObject({ mapped: [] });
    expect(new Set(mapReply(sheets, swapped).issues.map(({ code }) => code))).toEqual(new Set(['request-quantity']));
  });

  it('has rows for every rotation of pile', () => {
    const pile = sheetsOf(twoPartCabin({ material: 'carpet', curve: grey, gloss60: null }, { material: 'carpet', curve: grey, conditions: 'sphere', gloss60: null }));
    expect(pile[0].lines[0]).toMatchObject({ rotations: 4, spots: 8 });
    const rows = readCsv(requestCsv(pile).split('\r\n').slice(1).join('\r\n'));
    expect(rows).toHaveLength(32);
    expect(new Set(rows.map(({ rotation }) => rotation))).toEqual(new Set(['0', '90', '180', '270']));
  });
});
