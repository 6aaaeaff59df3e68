import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir, userInfo } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import type { Outcome } from '../../issue.ts';
import { usageIssue } from '../verb.ts';
import { BrowserPipe } from './browser-pipe.ts';
import { findChromium } from './find-chromium.ts';

/** Longest time that printing may take, ms. */
const patience = 300_000;

const flags = [
  '--headless', '--disable-gpu', '--no-first-run', '--no-default-browser-check', '--disable-extensions', '--disable-sync', '--disable-component-update', '--disable-background-networking',
  // The page needs no network; a page that asks for it all the same gets none.
  '--host-resolver-rules=MAP * ~NOTFOUND',
];

/** Prints a self-contained page to PDF, tagged and with an outline, through a local Chromium. The size of the paper is that of the page's style. */
export async function printPdf(page: string, chromium: string | undefined): Promise<Outcome<Uint8Array>> {
  const program = findChromium(chromium);
  if (program === undefined) {
    return { value: undefined, issues: [chromium === undefined || chromium === ''
      ? usageIssue('no-chromium', '--out', 'no Chromium on this machine', 'a Chromium to print with', 'Install one, or set CHROMIUM to its path; or write .html and print that from a browser.')
      : usageIssue('no-chromium', 'CHROMIUM', chromium, 'the path of a Chromium')] };
  }
  const folder = mkdtempSync(join(tmpdir(), 'adjoin-pdf-'));
  const source = join(folder, 'report.html');
  // A sandbox cannot be set up by the superuser.
  const asRoot = userInfo().uid === 0 ? ['--no-sandbox'] : [];
  let browser: BrowserPipe | undefined;
  let timer: NodeJS.Timeout | undefined;
  try {
    writeFileSync(source, page);
    browser = new BrowserPipe(program, [...flags, ...asRoot, `--user-data-dir=${join(folder, 'profile')}`]);
    const late = new Promise<never>((_, reject) => { timer = setTimeout(() => { reject(new Error(`nothing was printed in ${patience / 1000} s`)); }, patience); });
    return { value: await Promise.race([printed(browser, pathToFileURL(source).href), late]), issues: [] };
  } catch (error) {
    return { value: undefined, issues: [usageIssue('cannot-print', '--out', error instanceof Error ? error.message : String(error), `a PDF from ${program}`, 'Write .html and print that from a browser.')] };
  } finally {
    clearTimeout(timer);
    await browser?.close();
    rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 100 });
  }
}

async function printed(browser: BrowserPipe, address: string): Promise<Uint8Array> {
  const { targetId } = await browser.ask('Target.createTarget', { url: 'about:blank' });
  const session = String((await browser.ask('Target.attachToTarget', { targetId, flatten: true }))['sessionId']);
  await browser.ask('Page.enable', {}, session);
  const loaded = browser.next('Page.loadEventFired', session);
  await browser.ask('Page.navigate', { url: address }, session);
  await loaded;
  await browser.ask('Runtime.evaluate', { expression: 'document.fonts.ready.then(() => true)', awaitPromise: true }, session);
  const { data } = await browser.ask('Page.printToPDF', {
    printBackground: true, preferCSSPageSize: true, displayHeaderFooter: false, generateTaggedPDF: true, generateDocumentOutline: true,
  }, session);
  return Buffer.from(String(data), 'base64');
}
