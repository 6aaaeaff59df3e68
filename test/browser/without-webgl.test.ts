import { chromium } from 'playwright-core';
import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serveBuiltApp } from '../support/built-app.ts';
import type { ServedApp } from '../support/built-app.ts';
import { chromiumArguments, chromiumPath } from '../support/chromium.ts';

/** The built workbench in a Chromium that has no WebGL at all, neither on a graphics card nor in software. */
let browser: Browser;
let app: ServedApp;

beforeAll(async () => {
  app = await serveBuiltApp(5470);
  browser = await chromium.launch({ executablePath: await chromiumPath(), args: [...chromiumArguments, '--disable-gpu', '--disable-software-rasterizer'] });
}, 180_000);

afterAll(async () => {
  await browser?.close();
  app?.close();
});

interface Seen {
  readonly painted: string;
  readonly pixels: number;
}

async function visit(hash: string, options: BrowserContextOptions = {}): Promise<{ page: Page; complaints: string[] }> {
  const page = await (await browser.newContext(options)).newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  await page.addInitScript(() => {
    const seen: { painted: string; pixels: number }[] = [];
    Object.assign(window, { seen });
    addEventListener('adjoin-painted', (event) => {
      const strip = event.composedPath()[0] as HTMLElement;
      const canvas = strip.shadowRoot?.querySelector('canvas');
      seen.push({ painted: (event as CustomEvent<{ painted: string }>).detail.painted, pixels: (canvas?.width ?? 0) * (canvas?.height ?? 0) });
    });
  });
  await page.goto(app.address + hash);
  return { page, complaints };
}

const opened = '#/cabin?open=demo-data/first-steps.cabin.json';
const seen = (page: Page): Promise<readonly Seen[]> => page.evaluate(() => (window as unknown as { seen: Seen[] }).seen);

async function toJoint(page: Page): Promise<void> {
  await page.locator('adjoin-strip a').first().click({ timeout: 60_000 });
  await page.locator('adjoin-joint-stage').waitFor();
  await page.waitForFunction(() => (window as unknown as { seen: Seen[] }).seen.some(({ pixels }) => pixels > 100_000), undefined, { timeout: 60_000 });
}

test('there is no WebGL here', async () => {
  const { page } = await visit('#/');
  expect(await page.evaluate(() => new OffscreenCanvas(4, 4).getContext('webgl2') === null)).toBe(true);
  await page.context().close();
});

test('wall and large strip are painted on the processor, and the browser complains of nothing', async () => {
  const { page, complaints } = await visit(opened);
  await page.waitForFunction(() => (window as unknown as { seen: Seen[] }).seen.length >= 3, undefined, { timeout: 60_000 });
  await toJoint(page);
  const pictures = await seen(page);
  expect(pictures.length).toBeGreaterThan(3);
  expect([...new Set(pictures.map(({ painted }) => painted))]).toEqual(['canvas']);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test('the still picture is printed, its controls are not', async () => {
  const { page } = await visit(opened);
  await toJoint(page);
  await page.emulateMedia({ media: 'print' });
  expect(await page.locator('adjoin-lamp').isVisible()).toBe(false);
  expect(await page.locator('adjoin-joint-stage adjoin-surface-strip canvas').isVisible()).toBe(true);
  const printed = (await page.pdf({ printBackground: false })).toString('latin1');
  const canvas = await page.locator('adjoin-joint-stage adjoin-surface-strip canvas').evaluate((one: HTMLCanvasElement) => [one.width, one.height]);
  const images = [...printed.matchAll(/\/Subtype \/Image\s+\/Width (\d+)\s+\/Height (\d+)/g)].map((match) => [Number(match[1]), Number(match[2])]);
  expect(images).toContainEqual(canvas);
  await page.context().close();
});

test('grain and gloss stay where the system forces its own colours', async () => {
  const { page } = await visit(opened, { forcedColors: 'active', reducedMotion: 'reduce' });
  await toJoint(page);
  const shot = await page.locator('adjoin-joint-stage .figure').screenshot();
  const plain = await page.locator('adjoin-joint-stage adjoin-surface-strip canvas').evaluate((canvas: HTMLCanvasElement) => {
    const { data } = canvas.getContext('2d')!.getImageData(0, 0, canvas.width, 60);
    return { steps: new Set(data.filter((_, at) => at % 4 === 1)).size, shown: getComputedStyle(canvas).visibility };
  });
  expect(plain.shown).toBe('visible');
  expect(plain.steps).toBeGreaterThan(2);
  expect(shot.length).toBeGreaterThan(2000);
  await page.context().close();
});
