import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import type { Browser, BrowserContextOptions, Locator, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll } from 'vitest';
import { serveBuiltApp } from './built-app.ts';
import type { ServedApp } from './built-app.ts';
import { chromiumArguments, chromiumPath } from './chromium.ts';

/** What falls on a page: name and text of each file. */
export interface DroppedFile {
  readonly name: string;
  readonly text: string;
}

export interface BuiltPages {
  /** A page of a profile of its own at a place of the built workbench; it is closed after the test. */
  readonly visit: (hash: string, options?: BrowserContextOptions) => Promise<Page>;
  /** An exported page as a file, without script and without a network, and the addresses that it asks for. */
  readonly read: (text: string, options?: BrowserContextOptions) => Promise<{ readonly page: Page; readonly asked: readonly string[] }>;
  readonly address: () => string;
  /** What the pages of this test complained of: errors of scripts and of the console. */
  readonly complaints: string[];
}

/** The workbench as it is built and served, in a Chromium of its own, for tests that do what a user does. Call it once in a file; `under` is the path below the root of the server. */
export function builtPages(firstPort: number, under = ''): BuiltPages {
  let browser: Browser;
  let app: ServedApp;
  const complaints: string[] = [];
  const files = mkdtempSync(join(tmpdir(), 'adjoin-read-'));
  beforeAll(async () => {
    app = await serveBuiltApp(firstPort, under);
    browser = await chromium.launch({ executablePath: await chromiumPath(), args: chromiumArguments });
  }, 180_000);
  afterEach(async () => {
    await Promise.all(browser.contexts().map((context) => context.close()));
    complaints.length = 0;
  });
  afterAll(async () => {
    await browser?.close();
    app?.close();
    rmSync(files, { recursive: true, force: true });
  });
  return {
    complaints,
    address: () => app.address,
    visit: async (hash, options = {}) => {
      const page = await (await browser.newContext(options)).newPage();
      page.setDefaultTimeout(15_000);
      page.on('pageerror', (error) => complaints.push(error.message));
      page.on('console', (message) => {
        if (message.type() === 'error') complaints.push(message.text());
      });
      await page.goto(app.address + hash);
      return page;
    },
    read: async (text, options = {}) => {
      const file = join(files, 'page.html');
      writeFileSync(file, text);
      const page = await (await browser.newContext({ javaScriptEnabled: false, offline: true, ...options })).newPage();
      page.setDefaultTimeout(15_000);
      const asked: string[] = [];
      page.on('request', (request) => asked.push(request.url()));
      await page.goto(`file://${file}`);
      return { page, asked };
    },
  };
}

export const demo = (name: 'shuttle-slate' | 'shuttle-chalk' | 'first-steps' | 'lots'): string => `open=demo-data/${name}.cabin.json`;

/** Text of a demo cabin. */
export const demoText = (name: string): string => readFileSync(join(import.meta.dirname, '..', '..', 'demo-data', `${name}.cabin.json`), 'utf8');

/** Until the joints of the open cabin are on the wall. */
export const wall = (page: Page): Promise<void> => page.locator('adjoin-strip').first().waitFor({ timeout: 60_000 });

/** Text as it reads, through shadow roots and without the white space of the template. */
export const wordsOf = (of: Locator): Promise<string> => of.evaluate((element) => {
  const read = (node: Node): string => {
    if (node instanceof Text) return node.data;
    if (node instanceof HTMLStyleElement) return '';
    const within = node instanceof Element ? node.shadowRoot ?? node : node;
    return [...within.childNodes].map(read).join('');
  };
  return read(element).replace(/\s+/g, ' ').trim();
});

/** Lets files fall on the page. */
export const drop = (page: Page, ...files: readonly DroppedFile[]): Promise<void> => page.evaluate((dropped) => {
  const transfer = new DataTransfer();
  for (const { name, text } of dropped) transfer.items.add(new File([text], name));
  for (const kind of ['dragenter', 'dragover', 'drop']) dispatchEvent(new DragEvent(kind, { dataTransfer: transfer, bubbles: true, cancelable: true }));
}, files);

/** Text of what the page saves while something is done. */
export async function saved(page: Page, doing: () => Promise<unknown>): Promise<{ readonly name: string; readonly text: string }> {
  const [download] = await Promise.all([page.waitForEvent('download'), doing()]);
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}

/** Address of a place by its path, with the cabin that is open staying open. */
export const goTo = (page: Page, path: string, options: Readonly<Record<string, string>> = {}): Promise<void> => page.evaluate(([to, wanted]) => {
  const open = new URLSearchParams(location.hash.split('?')[1]).get('open');
  const query = new URLSearchParams({ ...wanted, ...(open === null ? {} : { open }) }).toString();
  location.hash = `#/${to}${query === '' ? '' : `?${query}`}`;
}, [path, options] as const);
