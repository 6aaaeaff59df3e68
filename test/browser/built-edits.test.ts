import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { builtPages, demo, goTo, wall, wordsOf } from '../support/built-pages.ts';

/**
 * Everything of a cabin is made, changed and taken away where it stands, by the pointer and by keys, each as one step of undo with its name.
 * The menu of a thing is that of the registry: the right button, or Shift and F10, on what stands for it.
 */
const { visit, address, complaints } = builtPages(5710);

const opened = async (): Promise<Page> => {
  const page = await visit(`#/cabin?${demo('shuttle-slate')}`, { viewport: { width: 1440, height: 900 } });
  await wall(page);
  return page;
};

const undo = async (page: Page): Promise<string> => (await page.locator('adjoin-header .tools button').first().getAttribute('aria-label')) ?? '';
const menu = (page: Page): Locator => page.locator('adjoin-context-menu [role=menuitem]:visible');

/** What the menu of a thing offers; it is closed again. */
async function offers(page: Page, thing: Locator, by: 'pointer' | 'keys'): Promise<readonly string[]> {
  if (by === 'pointer') await thing.click({ button: 'right' });
  else {
    await thing.focus();
    await page.keyboard.press('Shift+F10');
  }
  await menu(page).first().waitFor();
  const titles = await menu(page).locator('span').allInnerTexts();
  await page.keyboard.press('Escape');
  await expect.poll(() => menu(page).count()).toBe(0);
  return titles.map((title) => title.trim());
}

/** Chooses in the menu of a thing. */
async function choose(page: Page, thing: Locator, title: string): Promise<void> {
  await thing.click({ button: 'right' });
  await menu(page).filter({ hasText: new RegExp(`^\\s*${title}`) }).first().click();
}

const form = (page: Page): Locator => page.locator('adjoin-action-form dialog[open]');
const submit = (page: Page): Promise<void> => form(page).locator('button[type=submit]').click();

/** Fills the form that a button opens and sends it; what can be undone then. */
async function made(page: Page, button: string, fill: Readonly<Record<string, string>>): Promise<string> {
  await page.getByRole('button', { name: button, exact: true }).first().click();
  await form(page).waitFor();
  for (const [label, value] of Object.entries(fill)) {
    const field = form(page).getByLabel(label).first();
    if (await field.evaluate((element) => element.localName) === 'select') await field.selectOption(value);
    else await field.fill(value);
  }
  await submit(page);
  await expect.poll(() => form(page).count(), { message: button }).toBe(0);
  return undo(page);
}

test('each thing has its menu by pointer and by keys, and it is of that thing alone', async () => {
  const page = await opened();
  await goTo(page, 'parts/upper-dash');
  const panel = page.locator('adjoin-part-panel');
  await panel.waitFor();
  const source = panel.locator('adjoin-source-panel').first();
  const specimen = source.locator('li > button.title').first();
  await specimen.click();
  const reading = page.locator('adjoin-specimen-panel tbody input[type=checkbox]').first();
  await reading.waitFor();
  const expected: readonly (readonly [Locator, RegExp, RegExp])[] = [
    [source.locator('header button.title'), /^Edit source$/m, /^(Remove part|Edit specimen|Edit reading)$/m],
    [specimen, /^Edit specimen$/m, /^(Remove part|Remove source|Edit reading)$/m],
    [reading, /^Edit reading$/m, /^(Remove part|Remove source|Remove specimen)$/m],
    [page.locator('adjoin-parts-view tbody th a').nth(3), /^Remove part$/m, /^(Remove source|Remove specimen)$/m],
  ];
  for (const by of ['pointer', 'keys'] as const) {
    for (const [thing, has, hasNot] of expected) {
      const titles = (await offers(page, thing, by)).join('\n');
      expect(titles, by).toMatch(has);
      expect(titles, by).not.toMatch(hasNot);
    }
  }
  await goTo(page, 'parts', { show: 'registers' });
  await page.locator('adjoin-registers').waitFor();
  for (const [section, has] of [
    ['zones', /^Rename zone$/m], ['suppliers', /^Edit supplier$/m], ['instruments', /^Edit instrument$/m], ['conditions', /^Edit conditions of readings$/m],
    ['decisions', /^Withdraw decision$/m], ['visual', /^Remove visual record$/m],
  ] as const) {
    const line = page.locator(`adjoin-registers #${section} .line button:not([disabled])`).first();
    for (const by of ['pointer', 'keys'] as const) expect((await offers(page, line, by)).join('\n'), `${section} by ${by}`).toMatch(has);
  }
  expect(complaints).toEqual([]);
}, 120_000);

test('what a plan, a comparison and the lots speak of has its menu there too, by pointer and by keys', async () => {
  const page = await opened();
  const joint = /^Remove joint$/m;
  const part = /^Remove part$/m;
  const rows = async (things: readonly (readonly [Locator, RegExp, RegExp])[]): Promise<void> => {
    for (const [thing, has, hasNot] of things) {
      await thing.waitFor({ timeout: 60_000 });
      for (const by of ['pointer', 'keys'] as const) {
        const titles = (await offers(page, thing, by)).join('\n');
        expect(titles, `${page.url()} by ${by}`).toMatch(has);
        expect(titles, `${page.url()} by ${by}`).not.toMatch(hasNot);
      }
    }
  };
  await goTo(page, 'mend');
  const mend = page.locator('adjoin-mend-view');
  await rows([[mend.locator('adjoin-mend-card h3 a').first(), part, joint], [mend.locator('adjoin-mend-card .joints a').first(), joint, part], [mend.locator('caption:has-text("Joints that become other") ~ tbody a').first(), joint, part]]);
  await goTo(page, 'apportion');
  const sheets = page.locator('adjoin-apportion-view .tolerances').first();
  await rows([[sheets.locator('tbody th a').first(), part, joint], [sheets.locator('tbody td a').first(), joint, part]]);
  await goTo(page, 'sources');
  await rows([[page.locator('adjoin-source-choice .source button').first(), /^Edit source$/m, joint]]);
  await goTo(page, 'compare', { before: 'new', stage: 'light-exposed' });
  const compare = page.locator('adjoin-compare-view');
  await rows([[compare.locator('adjoin-change-list li a').first(), joint, part]]);
  await goTo(page, 'compare', { before: 'new', stage: 'light-exposed', as: 'table' });
  await rows([[compare.locator('caption:has-text("Joints, before and now") ~ tbody a').first(), joint, part], [compare.locator('caption:has-text("Change of each part") ~ tbody a').first(), /^Edit source$/m, joint]]);
  // A lot leads to its specimen, unfolded below its part.
  await page.goto(`${address()}#/series?${demo('lots')}`);
  const series = page.locator('adjoin-series-view');
  await rows([[series.getByRole('group', { name: 'Forecast of the joints' }).locator('tbody a').first(), joint, part], [series.getByRole('group', { name: /^Lots of / }).locator('tbody a').first(), /^Edit specimen$/m, joint]]);
  await series.getByRole('group', { name: /^Lots of / }).locator('tbody a').first().click();
  await page.locator('adjoin-specimen-panel').waitFor();
  expect(complaints).toEqual([]);
}, 180_000);

test('Delete takes away what has the focus and not what holds it; it is said, and undone from there', async () => {
  const page = await opened();
  await goTo(page, 'parts/upper-dash');
  const source = page.locator('adjoin-source-panel').first();
  const specimens = source.locator('li > button.title');
  await specimens.first().waitFor();
  const [parts, before] = [await page.locator('adjoin-parts-view tbody tr').count(), await specimens.count()];
  const last = specimens.last();
  const name = (await last.locator('b').innerText()).trim();
  await last.focus();
  await page.keyboard.press('Delete');
  await expect.poll(() => specimens.count()).toBe(before - 1);
  expect(await page.locator('adjoin-parts-view tbody tr').count()).toBe(parts);
  const said = page.locator('.removal');
  await expect.poll(() => wordsOf(said)).toContain(name);
  expect(await undo(page)).toMatch(/^Undo: Remove/);
  await said.getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => specimens.count()).toBe(before);
  expect(await said.count()).toBe(0);
  expect(complaints).toEqual([]);
}, 60_000);

test('the cabin is named from its head; zones, caps, suppliers and instruments are made, changed and removed, each undone by its name', async () => {
  const page = await visit(`#/parts?show=registers&${demo('first-steps')}`, { viewport: { width: 1440, height: 900 } });
  await page.locator('adjoin-registers').waitFor({ timeout: 30_000 });
  await page.locator('adjoin-header button.name').click();
  await form(page).getByLabel('Name').fill('First steps, second build');
  await submit(page);
  await expect.poll(() => wordsOf(page.locator('adjoin-header button.name'))).toBe('First steps, second build');

  const make = (button: string, fill: Readonly<Record<string, string>>): Promise<string> => made(page, button, fill);
  expect(await make('Add a zone', { Name: 'Boot' })).toMatch(/^Undo: Add zone Boot/);
  expect(await make('Add a cap: Boot', { Quantity: 'gloss', 'At most': '4', Basis: 'common practice, no source' })).toMatch(/^Undo: .*cap/i);
  expect(await make('Add a supplier', { Name: 'Tamsel Linings' })).toMatch(/^Undo: Add supplier Tamsel Linings/);
  expect(await make('Add an instrument', { Name: 'Glossmeter 9', Kind: 'glossmeter' })).toMatch(/^Undo: Add instrument/);
  await page.getByRole('button', { name: 'Edit Tamsel Linings' }).click();
  await form(page).getByLabel('Name').fill('Tamsel Roof Linings');
  await submit(page);
  await expect.poll(() => undo(page)).toMatch(/^Undo: .*Tamsel/);
  await choose(page, page.locator('#suppliers .line').filter({ hasText: 'Tamsel Roof Linings' }).locator('b'), 'Remove supplier');
  if (await form(page).count() > 0) await submit(page);
  await expect.poll(() => page.locator('#suppliers .line').filter({ hasText: 'Tamsel' }).count()).toBe(0);
  for (let step = 0; step < 7; step += 1) await page.keyboard.press('Control+z');
  await expect.poll(() => undo(page)).toBe('Nothing to undo');
  expect(await wordsOf(page.locator('adjoin-header button.name'))).toBe('First steps: a door of six parts');
  expect(await page.locator('#zones .line').filter({ hasText: 'Boot' }).count()).toBe(0);
  expect(complaints).toEqual([]);
}, 90_000);

test('a joint is changed and removed where it stands, from the wall by its menu too', async () => {
  const page = await visit(`#/cabin?${demo('first-steps')}`, { viewport: { width: 1440, height: 900 } });
  await wall(page);
  const strips = page.locator('adjoin-strip');
  const before = await strips.count();
  await choose(page, strips.first(), 'Remove joint');
  await expect.poll(() => strips.count()).toBe(before - 1);
  await page.locator('.removal').getByRole('button', { name: 'Undo' }).click();
  await expect.poll(() => strips.count()).toBe(before);
  await strips.first().locator('a').click();
  await page.locator('adjoin-joint-stage').waitFor();
  await page.locator('adjoin-joint-view').getByRole('button', { name: 'Remove joint' }).click();
  await page.getByText(/^There is no joint/).waitFor();
  await page.locator('.removal').getByRole('button', { name: 'Undo' }).click();
  await page.locator('adjoin-joint-stage').waitFor();
  expect(await undo(page)).toBe('Nothing to undo');
  expect(complaints).toEqual([]);
}, 60_000);

test('lights, conditions and runs are made, changed and removed in the registers, each undone by its name', async () => {
  const page = await visit(`#/parts?show=registers&${demo('shuttle-slate')}`, { viewport: { width: 1440, height: 900 } });
  await page.locator('adjoin-registers').waitFor({ timeout: 30_000 });
  const line = (section: string, words: string): Locator => page.locator(`#${section} .line`).filter({ hasText: words });
  const away = async (section: string, words: string, title: string): Promise<void> => {
    await choose(page, line(section, words).locator('b').first(), title);
    if (await form(page).count() > 0) await submit(page);
    await expect.poll(() => line(section, words).count(), { message: title }).toBe(0);
  };
  expect(await made(page, 'Add a light by its values', { Name: 'Footwell lamp', 'First wavelength': '400', 'Step of wavelength': '100', 'Relative power': '1, 2, 3, 4' })).toBe('Undo: Add light Footwell lamp');
  expect(await made(page, 'Edit Footwell lamp', { Name: 'Footwell lamp, warm' })).toMatch(/^Undo: Change name to Footwell lamp, warm/);
  await away('lights', 'Footwell lamp, warm', 'Remove own light');
  expect(await undo(page)).toMatch(/^Undo: Remove light Footwell lamp, warm/);
  expect(await made(page, 'Add conditions', { Id: 'gloss-bench', Instrument: 'sp-1' })).toBe('Undo: Add conditions gloss-bench');
  await away('conditions', 'gloss-bench', 'Remove conditions of readings');
  const run = page.locator('#runs .line b').first();
  const name = (await run.innerText()).trim();
  expect(await made(page, `Edit ${name}`, { Name: 'Along the belt line' })).toMatch(/^Undo: Change run/);
  await away('runs', 'Along the belt line', 'Remove run');
  for (let step = 0; step < 7; step += 1) await page.keyboard.press('Control+z');
  await expect.poll(() => undo(page)).toBe('Nothing to undo');
  expect((await run.innerText()).trim()).toBe(name);
  expect(complaints).toEqual([]);
}, 90_000);

test('a master is made, dated and removed, each undone by its name', async () => {
  const page = await opened();
  await goTo(page, 'masters');
  await page.locator('adjoin-masters-view .list').waitFor();
  expect(await made(page, 'Add a master', { Id: 'm-belt' })).toBe('Undo: Add master m-belt');
  const card = page.locator('adjoin-masters-view .list a.card').filter({ hasText: 'm-belt' });
  await card.click();
  const panel = page.locator('adjoin-master-panel').filter({ hasText: 'm-belt' });
  await panel.waitFor();
  await panel.getByLabel('Issue').fill('4');
  await page.keyboard.press('Tab');
  await expect.poll(() => wordsOf(panel.locator('header'))).toContain('issue 4');
  await panel.getByRole('button', { name: 'Remove master' }).click();
  if (await form(page).count() > 0) await submit(page);
  await expect.poll(() => card.count()).toBe(0);
  expect(await undo(page)).toBe('Undo: Remove master m-belt');
  for (let step = 0; step < 3; step += 1) await page.keyboard.press('Control+z');
  await expect.poll(() => undo(page)).toBe('Nothing to undo');
  await expect.poll(() => card.count()).toBe(0);
  expect(complaints).toEqual([]);
}, 60_000);
