import { createRequire } from 'node:module';
import { chromium } from 'playwright-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { registeredViews } from '../../components/views/view-registry.ts';
import { serveBuiltApp } from '../support/built-app.ts';
import type { ServedApp } from '../support/built-app.ts';
import { chromiumArguments, chromiumPath } from '../support/chromium.ts';

/** Every place of the workbench as built: no fault of access in any ink. */
const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
const opened = 'open=demo-data/first-steps.cabin.json';
const places: readonly (readonly [string, string])[] = [
  ['cabin', `#/cabin?${opened}`], ['matrix', `#/cabin?show=matrix&${opened}`], ['joint', ''],
  ...registeredViews.map(({ view }) => [view, `#/${view}?${opened}`] as const),
];

let browser: Browser;
let app: ServedApp;

beforeAll(async () => {
  app = await serveBuiltApp(5490);
  browser = await chromium.launch({ executablePath: await chromiumPath(), args: chromiumArguments });
}, 180_000);

afterAll(async () => {
  await browser?.close();
  app?.close();
});

async function open(options: Parameters<Browser['newContext']>[0]): Promise<Page> {
  const page = await (await browser.newContext({ bypassCSP: true, ...options })).newPage();
  await page.goto(`${app.address}#/cabin?${opened}`);
  await page.locator('adjoin-strip').first().waitFor({ timeout: 60_000 });
  return page;
}

async function go(page: Page, [name, hash]: readonly [string, string]): Promise<void> {
  const joint = await page.evaluate(() => (document.querySelector('adjoin-workbench') as unknown as { desk: { present: { joints: { id: string }[] } } }).desk.present.joints[0]?.id);
  await page.evaluate((to) => { location.hash = to; }, name === 'joint' ? `#/joint/${joint}?${opened}` : hash);
  const view = registeredViews.find((one) => one.view === name);
  await page.locator(view?.tag ?? (name === 'joint' ? 'adjoin-joint-view' : 'adjoin-cabin-view')).waitFor({ state: 'attached' });
  await page.waitForTimeout(400);
}

test.each([
  ['light', { colorScheme: 'light' }], ['dark', { colorScheme: 'dark' }], ['forced colours, little motion', { forcedColors: 'active', reducedMotion: 'reduce' }],
] as const)('no place has a fault of access: %s', async (_, options) => {
  const page = await open(options);
  await page.addScriptTag({ path: axePath });
  const faults: string[] = [];
  for (const place of places) {
    await go(page, place);
    faults.push(...await page.evaluate(async (name) => {
      const { axe } = window as unknown as { axe: { run: (context: Document, options: object) => Promise<{ violations: { id: string; nodes: { target: unknown }[] }[] }> } };
      const { violations } = await axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] });
      return violations.map((violation) => `${name}: ${violation.id} ${JSON.stringify(violation.nodes.map((node) => node.target).slice(0, 3))}`);
    }, place[0]));
  }
  expect(faults).toEqual([]);
  await page.context().close();
}, 120_000);
