import { createRequire } from 'node:module';
import { chromium } from 'playwright-core';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serveBuiltApp } from '../support/built-app.ts';
import type { ServedApp } from '../support/built-app.ts';
import { chromiumArguments, chromiumPath } from '../support/chromium.ts';

/** The workbench as it is built and served, under the strict policy, in a Chromium of its own. */
const axePath = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

let browser: Browser;
let app: ServedApp;

beforeAll(async () => {
  app = await serveBuiltApp(5410);
  browser = await chromium.launch({ executablePath: await chromiumPath(), args: chromiumArguments });
}, 180_000);

afterAll(async () => {
  await browser?.close();
  app?.close();
});

/** Opens a place of the workbench; whatever the browser complains of is collected. */
async function visit(hash: string, options: BrowserContextOptions = {}): Promise<{ page: Page; complaints: string[] }> {
  const page = await (await browser.newContext({ bypassCSP: false, ...options })).newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.goto(app.address + hash);
  return { page, complaints };
}

const opened = '#/cabin?open=demo-data/first-steps.cabin.json';
const wall = (page: Page): Promise<void> => page.locator('adjoin-strip').first().waitFor({ timeout: 60_000 });

test('the built workbench opens a cabin, walks to a joint and back, and the browser complains of nothing', async () => {
  const { page, complaints } = await visit(opened);
  await wall(page);
  await page.locator('adjoin-strip a').first().click();
  await page.locator('adjoin-joint-stage').waitFor();
  await page.getByRole('radio', { name: '×10' }).click();
  await page.goBack();
  await wall(page);
  expect(await page.evaluate(() => document.fonts.check('14px "Source Sans 3"'))).toBe(true);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test('nothing is asked of any other host', async () => {
  const { page } = await visit('#/');
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await page.goto(app.address + opened);
  await page.reload();
  await wall(page);
  expect(asked.length).toBeGreaterThan(3);
  expect(asked.filter((url) => !url.startsWith(app.address) && !url.startsWith('data:') && !url.startsWith('blob:'))).toEqual([]);
  await page.context().close();
});

const places = [['the start', '#/'], ['the cabin', opened], ['a joint', undefined]] as const;

async function arrive(page: Page, hash: string | undefined): Promise<void> {
  if (hash === '#/') await page.locator('adjoin-start').waitFor();
  else await wall(page);
  if (hash !== undefined) return;
  await page.locator('adjoin-strip a').first().click();
  await page.locator('adjoin-joint-stage').waitFor();
}

test.each(places)('%s fits screens of 320, 390 and 1440 px without sideways scrolling', async (_name, hash) => {
  for (const width of [320, 390, 1440]) {
    const { page } = await visit(hash ?? opened, { viewport: { width, height: 844 } });
    await arrive(page, hash);
    const overflow = await page.evaluate(() => Math.max(document.documentElement.scrollWidth, document.querySelector('adjoin-workbench')?.shadowRoot?.querySelector('main')?.scrollWidth ?? 0) - innerWidth);
    expect(overflow).toBeLessThanOrEqual(0);
    await page.context().close();
  }
});

test.each(places)('%s has no fault of access with forced colours, nor with reduced motion', async (_name, hash) => {
  const { page } = await visit(hash ?? opened, { forcedColors: 'active', reducedMotion: 'reduce', bypassCSP: true });
  await arrive(page, hash);
  await page.addScriptTag({ path: axePath });
  const faults = await page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run: (context: Document, options: object) => Promise<{ violations: { id: string; nodes: { target: unknown }[] }[] }> } };
    const { violations } = await axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] });
    return violations.map((violation) => `${violation.id} ${JSON.stringify(violation.nodes.map((node) => node.target))}`);
  });
  expect(faults).toEqual([]);
  await page.context().close();
});

test('samples keep their colours where the system forces its own', async () => {
  const colours: string[][] = [];
  for (const forcedColors of ['none', 'active'] as const) {
    const { page } = await visit(opened, { forcedColors });
    await wall(page);
    colours.push(await page.locator('adjoin-cabin-map .face .sample').evaluateAll((faces) => faces.map((face) => getComputedStyle(face).fill)));
    await page.context().close();
  }
  expect(colours[0]?.length).toBeGreaterThan(3);
  expect(colours[0]).toEqual(colours[1]);
});

test('every target is at least 24 px in both directions', async () => {
  for (const [, hash] of places) {
    const { page } = await visit(hash ?? opened, { viewport: { width: 390, height: 844 } });
    await arrive(page, hash);
    const small = await page.locator('button:visible, select:visible, input:visible, a.button:visible, a.way:visible, a.mark:visible').evaluateAll((targets) =>
      targets.map((target) => ({ name: target.textContent?.trim() || target.outerHTML.slice(0, 60), box: target.getBoundingClientRect() }))
        .filter(({ box }) => box.width < 24 || box.height < 24).map(({ name, box }) => `${name} ${box.width} x ${box.height}`));
    expect(small).toEqual([]);
    await page.context().close();
  }
});
