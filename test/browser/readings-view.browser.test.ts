import { expect, test } from 'vitest';
import type { Desk } from '../../components/controllers/desk.ts';
import type { OpenCabin } from '../../components/controllers/open-cabin.ts';
import type { Part } from '../../src/cabin/cabin.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { deep, frames, until } from '../support/screen.ts';
import { all, eachWithWorkbench, expectAccessible, one, openByDrop, wordsOf as words } from '../support/whole-workbench.ts';

/** The pages of readings as a user opens them. Counts are of the small cabin for tests, taken by hand. */
const view = (): HTMLElement & { open: OpenCabin; desk: Desk } => one('adjoin-readings-view') as HTMLElement & { open: OpenCabin; desk: Desk };

eachWithWorkbench();

test('every group of readings has its quality; one that stands out is marked, with undo', async () => {
  const small = smallCabin({ ruleBook: 'ciede2000' });
  // One spot of the upper dash is read ten times too glossy: 16 GU among five readings of about 1.6.
  const parts = small.parts.map((part): Part => (part.id !== 'dash-upper' ? part : {
    ...part,
    sources: part.sources.map((source) => ({
      ...source, specimens: source.specimens.map((specimen) => ({ ...specimen, readings: specimen.readings.map((reading) => (reading.quantity === 'gloss' && reading.spot.name === 'g2' ? { ...reading, gloss: 16 } : reading)) })),
    })),
  }));
  await openByDrop({ ...small, parts });
  location.hash = '#/readings';
  const row = await until('the gloss of the upper dash', () => all<HTMLTableRowElement>('adjoin-quality-table tbody tr, tbody tr').find((found) => words(found).includes('du-1') && words(found).includes('gloss at 60°')));
  expect(words(row)).toMatch(/5 at 5 spots/);
  expect(words(row)).toMatch(/1 reading$/);
  await expectAccessible();
  row.querySelector('button')?.click();
  const mark = await until('the way to mark it', () => all<HTMLButtonElement>('button').find((button) => words(button) === 'Mark as outlier'));
  mark.click();
  await until('the mark', () => view().desk.present?.parts[0]?.sources[0]?.specimens[0]?.readings.some((reading) => reading.outlier === true && reading.spot.name === 'g2'));
  await until('four readings to be left', () => all<HTMLTableRowElement>('tbody tr').some((found) => words(found).includes('gloss at 60°') && words(found).includes('du-1') && words(found).includes('4 at 4 spots')));
  view().desk.undo();
});

test('instruments with calibration and agreement; what is asked of suppliers; what may be compared', async () => {
  await openByDrop(smallCabin({ ruleBook: 'ciede2000' }));
  location.hash = '#/readings?show=instruments';
  const names = await until('the instruments', () => (one('adjoin-instruments') === undefined ? undefined : all('tbody th b').map((name) => words(name))));
  expect(names).toEqual(['Bench one (invented)', 'Hand held two (invented)', 'Gloss one (invented)', 'Surface one (invented)']);
  await expectAccessible();

  location.hash = '#/readings?show=geometry';
  const cell = await until('the table', () => all<HTMLButtonElement>('button').find((button) => button.getAttribute('aria-label') === '45:0 all round with di:8: no'));
  cell.click();
  await frames(2);
  expect(words(one('.said'))).toContain('not compared');
  await expectAccessible();

  location.hash = '#/readings?show=requests';
  await until('the sheets', () => one('adjoin-requests'));
  await frames(3);
  const lines = all('adjoin-requests').flatMap((sheet) => deep(sheet.shadowRoot as ShadowRoot, 'tbody tr'));
  // Every line names a request by its id and a way to decide a joint.
  expect(lines.length).toBeGreaterThan(0);
  expect(lines.every((line) => /^R-[0-9A-HJKMNP-TV-Z]{8}/.test(words(line)))).toBe(true);
  await expectAccessible();
  const saved: { name: string; text: Promise<string> }[] = [];
  const click = HTMLAnchorElement.prototype.click;
  HTMLAnchorElement.prototype.click = function save(this: HTMLAnchorElement): void {
    saved.push({ name: this.download, text: fetch(this.href).then((answer) => answer.text()) });
  };
  try {
    all<HTMLButtonElement>('button').find((button) => words(button).startsWith('Table to fill in'))?.click();
    await until('the table', () => saved.length === 1);
    all<HTMLButtonElement>('button').find((button) => words(button).startsWith('Sheet to print'))?.click();
    await until('the sheet', () => saved.length === 2);
  } finally {
    HTMLAnchorElement.prototype.click = click;
  }
  expect(saved[0]?.name).toMatch(/^requests-small-.*\.csv$/);
  expect(await saved[0]?.text).toMatch(/(^|\n)request,part,called,source,specimen/);
  expect(await saved[1]?.text).toMatch(/^<!doctype html>/i);
});

test('a cabin without readings says what to do', async () => {
  await openByDrop({ ...smallCabin({ ruleBook: 'ciede2000' }), parts: smallCabin().parts.map((part) => ({ ...part, target: undefined, sources: part.sources.map((source) => ({ ...source, standsBy: undefined, specimens: [] })) })) as unknown as readonly Part[], masters: [], instruments: [], conditions: [] });
  location.hash = '#/readings';
  await until('the word', () => words(one('.lead')).includes('No specimen has readings yet'));
  await expectAccessible();
});
