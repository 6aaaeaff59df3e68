import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serveBuiltApp } from '../support/built-app.ts';
import type { ServedApp } from '../support/built-app.ts';
import { chromiumArguments, chromiumPath } from '../support/chromium.ts';

/** The built workbench below a path of its server, and what its copy in the browser does when the server goes or has another version. */
let browser: Browser;
let app: ServedApp;

beforeAll(async () => {
  app = await serveBuiltApp(5450, 'some/where/');
  browser = await chromium.launch({ executablePath: await chromiumPath(), args: chromiumArguments });
}, 180_000);

afterAll(async () => {
  await browser?.close();
  app?.close();
});

const opened = '#/cabin?open=demo-data/first-steps.cabin.json';
const wall = (page: Page): Promise<void> => page.locator('adjoin-strip').first().waitFor({ timeout: 60_000 });
const controlled = (page: Page): Promise<unknown> => page.waitForFunction(() => navigator.serviceWorker.controller !== null);
const marks = (page: Page): Promise<string | null> => page.locator('meta[name=description]').getAttribute('content');
const caches = (page: Page): Promise<string[]> => page.evaluate(async () => (await window.caches.keys()).filter((name) => !name.endsWith('beside')));

async function visit(): Promise<{ page: Page; complaints: string[] }> {
  const page = await (await browser.newContext()).newPage();
  const complaints: string[] = [];
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text());
  });
  await page.goto(app.address + opened);
  await wall(page);
  return { page, complaints };
}

/** Puts another page in place of the served one; the list of the service worker follows, or not as in an upload that broke off. */
function publish(description: string, listed: boolean): void {
  const [page, worker] = [join(app.folder, 'index.html'), join(app.folder, 'service-worker.js')];
  const digest = (): string => createHash('sha256').update(readFileSync(page)).digest('base64');
  const before = digest();
  writeFileSync(page, readFileSync(page, 'utf8').replace(/(name="description" content=")[^"]*/, (_, start: string) => start + description));
  const after = listed ? digest() : createHash('sha256').update(description).digest('base64');
  const code = readFileSync(worker, 'utf8');
  expect(code).toContain(before);
  writeFileSync(worker, code.replace(before, after));
}

test('once it was opened it opens without its server: the page, the demo, a joint, and what is loaded later', async () => {
  const { page } = await visit();
  await controlled(page);
  // The demo that was opened before the copy stood is asked for once more with it.
  await page.reload();
  await wall(page);
  await page.context().setOffline(true);
  const reached = await page.evaluate(async () => (await fetch('./no-such-file').catch(() => undefined)) !== undefined);
  expect(reached).toBe(false);
  await page.reload();
  await wall(page);
  expect(await page.locator('adjoin-strip').count()).toBeGreaterThan(3);
  await page.locator('adjoin-strip a').first().click();
  await page.locator('adjoin-joint-stage').waitFor();
  await page.keyboard.press('F1');
  await page.locator('adjoin-help dialog[open]').waitFor();
  await page.context().close();
});

test('a newer version waits until it is asked for, is then taken whole, and what was open is open again', async () => {
  const { page, complaints } = await visit();
  await controlled(page);
  const before = await marks(page);
  publish('The second version.', true);
  await page.reload();
  await wall(page);
  expect(await marks(page)).toBe(before);
  const notice = page.getByText('A newer version of Adjoin is ready');
  await notice.waitFor({ timeout: 20_000 });
  expect(await caches(page)).toHaveLength(2);
  await page.getByRole('button', { name: 'Load anew' }).click();
  await expect.poll(() => marks(page), { timeout: 20_000 }).toBe('The second version.');
  await wall(page);
  await expect.poll(() => caches(page)).toHaveLength(1);
  expect(await notice.count()).toBe(0);
  expect(complaints).toEqual([]);
  await page.context().close();
});

test('a version whose files do not fit its list is not taken, and the one before goes on', async () => {
  const { page } = await visit();
  await controlled(page);
  const before = await marks(page);
  publish('Half a version.', false);
  await page.reload();
  await wall(page);
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready;
    await registration.update().catch(() => undefined);
    const { installing } = registration;
    if (installing) await new Promise((resolve) => installing.addEventListener('statechange', resolve));
  });
  expect(await marks(page)).toBe(before);
  expect(await page.getByText('A newer version of Adjoin is ready').count()).toBe(0);
  await page.context().setOffline(true);
  await page.reload();
  await wall(page);
  expect(await marks(page)).toBe(before);
  await page.context().close();
});
