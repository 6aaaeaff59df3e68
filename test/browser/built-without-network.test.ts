import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { offeredCabins } from '../../components/model/offered-cabins.ts';
import { registeredViews } from '../../components/views/view-registry.ts';
import { builtPages, drop, goTo, saved, wall, wordsOf } from '../support/built-pages.ts';

/**
 * The jobs without a network, in the built workbench below a path of a static server: the start is opened once, then the network goes. Nothing
 * that is loaded later was asked for before.
 */
const { visit, read, complaints } = builtPages(5690, 'quality/tools/adjoin/');

const surface = readFileSync(join(import.meta.dirname, '..', 'formats', 'fixtures', 'spectra-wide.csv'), 'utf8');

/** The start once with the network, until the copy stands; then none. */
async function withoutNetwork(): Promise<Page> {
  const page = await visit('#/', { viewport: { width: 1440, height: 900 }, acceptDownloads: true });
  const kept = (): Promise<number> => page.evaluate(async () => {
    if (navigator.serviceWorker.controller === null) return 0;
    const addresses = await Promise.all((await caches.keys()).map(async (name) => (await (await caches.open(name)).keys()).map(({ url }) => url)));
    return addresses.flat().filter((url) => url.endsWith('.cabin.json')).length;
  });
  await expect.poll(kept, { timeout: 60_000 }).toBe(offeredCabins.length);
  await page.context().setOffline(true);
  expect(await page.evaluate(() => fetch('./no-such-file').then(() => 'answered', () => 'no network'))).toBe('no network');
  complaints.length = 0;
  await page.reload();
  await page.getByRole('link', { name: /^First steps/ }).waitFor();
  return page;
}

/** What the console says of the fetch above is no complaint of the workbench. */
const grave = (): readonly string[] => complaints.filter((text) => !text.includes('no-such-file'));

test('the engineer and the planner do their work without a network, and a page that is loaded anew has it all', async () => {
  const page = await withoutNetwork();
  await page.getByRole('link', { name: /^First steps/ }).click();
  await wall(page);

  // Why a joint clashes, and what if it were otherwise: rules with formulas judge it.
  await page.locator('adjoin-strip').filter({ has: page.locator('.word.clashes') }).first().locator('a').click();
  await page.locator('adjoin-joint-stage').waitFor();
  await page.getByRole('button', { name: 'Bring the trial to the standard' }).click();
  await expect.poll(() => wordsOf(page.locator('adjoin-what-if tr.whole td').nth(1)), { timeout: 20_000 }).toMatch(/^holds/);
  await page.getByRole('button', { name: 'Keep as proposal' }).click();
  await page.locator('adjoin-action-form dialog[open] button[type=submit]').click();
  await page.getByRole('button', { name: /^Undo: / }).waitFor();

  // A formula of the rule book is checked as it is written.
  await goTo(page, 'rules', { see: 'book' });
  await page.locator('adjoin-book-editor summary').filter({ hasText: 'Kinds of joint' }).click();
  const factor = page.locator('adjoin-formula-field').filter({ hasText: 'Factor of a visible gap' });
  await factor.locator('input').fill('1 + gapMm *');
  await expect.poll(() => wordsOf(factor.locator('#found')), { timeout: 20_000 }).toContain('Column 12: found the end, expected a complete expression');
  await page.keyboard.press('Escape');

  // Files of readings and of surfaces are read.
  await goTo(page, 'import');
  await page.locator('adjoin-import-view h1').waitFor();
  await drop(page, { name: 'spectra.csv', text: surface });
  await page.locator('adjoin-import-view .card').waitFor();
  await expect.poll(() => wordsOf(page.locator('adjoin-import-file')), { timeout: 20_000 }).toContain('Recognised');

  // Plans are made: sources, mend, apportion.
  for (const place of ['sources', 'mend', 'apportion']) {
    await goTo(page, place);
    await expect.poll(() => wordsOf(page.locator(`adjoin-${place}-view`)), { timeout: 60_000, message: place }).toMatch({ sources: /is proved/, mend: /parts? changes?|Nothing|nothing/, apportion: /the smallest radius is/ }[place]!);
  }

  // The report is made and saved.
  await goTo(page, 'report');
  await page.locator('adjoin-report-page').waitFor({ timeout: 30_000 });
  const file = await saved(page, () => page.getByRole('button', { name: 'HTML', exact: true }).click());
  expect(file.text).toContain('First steps');
  const paper = await read(file.text);
  expect(await paper.page.locator('h1').count()).toBe(1);
  expect(paper.asked.filter((url) => !url.startsWith('data:') && !url.startsWith('file:'))).toEqual([]);

  // Loaded anew without a network the place and the work are there.
  await goTo(page, 'mend');
  await page.waitForTimeout(1200);
  await page.reload();
  await page.locator('adjoin-mend-view h1').waitFor({ timeout: 30_000 });
  await page.getByRole('button', { name: /^Undo: |^Nothing to undo/ }).waitFor();
  await goTo(page, 'cabin');
  await wall(page);
  await page.locator('adjoin-strip').filter({ has: page.locator('.word.clashes') }).first().locator('a').click();
  await expect.poll(() => page.locator('adjoin-proposals li').count()).toBe(1);
  expect(grave()).toEqual([]);
}, 240_000);

test('every place opens without a network that never was gone to before, and so does its help', async () => {
  const page = await withoutNetwork();
  await page.getByRole('link', { name: /^Lots in series/ }).click();
  await page.locator('adjoin-series-view h1').waitFor({ timeout: 30_000 });
  for (const { view, tag } of registeredViews) {
    await goTo(page, view);
    await page.locator(tag).locator('h1, dialog').first().waitFor({ timeout: 30_000 });
    expect(await page.getByText('This place could not be loaded.').count(), view).toBe(0);
  }
  await page.keyboard.press('F1');
  await page.locator('adjoin-help dialog[open]').waitFor();
  expect(grave()).toEqual([]);
}, 120_000);
