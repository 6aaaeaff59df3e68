import type { Locator, Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { registeredViews } from '../../components/views/view-registry.ts';
import { builtPages, demo, goTo, wall, wordsOf } from '../support/built-pages.ts';
import { focusOf, press } from '../support/keyboard.ts';

/** Every place of the built workbench by what WCAG 2.2 AA asks beyond what a checker sees: reflow, targets, help, what is said, motion, a cabin that cannot be changed. */
const { visit, complaints } = builtPages(5610);

const places: readonly (readonly [string, string])[] = [
  ['cabin', 'adjoin-cabin-view'], ['joint/map-pocket--sill', 'adjoin-joint-view'], ...registeredViews.map(({ view, tag }) => [view, tag] as const),
];

async function opened(options: Parameters<typeof visit>[1] = {}): Promise<Page> {
  const page = await visit(`#/cabin?${demo('first-steps')}`, options);
  await wall(page);
  return page;
}

const intentOfColour = (page: Page): Locator => page.locator('adjoin-joint-view adjoin-action-fields label').filter({ has: page.getByText('Colour', { exact: true }) }).locator('select');

async function arrive(page: Page, [place, tag]: readonly [string, string]): Promise<void> {
  await goTo(page, place);
  await page.locator(tag).waitFor({ state: 'attached' });
  if (['sources', 'mend', 'apportion'].includes(place)) await page.locator(`${tag} h1`).first().waitFor();
  await page.waitForTimeout(400);
}

test('every place reflows to 320 px without sideways scrolling of the page', async () => {
  const page = await opened({ viewport: { width: 320, height: 720 } });
  const wide: string[] = [];
  for (const place of places) {
    await arrive(page, place);
    const over = await page.evaluate(() => Math.max(document.documentElement.scrollWidth, document.querySelector('adjoin-workbench')?.shadowRoot?.querySelector('main')?.scrollWidth ?? 0) - innerWidth);
    if (over > 0) wide.push(`${place[0]}: ${over} px`);
  }
  expect(wide).toEqual([]);
  expect(complaints).toEqual([]);
}, 120_000);

test.each([390, 1440])('every control of every place is at least 24 px to hit on a screen of %i px', async (width) => {
  const page = await opened({ viewport: { width, height: 900 } });
  const small: string[] = [];
  for (const place of places) {
    await arrive(page, place);
    small.push(...await page.locator('button:visible, select:visible, input:visible, textarea:visible, summary:visible, a.button:visible, nav a:visible, [role=option]:visible, [role=tab]:visible, [role=menuitem]:visible').evaluateAll((targets, name) =>
      targets.filter((target) => !(target.localName === 'button' && target.getRootNode() instanceof ShadowRoot && (target.getRootNode() as ShadowRoot).host.localName === 'adjoin-term'))
        .map((target) => ({ target, box: (target.closest('label') ?? target).getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && (box.width < 23.9 || box.height < 23.9))
        .map(({ target, box }) => `${name}: ${target.getAttribute('aria-label') ?? (target.textContent?.trim().slice(0, 40) || target.outerHTML.slice(0, 80))} ${box.width.toFixed(0)} x ${box.height.toFixed(0)}`), place[0]));
  }
  expect([...new Set(small)]).toEqual([]);
}, 120_000);

test('every place has its help by key and by pointer: what it is for, what to do, the words', async () => {
  const page = await opened({ viewport: { width: 1280, height: 900 } });
  const seen = new Set<string>();
  for (const [at, place] of places.entries()) {
    await arrive(page, place);
    // The review is a dialog of its own, above which the head of the page is out of reach.
    if (at % 2 === 0 || place[0] === 'review') await page.keyboard.press('F1');
    else await page.getByRole('button', { name: 'Help' }).click();
    const dialog = page.locator('adjoin-help dialog[open]');
    await dialog.waitFor();
    // The words come a moment after the dialog.
    await expect.poll(() => wordsOf(dialog), { message: place[0] }).toMatch(/what to do here.*Words met here.*All words/);
    seen.add(await wordsOf(dialog.locator('h2')));
    expect(await wordsOf(dialog)).toContain('limit useValue over limit in per cent');
    await press(page, 'Escape');
    await expect.poll(() => dialog.count()).toBe(0);
  }
  expect(seen.size).toBe(places.length);
}, 120_000);

test('a word is explained where it stands by a key, aloud, and Escape puts it away with the focus where it was', async () => {
  const page = await opened();
  await goTo(page, 'joint/map-pocket--sill');
  const term = page.locator('adjoin-joint-view adjoin-term').filter({ hasText: 'coverage' }).first();
  await term.locator('button').focus();
  await press(page, 'Enter');
  await term.locator('[popover]').waitFor({ state: 'visible' });
  expect(await wordsOf(term.locator('[popover]'))).toContain('Share of the checks');
  await expect.poll(() => wordsOf(page.locator('adjoin-workbench > .unseen[role=status]'))).toContain('coverage: Share of the checks');
  await press(page, 'Escape');
  await term.locator('[popover]').waitFor({ state: 'hidden' });
  expect((await focusOf(page)).words).toBe('coverage');
});

test.each([[1440, 900], [390, 844]] as const)('every place explains its words where they stand, within a screen of %i px, and a second press puts the meaning away', async (width, height) => {
  const page = await opened({ viewport: { width, height } });
  const words = new Map<string, number>();
  for (const place of places) {
    await arrive(page, place);
    if (place[0] === 'compare') await goTo(page, 'compare');
    const terms = page.locator('main adjoin-term button:visible');
    const count = await terms.count();
    words.set(place[0], count);
    if (count === 0) continue;
    // The last one that is in sight of its row: tables may have columns to scroll to.
    const term = terms.nth(count - 1);
    // What is still being reckoned may draw its words anew meanwhile.
    await expect.poll(() => term.scrollIntoViewIfNeeded().then(() => true, () => false), { message: place[0] }).toBe(true);
    await term.click();
    const note = page.locator('adjoin-term [popover]:popover-open');
    await note.waitFor();
    const box = await note.boundingBox();
    expect(box!.x, place[0]).toBeGreaterThanOrEqual(0);
    expect(box!.x + box!.width, place[0]).toBeLessThanOrEqual(width);
    expect(box!.y + box!.height, place[0]).toBeLessThanOrEqual(height);
    expect((await wordsOf(note)).length, place[0]).toBeGreaterThan(30);
    await term.click();
    await expect.poll(() => note.count(), { message: place[0] }).toBe(0);
  }
  for (const place of ['cabin', 'joint/map-pocket--sill', 'parts', 'readings', 'masters', 'rules', 'sources', 'mend', 'apportion', 'compare']) expect(words.get(place), place).toBeGreaterThan(0);
}, 120_000);

test('a verdict that changes is said aloud', async () => {
  const page = await opened();
  await goTo(page, 'joint/map-pocket--sill');
  const said = page.locator('adjoin-workbench > .unseen[role=status]');
  await intentOfColour(page).selectOption('free');
  await expect.poll(() => wordsOf(said)).toMatch(/Map pocket panel.*Sill trim|Sill trim.*Map pocket panel/);
  expect(await wordsOf(said)).not.toMatch(/clashes\.$/);
  await page.keyboard.press('Control+z');
  await expect.poll(() => wordsOf(said)).toMatch(/clashes/);
});

test('with little motion asked for nothing moves by itself, in any place', async () => {
  const page = await opened({ reducedMotion: 'reduce' });
  for (const place of places) {
    await arrive(page, place);
    expect(await page.evaluate(() => document.getAnimations().filter(({ playState }) => playState === 'running').length), place[0]).toBe(0);
  }
});

/** The controls in sight that would change the cabin: buttons that say so, and fields of the document. */
const offersOf = (page: Page, place: string): Promise<string[]> => page.locator('main button:visible, main input:visible, main select:visible, main textarea:visible').evaluateAll((controls, name) => controls
  .filter((control) => !control.matches(':disabled') && control.getAttribute('aria-disabled') !== 'true')
  .filter((control) => (control.localName === 'button'
    ? /^(Add|Remove|Apply|Keep|Accept|Withdraw|Edit|Move|Mark|Set |Record|Store|Take over|Decide|Visual record|Note|Copy|Draw|Outline|Join|Delete|Rename|Use |Make|Restore)/.test(control.textContent?.trim() ?? '')
    : ['adjoin-action-fields', 'adjoin-inline-fields'].includes(((control.getRootNode() as ShadowRoot).host as Element | undefined)?.localName ?? '')))
  .map((control) => `${name}: ${control.textContent?.trim().slice(0, 40) || control.getAttribute('aria-label') || control.outerHTML.slice(0, 80)}`), place);

test('a cabin that another tab owns can be looked at in every place, nothing offers to change it, and it says why', async () => {
  const first = await opened();
  const page = await first.context().newPage();
  page.setDefaultTimeout(15_000);
  await page.goto(first.url());
  await wall(page);
  const offers: string[] = [];
  for (const place of places) {
    await arrive(page, place);
    // The review fills the screen; what it says stands in it.
    if (place[0] !== 'review') expect(await wordsOf(page.locator('main .notice').first()), place[0]).toContain('It can be looked at here, not changed.');
    offers.push(...await offersOf(page, place[0]));
  }
  await arrive(first, ['parts', 'adjoin-parts-view']);
  expect(await offersOf(first, 'the owner'), 'what the owner is offered').not.toEqual([]);
  expect(offers).toEqual([]);
  // Nor by the palette, the keys or a form that is asked for.
  await goTo(page, 'cabin');
  await page.keyboard.press('Control+k');
  await page.keyboard.type('add a part');
  await page.keyboard.press('Enter');
  expect(await page.locator('adjoin-action-form dialog[open]').count()).toBe(0);
  expect(await wordsOf(page.locator('adjoin-palette dialog [role=option]').first())).toContain('open in another tab');
}, 120_000);

test('a cabin whose owner is gone is taken over by the tab that looked on', async () => {
  const first = await opened();
  const page = await first.context().newPage();
  page.setDefaultTimeout(15_000);
  await page.goto(first.url());
  await wall(page);
  await page.getByText('It can be looked at here, not changed.').waitFor();
  await first.close();
  const takeOver = page.getByRole('button', { name: 'Take it over' });
  if (await takeOver.isVisible().catch(() => false)) await takeOver.click();
  await expect.poll(() => page.getByText('It can be looked at here, not changed.').count()).toBe(0);
  await goTo(page, 'joint/map-pocket--sill');
  await intentOfColour(page).selectOption('free');
  await page.getByRole('button', { name: /^Undo: / }).waitFor();
});
