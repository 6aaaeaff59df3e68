import { userEvent } from 'vitest/browser';
import { beforeEach, expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { Judgement } from '../../src/harmony/judgement.ts';
import { deep, faultsOfAccess, frames, setScheme, settled, until } from '../support/screen.ts';
import { all, drop, eachWithWorkbench, one, openByDrop, wordsOf as words, workbench } from '../support/whole-workbench.ts';

/**
 * The import as a user does it: files are dropped, questions answered, places given, all taken over at once. What must come out is read
 * off the fixtures of test/formats/fixtures by hand.
 */
/** Within the panel of the file that is shown. */
const within = <E extends Element = HTMLElement>(selector: string): E[] => {
  const root = one('adjoin-import-file')?.shadowRoot;
  return root ? deep<E>(root, selector) : [];
};

const fixture = async (name: string): Promise<File> => new File([await (await fetch(`/test/formats/fixtures/${name}`)).arrayBuffer()], name);

const card = (name: string): HTMLButtonElement => {
  const found = all<HTMLButtonElement>('.card').find((one) => words(one).includes(name));
  if (found === undefined) throw new Error(`no card of ${name}`);
  return found;
};

async function show(name: string): Promise<void> {
  card(name).click();
  await until(`the file ${name}`, () => words(within('h2')[0]) === name);
  await frames(2);
}

/** Puts a value into the field whose label or name begins with some words. */
async function fill(label: string, value: string): Promise<void> {
  const control = await until(`the field ${label}`, () => within<HTMLInputElement | HTMLSelectElement>('select, input')
    .find((field) => (field.getAttribute('aria-label') ?? words(field.closest('label') ?? undefined)).startsWith(label)));
  control.value = value;
  control.dispatchEvent(new Event('change', { bubbles: true }));
  await frames(2);
}

const state = (name: string): string => words(card(name).querySelector('.state') ?? undefined);
const ready = (name: string): Promise<unknown> => until(`${name} to be ready (now: ${state(name)})`, () => state(name) === 'ready');
const cabinNow = (): Cabin => (one('adjoin-cabin-view') as unknown as { cabin: Cabin }).cabin;
const specimensOf = (cabin: Cabin, part: string): readonly string[] => cabin.parts.find(({ id }) => id === part)?.sources.flatMap(({ specimens }) => specimens.map(({ id }) => id)) ?? [];

eachWithWorkbench();

beforeEach(() => {
  localStorage.clear();
});

test('six files of six kinds are dropped, asked after, placed, taken over in one step, and judged', async () => {
  await openByDrop();
  const before = cabinNow();
  drop(...await Promise.all(['spectra-wide.csv', 'spectra-long.tsv', 'two-tables.txt', 'plaques.cxf', 'colours.csv', 'door-gloss-texture.csv'].map(fixture)));
  await until('six files that were read', () => all('.card .state').length === 6 && all('.card.reading').length === 0);
  expect(location.hash).toBe('#/import');

  await show('spectra-wide.csv');
  expect(words(one('.facts'))).toMatch(/a row a spectrum.*separated by comma, decimal point.*lab-1, 45a:0, aperture 8 mm, UV excluded/);
  expect(within('tbody tr').length).toBeGreaterThan(0);
  await fill('Part for dash', 'dash-upper');
  await fill('What are the specimens', 'plaque');
  await ready('spectra-wide.csv');

  await show('spectra-long.tsv');
  expect(words(one('.facts'))).toContain('a row a wavelength');
  expect(words(one('.facts'))).toContain('separated by tab');
  await fill('In which geometry', '45c:0');
  await fill('Which instrument', 'Bench one (invented)');
  await fill('Part for S1', 'console');
  await fill('Part for S2', '\u0000out');
  await fill('What are the specimens', 'plaque');
  await ready('spectra-long.tsv');

  await show('two-tables.txt');
  expect(words(one('.facts'))).toContain('ISO 28178');
  for (const name of ['Plaque "north"', 'Plaque_2', 'Plaque 3', '4']) await fill(`Part for ${name}`, 'console-side');
  await fill('What are the specimens', 'plaque');
  await ready('two-tables.txt');

  await show('plaques.cxf');
  expect(words(one('.facts'))).toContain('ISO 17972-1');
  for (const [at, select] of within<HTMLInputElement>('.with input[type=text]').entries()) {
    if (!words(select.closest('label') ?? undefined).startsWith('Which instrument')) continue;
    select.value = at % 2 === 0 ? 'Bench one (invented)' : 'Gloss one (invented)';
    select.dispatchEvent(new Event('change', { bubbles: true }));
    await frames(2);
  }
  await until('what is still asked', () => state('plaques.cxf') !== 'being planned');
  if (state('plaques.cxf') !== 'ready') await fill('What are the specimens', 'plaque');
  await ready('plaques.cxf');

  await show('colours.csv');
  for (const input of within<HTMLInputElement>('.with input[type=text]').filter((field) => words(field.closest('label') ?? undefined).startsWith('Which instrument'))) {
    input.value = 'Hand held two (invented)';
    input.dispatchEvent(new Event('change', { bubbles: true }));
    await frames(2);
  }
  await fill('Part for seat', '\u0000new');
  await fill('What are the specimens', 'series part');
  await ready('colours.csv');

  await show('door-gloss-texture.csv');
  expect(words(one('.facts'))).toMatch(/Windows-1252 \(Latin-1\), separated by semicolon, decimal comma/);
  await fill('Part for Türverkleidung', 'door-right');
  await fill('What are the specimens', 'tool part');
  await ready('door-gloss-texture.csv');

  expect(words(one('footer'))).toContain('6 files are ready');
  for (const scheme of ['light', 'dark'] as const) {
    setScheme(scheme);
    await frames(2);
    expect(await faultsOfAccess(workbench())).toEqual([]);
  }
  all<HTMLButtonElement>('footer .strong')[0]?.click();
  await until('six files taken over', () => all('.card.taken').length === 6);
  one<HTMLAnchorElement>('.after a')?.click();
  await until('the wall', () => one('adjoin-strip'));
  await until('the new part to be judged', () => cabinNow().parts.some(({ name }) => name === 'seat'));

  const after = cabinNow();
  expect(specimensOf(after, 'door-left')).toEqual(expect.arrayContaining(['PL-1', 'Plaque 5']));
  expect(specimensOf(after, 'dash-upper')).toContain('PL-2');
  expect(specimensOf(after, 'console')).toEqual(expect.arrayContaining(['S1', 'C-1']));
  expect(specimensOf(after, 'console-side')).toEqual(expect.arrayContaining(['Plaque "north"', 'Plaque_2', 'Plaque 3', '4']));
  expect(specimensOf(after, 'door-right')).toContain('A-17');
  expect(after.masters?.map(({ id }) => id)).toContain('Master slate');
  expect(after.parts.flatMap((part) => part.sources.flatMap((source) => source.specimens)).some(({ id }) => id === 'S2')).toBe(false);
  // The spectrum of PL-1 at its first spot and wavelength stands in the file as 4.1 per cent.
  const reading = after.parts.flatMap((part) => part.sources.flatMap((source) => source.specimens)).find(({ id }) => id === 'PL-1')?.readings[0];
  expect(reading?.quantity === 'spectrum' ? reading.values[0] : undefined).toBeCloseTo(0.041, 12);
  const { judgement } = one('adjoin-cabin-view') as unknown as { judgement: Judgement };
  expect(judgement.joints).toHaveLength(6);
  expect(judgement.joints.every(({ verdict }) => ['holds', 'open', 'clashes'].includes(verdict))).toBe(true);

  await userEvent.keyboard('{Control>}z{/Control}');
  await until('everything taken back', () => !cabinNow().parts.some(({ name }) => name === 'seat'));
  expect(specimensOf(cabinNow(), 'door-left')).toEqual(specimensOf(before, 'door-left'));
  expect(cabinNow().masters?.map(({ id }) => id)).toEqual(before.masters?.map(({ id }) => id));
});

test('with no files it says what can be read', async () => {
  await openByDrop();
  location.hash = '#/import';
  await until('the empty page', () => words(one('.empty')).includes('Let files fall here'));
  expect(await faultsOfAccess(workbench())).toEqual([]);
});

test('a faulty file shows its faults by line and column, and the good one beside it is taken', async () => {
  await openByDrop();
  drop(new File(['part,specimen,gloss 60,instrument\ndoor-left,X-1,two,Gloss one (invented)\n'], 'faulty.csv'), new File(['part,specimen,kind,spot,gloss 60,instrument\ndoor-left,X-2,plaque,a,2.5,Gloss one (invented)\n'], 'good.csv'));
  await until('both files', () => all('.card.refused').length === 1 && all('.card.ready').length === 1);
  await show('faulty.csv');
  // The cell "two" begins in column 15 of line 2.
  expect(within('.faults tbody tr:first-child td').slice(0, 2).map((cell) => words(cell))).toEqual(['2', '15']);
  all<HTMLButtonElement>('footer .strong')[0]?.click();
  await until('the good file', () => all('.card.taken').length === 1);
  expect(state('faulty.csv')).toContain('refused');
});

test('cells pasted from a spreadsheet are a file; what was decided serves the next one of the same shape', async () => {
  await openByDrop();
  location.hash = '#/import';
  await until('the empty page', () => one('.empty'));
  const paste = (text: string): void => {
    const data = new DataTransfer();
    data.setData('text/plain', text);
    dispatchEvent(new ClipboardEvent('paste', { clipboardData: data, bubbles: true, cancelable: true }));
  };
  paste('Teil\tProbe\tMesspunkt\tGlanz 60\tGerät\nBlende\tB-1\ta\t2,5\tGloss one (invented)\n');
  await until('the pasted table', () => all('.card.asks').length === 1);
  expect(words(one('.facts'))).toContain('separated by tab, decimal comma');
  await fill('Part for Blende', 'door-left');
  await fill('What are the specimens', 'plaque');
  await until('to be ready', () => all('.card.ready').length === 1);
  all<HTMLButtonElement>('footer .strong')[0]?.click();
  await until('the table taken over', () => all('.card.taken').length === 1);
  paste('Teil\tProbe\tMesspunkt\tGlanz 60\tGerät\nBlende\tB-2\ta\t2,75\tGloss one (invented)\n');
  await until('the next table, ready at once', () => all('.card.ready').length === 1);
  await settled(workbench());
});

test('a file that is large shows its progress and can be cancelled; the others stay', async () => {
  await openByDrop();
  const wavelengths = Array.from({ length: 31 }, (_, at) => 400 + 10 * at);
  const row = wavelengths.map((nm) => (0.05 + nm / 1e5).toFixed(6)).join(',');
  const rows = Array.from({ length: 60_000 }, (_, at) => `door-left,BIG,plaque,${at + 1},${row}`).join('\n');
  drop(new File(['part,specimen,kind,spot,gloss 60,instrument\ndoor-left,X-2,plaque,a,2.5,Gloss one (invented)\n'], 'good.csv'), new File([`# scale: fraction\n# geometry: 45c:0\n# instrument: Bench one (invented)\npart,specimen,kind,spot,${wavelengths.join(',')}\n${rows}`], 'big.csv'));
  await until('the large file to be read', () => all('.card progress').length > 0 && all('.card').length === 2);
  card('big.csv').click();
  const cancel = await until('the way to cancel', () => within<HTMLButtonElement>('header button').find((button) => words(button) === 'Cancel'));
  cancel.click();
  await until('the large file to be gone', () => all('.card').length === 1);
  await until('the small file', () => all('.card.ready').length === 1);
  all<HTMLButtonElement>('footer .strong')[0]?.click();
  await until('the small file taken over', () => all('.card.taken').length === 1);
});
