import { expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { builtPages, demo, demoText, goTo, wall, wordsOf } from '../support/built-pages.ts';

/**
 * The job of the material planner in the built workbench: from parts with several sources to the set that is ordered, and back. What is expected of
 * the sources is read off the demo cabin: the lid of the glove box that was coloured without carbon black clashes under the shop lamps
 * (demo-data/README.md), and it has two other sources.
 */
const { visit, complaints } = builtPages(5590);
const slate = JSON.parse(demoText('shuttle-slate')) as Cabin;
const several = slate.parts.filter(({ sources }) => sources.length > 1);

test('sources are planned, swaps seen, a set picked and applied as one step, compared with before, and undone', async () => {
  const page = await visit(`#/sources?${demo('shuttle-slate')}`, { viewport: { width: 1440, height: 900 } });
  const apply = page.getByRole('button', { name: /^Apply: \d+ parts? to another source$/ });
  await apply.waitFor({ timeout: 60_000 });
  const view = page.locator('adjoin-sources-view');

  // What the best set changes: fewer joints clash than the four that do now.
  const row = async (name: string): Promise<string[]> => (await view.locator('.picture tr').filter({ hasText: name }).locator('td').allInnerTexts()).map((text) => text.trim());
  const certain = await row('clashing for certain');
  expect(Number(certain[0])).toBe(4);
  expect(Number(certain[1])).toBeLessThan(4);
  expect(await wordsOf(view)).toContain('is proved');

  // Every part with several sources can be looked at; what each swap does is said in words before anything is ordered.
  const lid = page.locator('adjoin-source-choice');
  await expect.poll(() => wordsOf(lid), { timeout: 30_000 }).toContain('Glove box lid');
  await expect.poll(() => wordsOf(lid), { timeout: 30_000 }).toMatch(/Instead:/);

  // The front, by keys: the next cheaper set is another one, and the table twin lists all its points.
  const front = page.getByRole('slider', { name: 'Front of cost and harmony' });
  await page.locator('adjoin-front summary').click();
  const points = page.locator('adjoin-front tbody tr');
  const all = Number(await front.getAttribute('aria-valuemax'));
  await expect.poll(() => points.count()).toBe(all);
  await front.focus();
  await page.keyboard.press('ArrowLeft');
  await expect.poll(() => front.getAttribute('aria-valuetext')).toMatch(/^point 2 of/);
  await expect.poll(() => page.evaluate(() => location.hash)).toContain('point=2');
  await page.keyboard.press('Home');
  await expect.poll(() => front.getAttribute('aria-valuetext')).toMatch(/^point 1 of/);

  // Applied as one step.
  const parts = Number(/\d+/.exec(await wordsOf(apply))?.[0]);
  expect(parts).toBeGreaterThan(0);
  expect(parts).toBeLessThanOrEqual(several.length);
  await apply.click();
  await page.getByRole('button', { name: 'The cabin stands by this set' }).waitFor();
  await page.getByRole('button', { name: `Undo: Take the sources chosen for ${parts} parts` }).waitFor();

  // Compared with before: exactly the parts of the set stand by another supplier, and the lid holds now.
  await goTo(page, 'compare');
  await page.getByRole('button', { name: `Now against before: Take the sources chosen for ${parts} parts` }).click();
  await page.getByRole('button', { name: 'Table', exact: true }).click();
  const tables = page.locator('adjoin-compare-view .table table');
  await tables.nth(1).waitFor({ timeout: 30_000 });
  const changed = await tables.nth(1).locator('tbody th').allInnerTexts();
  expect(changed.length).toBe(parts);
  expect(changed.every((name) => several.some((part) => part.name === name.trim()))).toBe(true);
  const joint = tables.first().locator('tbody tr').filter({ hasText: 'Glove box lid' }).filter({ hasText: 'Mid dash skin, passenger side' });
  expect((await joint.locator('td').allInnerTexts()).slice(1, 3).map((text) => text.trim())).toEqual(['clashes', 'holds']);

  // One step back: all is as it was.
  await page.getByRole('button', { name: /^Undo: Take the sources/ }).click();
  await page.getByRole('button', { name: 'Nothing to undo' }).waitFor();
  await goTo(page, 'cabin');
  await wall(page);
  await expect.poll(() => wordsOf(page.locator('adjoin-wall .summary'))).toMatch(/5 clash \(1 accepted\), 5 open/);
  expect(complaints).toEqual([]);
}, 180_000);
