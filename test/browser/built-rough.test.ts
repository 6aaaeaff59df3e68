import { expect, test } from 'vitest';
import { registeredViews } from '../../components/views/view-registry.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { builtPages, demo, demoText, drop, goTo, wall, wordsOf } from '../support/built-pages.ts';
import { focusOf, press } from '../support/keyboard.ts';

/** What users do without meaning harm: wrong and half files, cabins with next to nothing in them, names of any kind, menus by keys. */
const { visit, complaints } = builtPages(5650);
const learning = JSON.parse(demoText('first-steps')) as Cabin;

const named = (name: (plain: string) => string): Cabin => ({
  ...learning, name: name(learning.name), suppliers: learning.suppliers.map((one) => ({ ...one, name: name(one.name) })), zones: learning.zones.map((one) => ({ ...one, name: name(one.name) })),
  parts: learning.parts.map((part) => ({ ...part, name: name(part.name) })),
});

const odd: readonly (readonly [string, Cabin])[] = [
  ['no parts', { ...learning, parts: [], joints: [] }],
  ['one part', { ...learning, parts: learning.parts.slice(0, 1), joints: [] }],
  ['no joints', { ...learning, joints: [] }],
  ['no readings', { ...learning, parts: learning.parts.map((part) => ({ ...part, sources: part.sources.map((source) => ({ ...source, specimens: [] })) })) }],
  ['very long names', named((plain) => `${plain} ${'Verkleidungsinnenseitenabdeckung'.repeat(5)}`.slice(0, 180))],
  ['names from right to left', named((plain) => `\u05DC\u05D5\u05D7 ${plain} \u0644\u0648\u062D\u0629`)],
  ['names with emoji', named((plain) => `\u{1F9F5}${plain} \u{1F468}\u200D\u{1F469}\u200D\u{1F467}`)],
];

test.each(odd)('a cabin with %s is answered for in words in every place, on a narrow screen too', async (_name, cabin) => {
  const page = await visit('#/', { viewport: { width: 390, height: 844 } });
  await drop(page, { name: 'odd.cabin.json', text: JSON.stringify(cabin) });
  await page.locator('adjoin-cabin-view').waitFor();
  const faults: string[] = [];
  const places = ['cabin', ...(cabin.joints[0] === undefined ? [] : [`joint/${cabin.joints[0].id}`]), ...registeredViews.map(({ view }) => view)];
  for (const place of places) {
    await goTo(page, place);
    const tag = registeredViews.find(({ view }) => view === place)?.tag ?? (place === 'cabin' ? 'adjoin-cabin-view' : 'adjoin-joint-view');
    await page.locator(tag).waitFor({ state: 'attached' });
    await page.waitForTimeout(350);
    if ((await wordsOf(page.locator(tag))).length < 20) faults.push(`${place}: says nothing`);
    const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
    if (over > 0) faults.push(`${place}: ${over} px too wide`);
  }
  expect(faults).toEqual([]);
  expect(complaints).toEqual([]);
}, 60_000);

test('files that are none, halves of files, and files of the wrong kind are each told in words, and what is open stays', async () => {
  const page = await visit(`#/cabin?${demo('first-steps')}`);
  await wall(page);
  await drop(page, { name: 'half.cabin.json', text: demoText('first-steps').slice(0, 5000) });
  const dialog = page.locator('adjoin-faults dialog[open]');
  await dialog.waitFor();
  expect(await wordsOf(dialog)).toMatch(/half\.cabin\.json was not opened.*line \d+/);
  await page.keyboard.press('Escape');
  await expect.poll(() => dialog.count()).toBe(0);
  await drop(page, { name: 'holiday.txt', text: 'Packing list\nshoes\n' }, { name: 'empty.csv', text: '' }, { name: 'page.html', text: '<script>alert(1)</script>' }, { name: 'half.csv', text: 'part,specimen,400,410\ndash,P' });
  await page.locator('adjoin-import-view .card').nth(3).waitFor();
  await expect.poll(() => page.locator('adjoin-import-view .card.reading').count()).toBe(0);
  for (const card of await page.locator('adjoin-import-view .card').all()) expect((await wordsOf(card.locator('.state'))).length).toBeGreaterThan(3);
  expect(await page.getByRole('button', { name: /^Take over/ }).isDisabled()).toBe(true);
  await goTo(page, 'surfaces');
  await drop(page, { name: 'not-a-surface.sdf', text: 'nothing of the kind' });
  await page.locator('adjoin-surface-view [role=alert], adjoin-surface-view .faults').first().waitFor();
  await goTo(page, 'cabin');
  await wall(page);
  expect(await page.locator('adjoin-strip').count()).toBe(6);
  expect(complaints).toEqual([]);
}, 90_000);

test('the menu of what can be done opens by key where the focus is, goes by arrows and letters, and gives the focus back', async () => {
  const page = await visit(`#/parts?${demo('first-steps')}`, { viewport: { width: 1280, height: 900 } });
  await page.locator('adjoin-parts-view').waitFor();
  const row = page.locator('adjoin-parts-view tbody a').first();
  await row.focus();
  const before = await focusOf(page);
  await page.keyboard.press('Shift+F10');
  const menu = page.locator('adjoin-context-menu .menu');
  await menu.waitFor({ state: 'visible' });
  const items = await menu.locator('[role=menuitem]').count();
  expect(items).toBeGreaterThan(1);
  const first = await focusOf(page);
  expect(first.tag).toBe('button');
  expect((await press(page, 'ArrowDown')).words).not.toBe(first.words);
  await press(page, 'End', 'Home');
  expect((await focusOf(page)).words).toBe(first.words);
  await press(page, 'Escape');
  await menu.waitFor({ state: 'hidden' });
  expect((await focusOf(page)).words).toBe(before.words);
});

test('two fingers on the map zoom it about the place between them', async () => {
  const page = await visit(`#/cabin?${demo('first-steps')}`, { viewport: { width: 1280, height: 900 }, hasTouch: true });
  await wall(page);
  const map = page.locator('adjoin-cabin-map .map, adjoin-cabin-map [role=application], adjoin-cabin-map svg').first();
  const box = await map.boundingBox();
  if (box === null) throw new Error('there is no map');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  const widthOf = (): Promise<number> => page.locator('adjoin-cabin-map .face').first().evaluate((face) => face.getBoundingClientRect().width);
  const wide = await widthOf();
  const session = await page.context().newCDPSession(page);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', apart: number): Promise<unknown> => session.send('Input.dispatchTouchEvent', {
    type, touchPoints: type === 'touchEnd' ? [] : [{ x: x - apart, y, id: 1 }, { x: x + apart, y, id: 2 }],
  });
  await touch('touchStart', 40);
  for (const apart of [50, 65, 80, 100, 120]) await touch('touchMove', apart);
  await touch('touchEnd', 0);
  await expect.poll(widthOf).toBeGreaterThan(1.5 * wide);
  expect(complaints).toEqual([]);
});
