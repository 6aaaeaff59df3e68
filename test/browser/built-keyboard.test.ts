import { expect, test } from 'vitest';
import { builtPages, saved, wall, wordsOf } from '../support/built-pages.ts';
import { command, focusOf, press, pressUntil, type } from '../support/keyboard.ts';

/** The engineer's main job with no pointer at all: from the start page to the saved report, the focus seen and never lost after any key. */
const { visit, complaints } = builtPages(5570);

test('from the start page to the saved report with keys alone', async () => {
  const page = await visit('#/', { viewport: { width: 1440, height: 900 }, acceptDownloads: true });
  await page.locator('adjoin-start').waitFor();
  await pressUntil(page, /^Open the shuttle, slate/);
  await press(page, 'Enter');
  await wall(page);
  expect((await focusOf(page)).fault).toBeUndefined();

  // The wall: only what clashes, then by arrows to a joint, and into it.
  await pressUntil(page, /^4 clash$/);
  await press(page, 'Space');
  await expect.poll(() => page.locator('adjoin-strip').count()).toBe(4);
  await pressUntil(page, /Steering column shroud.*Knee panel/);
  expect((await press(page, 'ArrowDown')).words).toMatch(/Door top roll, left.*Upper dash skin/);
  expect((await press(page, 'Enter')).words).toMatch(/Door top roll, left meets Upper dash skin|Upper dash skin meets Door top roll, left/);

  // A change is tried by slider and by button, kept, taken back, put back, removed, put back.
  await pressUntil(page, /^dL\* of Door top roll, left$/);
  await press(page, 'ArrowRight', 'ArrowRight');
  await expect.poll(() => wordsOf(page.locator('.trial'))).toContain('Door top roll, left: dL* +0.10');
  await pressUntil(page, /^As measured$/);
  await press(page, 'Enter');
  await pressUntil(page, /^Bring the trial to the standard$/, 'Shift+Tab');
  await press(page, 'Enter');
  await expect.poll(() => wordsOf(page.locator('adjoin-what-if tr.whole td').nth(1))).toMatch(/^holds/);
  await pressUntil(page, /^Keep as proposal$/);
  expect((await press(page, 'Enter')).words).toMatch(/^Date/);
  await pressUntil(page, /^Note/);
  await type(page, 'Roll to the dash.');
  await pressUntil(page, /^Propose a change/);
  expect((await press(page, 'Enter')).words).toBe('Keep as proposal');
  await expect.poll(() => wordsOf(page.locator('adjoin-proposals'))).toContain('Roll to the dash.');
  await press(page, 'Control+z');
  await expect.poll(() => wordsOf(page.locator('adjoin-proposals'))).not.toContain('Roll to the dash.');
  await press(page, 'Control+Shift+z');
  await expect.poll(() => wordsOf(page.locator('adjoin-proposals'))).toContain('Roll to the dash.');
  await pressUntil(page, /^Remove proposal-1$/);
  await press(page, 'Enter');
  await expect.poll(() => wordsOf(page.locator('adjoin-proposals'))).not.toContain('Roll to the dash.');
  expect((await focusOf(page)).fault).toBeUndefined();
  await press(page, 'Control+z');
  await expect.poll(() => wordsOf(page.locator('adjoin-proposals'))).toContain('Roll to the dash.');

  // A form that is left gives the focus back to its button; one that is sent as well.
  await pressUntil(page, /^Record a visual assessment$/, 'Shift+Tab');
  await press(page, 'Enter');
  expect((await press(page, 'Escape')).words).toBe('Record a visual assessment');
  await pressUntil(page, /^Accept a clash for a time$/, 'Shift+Tab');
  await press(page, 'Enter');
  await pressUntil(page, /^Reason/);
  await type(page, 'First build only.');
  await pressUntil(page, /^Role/);
  await type(page, 'design quality');
  await pressUntil(page, /^Expires/);
  await type(page, '10312026');
  await pressUntil(page, /^Accept a clash for a time$/);
  expect((await press(page, 'Enter')).words).toBe('Accept a clash for a time');
  await expect.poll(() => wordsOf(page.locator('.lead .verdict'))).toBe('clashes, accepted until 2026-10-31');

  // To the joint before it on the wall of what clashes, which the accepted one has left, and back to the wall where that joint is.
  expect((await press(page, 'Shift+ArrowLeft')).words).toMatch(/Console frame/);
  await pressUntil(page, /^All joints$/, 'Shift+Tab');
  await press(page, 'Enter');
  await wall(page);
  await expect.poll(async () => (await focusOf(page)).words).toMatch(/Console frame.*Console lid/);

  // What is asked of suppliers, and the report, by the palette.
  await command(page, 'go to readings');
  await page.locator('adjoin-readings-view').waitFor();
  await pressUntil(page, /^Request sheets$/);
  await press(page, 'Enter');
  await page.locator('adjoin-requests table').first().waitFor();
  await pressUntil(page, /^Save all as one table/);
  expect((await saved(page, () => press(page, 'Enter'))).text).toContain('Headrest, left');
  await command(page, 'go to report');
  await page.locator('adjoin-report-page').waitFor();
  await press(page, 'F1');
  await press(page, 'Escape');
  await pressUntil(page, /^HTML$/);
  const { name, text } = await saved(page, () => press(page, 'Enter'));
  expect(name).toMatch(/\.html$/);
  expect(text).toContain('First build only.');
  expect(text).toContain('Roll to the dash.');
  expect(complaints).toEqual([]);
}, 180_000);

test('rows that are removed, edits that are undone and views that change leave the focus somewhere near', async () => {
  const page = await visit('#/parts?open=demo-data/first-steps.cabin.json', { viewport: { width: 1440, height: 900 } });
  await page.locator('adjoin-parts-view').waitFor();
  await pressUntil(page, /^Top roll$/);
  await pressUntil(page, /Sill trim/, 'ArrowDown');
  await press(page, 'Enter');
  await pressUntil(page, /^Remove part$/);
  await press(page, 'Enter');
  await expect.poll(() => page.locator('adjoin-part-table').evaluate((table) => table.shadowRoot?.textContent?.includes('Sill trim'))).toBe(false);
  expect((await focusOf(page)).fault).toBeUndefined();
  await press(page, 'Control+z');
  await expect.poll(() => page.locator('adjoin-part-table').evaluate((table) => table.shadowRoot?.textContent?.includes('Sill trim'))).toBe(true);
  for (const place of ['cabin', 'import', 'readings', 'masters', 'surfaces', 'rules', 'sources', 'mend', 'apportion', 'compare', 'review', 'report', 'parts']) {
    await command(page, `go to ${place}`);
    await page.waitForTimeout(300);
    expect((await focusOf(page)).fault, place).toBeUndefined();
    await press(page, 'Tab', 'Tab', 'Tab');
  }
}, 120_000);
