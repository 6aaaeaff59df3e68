import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { serveBuiltApp } from './built-app.ts';
import { chromiumArguments, chromiumPath } from './chromium.ts';

/**
 * Pictures of every state of the workbench, for eyes, into out/screenshots: node --import tsx test/support/screenshots.ts [name ...]
 * Given names, only the states whose name begins with one of them.
 */
const folder = join(import.meta.dirname, '..', '..', 'out', 'screenshots');
const demo = 'open=demo-data/shuttle-slate.cabin.json';

interface State {
  readonly name: string;
  readonly hash: string;
  /** What the user does before the picture. */
  readonly act?: (page: Page) => Promise<void>;
  readonly forcedColours?: boolean;
  /** Show all of a long page. */
  readonly tall?: boolean;
}

const strips = 'adjoin-strip';
const openStrip = (verdict: string) => async (page: Page): Promise<void> => {
  await page.locator(strips).filter({ has: page.locator(`.word.${verdict}`) }).first().locator('a').click();
  await page.locator('adjoin-joint-stage').waitFor();
};

export const states: readonly State[] = [
  { name: 'start', hash: '#/' },
  { name: 'cabin', hash: `#/cabin?${demo}` },
  { name: 'cabin-horizon-light', hash: `#/cabin?light=P2300&${demo}` },
  { name: 'cabin-chalk', hash: '#/cabin?open=demo-data/shuttle-chalk.cabin.json' },
  { name: 'cabin-small', hash: '#/cabin?open=demo-data/first-steps.cabin.json' },
  { name: 'cabin-filtered', hash: `#/cabin?verdict=clashes&${demo}` },
  { name: 'cabin-nothing-passes', hash: `#/cabin?q=nothing+of+the+kind&${demo}` },
  { name: 'cabin-pointed', hash: `#/cabin?${demo}`, act: (page) => page.locator(strips).nth(1).hover() },
  { name: 'cabin-focused', hash: `#/cabin?${demo}`, act: async (page) => {
    await page.locator('input[type=search]').focus();
    for (let i = 0; i < 4; i += 1) await page.keyboard.press('Tab');
  } },
  { name: 'lights', hash: `#/cabin?${demo}`, act: (page) => page.locator('adjoin-light-picker .now').click() },
  { name: 'joint-clash', hash: `#/cabin?${demo}`, act: openStrip('clashes') },
  { name: 'joint-clash-tall', hash: `#/cabin?${demo}`, act: openStrip('clashes'), tall: true },
  { name: 'joint-open', hash: `#/cabin?${demo}`, act: openStrip('open'), tall: true },
  { name: 'joint-holds', hash: `#/cabin?verdict=holds&${demo}`, act: openStrip('holds') },
  { name: 'joint-exaggerated', hash: `#/cabin?${demo}`, act: async (page) => {
    await openStrip('clashes')(page);
    await page.getByRole('radio', { name: '×10' }).click();
  } },
  { name: 'joint-missing', hash: `#/joint/no-such?${demo}` },
  { name: 'faults', hash: `#/cabin?${demo}`, act: async (page) => {
    await page.evaluate(() => {
      const transfer = new DataTransfer();
      transfer.items.add(new File(['{"format":"adjoin-cabin","version":1,"id":"","name":7,"parts":[{"id":"a"},{"id":"a"}],"joints":[{"id":"j","parts":["a","z"],"kind":"weld"}]}'], 'faulty.cabin.json'));
      window.dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
    });
    await page.locator('adjoin-faults dialog[open]').waitFor();
  } },
  { name: 'forced-cabin', hash: `#/cabin?${demo}`, forcedColours: true },
  { name: 'forced-joint', hash: `#/cabin?${demo}`, act: openStrip('clashes'), forcedColours: true },
];

const sizes = [{ width: 1440, height: 900 }, { width: 390, height: 844 }] as const;

async function main(wanted: readonly string[]): Promise<void> {
  mkdirSync(folder, { recursive: true });
  const app = await serveBuiltApp(5510);
  const browser = await chromium.launch({ executablePath: await chromiumPath(), args: chromiumArguments });
  try {
    for (const state of states.filter(({ name }) => wanted.length === 0 || wanted.some((start) => name.startsWith(start)))) {
      for (const size of sizes) {
        for (const scheme of ['light', 'dark'] as const) {
          const viewport = state.tall && size.width > 800 ? { ...size, height: 2800 } : size;
          const page = await browser.newPage({ viewport, colorScheme: scheme, forcedColors: state.forcedColours ? 'active' : 'none' });
          page.on('console', (message) => {
            if (message.type() === 'error') process.stderr.write(`${state.name}: ${message.text()}\n`);
          });
          page.on('pageerror', (error) => process.stderr.write(`${state.name}: ${error.message}\n`));
          await page.goto(`${app.address}${state.hash}`);
                if (state.hash.includes('open=')) await page.locator('adjoin-wall-filters, adjoin-joint-view, .missing h1').first().waitFor({ timeout: 60_000 });
          await state.act?.(page);
          await page.waitForTimeout(400);
          await page.screenshot({ path: join(folder, `${state.name}-${size.width}-${scheme}.png`), fullPage: state.tall === true && size.width < 800 });
          await page.close();
        }
      }
    }
  } finally {
    await browser.close();
    app.close();
  }
}

await main(process.argv.slice(2));
