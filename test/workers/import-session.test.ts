import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { importReadings } from '../../src/actions/import-readings.ts';
import { patchCabin } from '../../src/actions/cabin-patch.ts';
import type { ImportChoices } from '../../src/actions/plan-imports.ts';
import type { Cabin, Specimen } from '../../src/cabin/cabin.ts';
import { restoreCabin } from '../../src/cabin/restore-cabin.ts';
import { readText } from '../../src/formats/index.ts';
import { judge } from '../../src/harmony/judge.ts';
import { requestCsv, requestSheets } from '../../src/report/requests/index.ts';
import type { RequestSheet } from '../../src/report/requests/index.ts';
import { builtInRuleBooks } from '../../src/rules/index.ts';
import type { FoundReply, ImportAnswer, ImportProgress, PlannedReply, TakenReply } from '../../src/workers/import-protocol.ts';
import { ImportSession } from '../../src/workers/import-session.ts';
import { GatheredValue, valuePieces } from '../../src/workers/value-pieces.ts';
import { readCsv } from '../report/read-csv.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { spectrumOf, twoPartCabin } from '../support/two-part-cabin.ts';

const digest = (): Promise<undefined> => Promise.resolve(undefined);
const fixtures = join(import.meta.dirname, '..', 'formats', 'fixtures');

interface Heard {
  readonly progress: number[];
}

/** A session as the worker runs it, with what it tells. */
async function session(cabin: Cabin): Promise<{ ask: (request: Parameters<ImportSession['answer']>[0]) => Promise<ImportAnswer>; heard: Heard }> {
  const heard: Heard = { progress: [] };
  const made = new ImportSession();
  const ask = (request: Parameters<ImportSession['answer']>[0]): Promise<ImportAnswer> =>
    made.answer(request, (news: ImportProgress) => { heard.progress.push(news.share); }, digest);
  await ask({ kind: 'cabin', cabin });
  return { ask, heard };
}

const file = (name: string, content: string | Uint8Array): { readonly kind: 'read'; readonly file: { readonly key: string; readonly name: string; readonly blob: Blob } } =>
  ({ kind: 'read', file: { key: name, name, blob: new Blob([content as BlobPart]) } });
const specimens = (cabin: Cabin): readonly Specimen[] => cabin.parts.flatMap(({ sources }) => sources.flatMap((source) => source.specimens));

describe('what a page is told of a file', () => {
  // Read off the fixtures by hand.
  test.each([
    ['spectra-wide.csv', { layout: 'a row a spectrum', separator: 'comma', decimal: 'point' }, 'UTF-8', 3, 2],
    ['spectra-long.tsv', { layout: 'a row a wavelength', separator: 'tab', decimal: 'point' }, 'UTF-8', 3, 2],
    ['two-tables.txt', { layout: 'tables of fields' }, 'UTF-8', 4, 4],
    ['plaques.cxf', { layout: 'objects' }, 'UTF-8', 6, 2],
    ['colours.csv', { layout: 'a row a reading', separator: 'comma', decimal: 'point' }, 'UTF-8', 4, 2],
    ['door-gloss-texture.csv', { layout: 'a row a reading', separator: 'semicolon', decimal: 'comma' }, 'Windows-1252 (Latin-1)', 4, 1],
  ] as const)('%s', async (name, layout, encoding, readings, count) => {
    const { ask, heard } = await session(smallCabin());
    const found = await ask(file(name, readFileSync(join(fixtures, name)))) as FoundReply;
    expect(found.kind).toBe('found');
    expect(found.layout).toMatchObject(layout);
    expect(found.encoding).toBe(encoding);
    expect(found.summary.readings).toBe(readings);
    expect(found.summary.specimens).toHaveLength(count);
    expect(heard.progress.every((share, at) => share >= (heard.progress[at - 1] ?? 0) && share <= 1)).toBe(true);
  });

  test('a file that cannot be read has its faults, and nothing is planned of it', async () => {
    const { ask } = await session(smallCabin());
    expect(await ask(file('none.csv', 'specimen,gloss 60\nA,two\n'))).toMatchObject({ kind: 'refused', issues: [{ line: 2, column: 3 }] });
    expect(await ask({ kind: 'plan', files: [{ key: 'none.csv', choices: {} }], sheets: [] })).toEqual({ kind: 'planned', files: [] });
  });

  test('files written alike have one shape, others another', async () => {
    const { ask } = await session(smallCabin());
    const shape = async (name: string, text: string): Promise<string> => ((await ask(file(name, text))) as FoundReply).layout.shape;
    const first = await shape('a.csv', 'part,specimen,gloss 60,instrument\ndoor-left,X,2,a\n');
    expect(await shape('b.csv', 'part,specimen,gloss 60,instrument\nconsole,Y,80,b\n')).toBe(first);
    expect(await shape('c.csv', 'part,specimen,gloss 20,instrument\nconsole,Y,80,b\n')).not.toBe(first);
  });
});

test('files are planned one on the other, and a refused one changes nothing for the next', async () => {
  const cabin = smallCabin();
  const { ask } = await session(cabin);
  await ask(file('one.csv', 'part,specimen,spot,gloss 60,instrument\ndoor-left,X,a,2,Gloss one (invented)\n'));
  await ask(file('bad.csv', 'part,specimen,spot,gloss 60,instrument\nboot,X,a,2,Gloss one (invented)\n'));
  await ask(file('two.csv', 'specimen,spot,gloss 60,instrument\nX,b,3,Gloss one (invented)\n'));
  const kind: ImportChoices = { newSpecimens: 'plaque' };
  const { files } = await ask({ kind: 'plan', files: ['one.csv', 'bad.csv', 'two.csv'].map((key) => ({ key, choices: kind })), sheets: [] }) as PlannedReply;
  // X is made by the first file, so the third needs no part for it.
  expect(files.map(({ key, planned }) => [key, planned.taken])).toEqual([['one.csv', true], ['bad.csv', false], ['two.csv', true]]);
  const taken = await ask({ kind: 'take', files: ['one.csv', 'bad.csv', 'two.csv'].map((key) => ({ key, choices: kind })), sheets: [] }) as TakenReply;
  const after = patchCabin(cabin, taken.patch);
  expect(specimens(after).find(({ id }) => id === 'X')?.readings.map((reading) => (reading.quantity === 'gloss' ? reading.gloss : undefined))).toEqual([2, 3]);
  expect(restoreCabin(after).value).toEqual(after);
});

test('a part that only a file knows is made with its supplier, and the mapping then leads to it', async () => {
  const cabin = smallCabin();
  const { ask } = await session(cabin);
  await ask(file('seat.csv', 'part,specimen,kind,spot,gloss 60,instrument\nSitz,S,plaque,a,2,Gloss one (invented)\n'));
  const choices: ImportChoices = { newParts: { Sitz: { name: 'Seat', zone: 'console', supplier: 'Weft (invented)', material: 'textile' }, 'of another file': { name: 'No', zone: 'console', supplier: 'No', material: 'textile' } } };
  const { files: [first] } = await ask({ kind: 'plan', files: [{ key: 'seat.csv', choices }], sheets: [] }) as PlannedReply;
  expect(first?.planned).toMatchObject({ taken: true, readings: 1, newParts: ['seat'], mapping: { parts: { Sitz: 'seat' } } });
  const { patch } = await ask({ kind: 'take', files: [{ key: 'seat.csv', choices }], sheets: [] }) as TakenReply;
  const after = patchCabin(cabin, patch);
  expect(after.parts.at(-1)).toMatchObject({ id: 'seat', name: 'Seat', zone: 'console', sources: [{ supplier: 'weft-invented', material: 'textile', specimens: [{ id: 'S' }] }] });
  expect(after.suppliers.map(({ name }) => name)).toEqual([...cabin.suppliers.map(({ name }) => name), 'Weft (invented)']);
});

test('many readings come as a change, in pieces, that makes the same cabin as taking the file at once', async () => {
  const cabin = smallCabin();
  const text = `# instrument: Gloss one (invented)\npart,specimen,kind,spot,gloss 60\n${Array.from({ length: 4300 }, (_, at) => `door-left,B${at % 2},plaque,${at},${1 + (at % 50) / 100}`).join('\n')}\n`;
  const { ask } = await session(cabin);
  await ask(file('big.csv', text));
  const { patch } = await ask({ kind: 'take', files: [{ key: 'big.csv', choices: {} }], sheets: [] }) as TakenReply;
  const pieces = [...valuePieces(patch)];
  expect(pieces.length).toBeGreaterThan(1);
  const coming = new GatheredValue<typeof patch>();
  const came = pieces.flatMap((piece) => coming.take(structuredClone(piece)) ?? [])[0]?.whole;
  const set = readText({ text, file: 'big.csv' }).value;
  const expected = set && importReadings(cabin, set).value?.cabin;
  expect(expected).toBeDefined();
  expect(came && patchCabin(cabin, came)).toEqual(expected);
});

describe('a request sheet that comes back', () => {
  const [book] = builtInRuleBooks;
  const grey = spectrumOf(() => 0.06);
  /** Side b was read with a sphere, so that colour cannot be compared, and has no gloss. */
  const cabin = twoPartCabin({ curve: grey, gloss60: 2 }, { curve: grey, conditions: 'sphere', gloss60: null });
  const sheets: RequestSheet[] = requestSheets(cabin, judge(cabin, book), book);

  /** The table as a supplier fills it in: instrument and geometry, a reflectance of 0.07 everywhere and 2.5 GU. */
  function filledIn(kept: (column: string) => boolean): string {
    const text = requestCsv(sheets);
    const rows = readCsv(text.replace(/^#.*\r\n/, ''));
    const columns = Object.keys(rows[0] ?? {}).filter(kept);
    const filled = (row: Readonly<Record<string, string>>, name: string): string => {
      const quantity = row['asked quantity'] ?? '';
      if (name === 'instrument') return row['asked instrument'] ?? '';
      if (name === 'geometry') return quantity === 'colour' ? '45c:0' : '';
      if (name === 'gloss') return quantity.startsWith('gloss') ? '2.5' : '';
      return /^\d+$/.test(name) && quantity === 'colour' ? '0.07' : row[name] ?? '';
    };
    const cell = (value: string): string => (/[",]/.test(value) ? `"${value}"` : value);
    return `# scale: fraction\n${[columns, ...rows.map((row) => columns.map((name) => filled(row, name)))].map((cells) => cells.map(cell).join(',')).join('\n')}\n`;
  }

  test.each([
    ['as it was sent', () => true],
    ['with the names of parts and sources gone: the ids bring every row to its place', (name: string) => !['part', 'called', 'source', 'lot'].includes(name)],
  ] as const)('%s', async (_name, kept) => {
    expect(sheets.flatMap(({ lines }) => lines).length).toBeGreaterThan(0);
    const { ask } = await session(cabin);
    const found = await ask(file('reply.csv', filledIn(kept))) as FoundReply;
    expect(found.kind === 'found' ? found.summary.answersRequests : found).toBe(true);
    const choices: ImportChoices = { newSpecimens: 'plaque' };
    const { files: [first] } = await ask({ kind: 'plan', files: [{ key: 'reply.csv', choices }], sheets }) as PlannedReply;
    expect(first?.planned.issues.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(first?.planned.taken).toBe(true);
    const { patch } = await ask({ kind: 'take', files: [{ key: 'reply.csv', choices }], sheets }) as TakenReply;
    const after = patchCabin(cabin, patch);
    for (const line of sheets.flatMap(({ lines }) => lines)) {
      const specimen = after.parts.find(({ id }) => id === line.part)?.sources.find(({ id }) => id === line.source)?.specimens.find(({ id }) => id === line.specimen);
      const before = specimens(cabin).find(({ id }) => id === line.specimen)?.readings.length ?? 0;
      const added = specimen?.readings.slice(before).filter(({ quantity }) => (line.quantity === 'colour' ? quantity === 'spectrum' : quantity === line.quantity)) ?? [];
      expect([...new Set(added.map(({ spot }) => spot.name))].sort()).toEqual([...line.newSpots].sort());
      for (const reading of added) {
        if (reading.quantity === 'spectrum') expect(reading.values.every((value) => value === 0.07)).toBe(true);
        if (reading.quantity === 'gloss') expect([reading.gloss, reading.angle]).toEqual([2.5, line.angle]);
      }
    }
  });
});
