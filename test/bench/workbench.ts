import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { serveBuiltApp } from '../support/built-app.ts';
import { chromiumArguments, chromiumPath } from '../support/chromium.ts';
import { bigCabin } from './big-cabin.ts';

/**
 * How long the built workbench takes in Chromium: from opening the demo to its map, and from an edit of one value on a cabin of 2,000 parts
 * and 6,000 joints to the frame that shows it judged. Prints; holds nothing: node --import tsx test/bench/workbench.ts [parts joints]
 */
const rounds = 25;
const [parts = 2000, joints = 6000] = process.argv.slice(2).map(Number);

const spread = (times: readonly number[]): string => {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): string => (sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(1);
  return `median ${at(0.5)} ms, quartiles ${at(0.25)} to ${at(0.75)} ms, longest ${at(1)} ms`;
};

const app = await serveBuiltApp(5530);
writeFileSync(join(app.folder, 'demo-data', 'big.cabin.json'), serialiseCabin(bigCabin({ parts, joints, seed: 7 })));
const browser = await chromium.launch({ executablePath: await chromiumPath(), args: chromiumArguments });

const context = await browser.newContext({ viewport: { width: 1440, height: 900 } });
// The loader of this script marks functions by a helper that a page does not have.
await context.addInitScript('globalThis.__name = (f) => f');

const openings: number[] = [];
for (let round = 0; round < 7; round += 1) {
  const page = await context.newPage();
  await page.goto(`${app.address}#/`);
  await page.locator('adjoin-start').waitFor();
  await page.waitForTimeout(300);
  openings.push(await page.evaluate(() => new Promise<number>((resolve) => {
    const start = performance.now();
    location.hash = '#/cabin?open=demo-data/shuttle-slate.cabin.json';
    const look = (): void => {
      const map = document.querySelector('adjoin-workbench')?.shadowRoot?.querySelector('adjoin-cabin-view')?.shadowRoot?.querySelector('adjoin-cabin-map');
      if (map?.shadowRoot?.querySelector('.face') == null) requestAnimationFrame(look);
      else resolve(performance.now() - start);
    };
    requestAnimationFrame(look);
  })));
  await page.close();
}
console.log(`demo opened to map shown: ${spread(openings)}`);

const page = await context.newPage();
const begun = Date.now();
await page.goto(`${app.address}#/cabin?open=demo-data/big.cabin.json`);
await page.locator('adjoin-strip').first().waitFor({ timeout: 300_000 });
console.log(`${parts} parts and ${joints} joints opened and judged in ${Date.now() - begun} ms`);
await page.waitForTimeout(3000);

interface Workbench {
  readonly updateComplete: Promise<unknown>;
  desk: {
    present: { parts: { sources: { specimens: { id: string; readings: { quantity: string; values: number[] }[] }[] }[] }[] };
    open: { cabin: object };
    do(action: string, values: object): { done: boolean };
  };
}
for (const kind of ['gap of a joint', 'reading of a part'] as const) {
  const times = await page.evaluate(async ([wanted, count, of]) => {
    const workbench = document.querySelector('adjoin-workbench') as unknown as Workbench;
    const out: { total: number; edit: number; judged: number; drawn: number }[] = [];
    for (let round = 1; round <= count; round += 1) {
      const { desk } = workbench;
      const place = (round * 97) % desk.present.parts.length;
      const start = performance.now();
      const result = wanted === 'gap of a joint'
        ? desk.do('joint.set', { joint: `joint-${(round * 131) % of}`, gapMm: 0.5 + 0.037 * round })
        : ((specimen) => desk.do('reading.replace', { specimen: specimen?.id, place: 0, reading: { ...specimen?.readings[0], values: specimen?.readings[0]?.values.map((value) => value * 1.01) } }))(desk.present.parts[place]?.sources[0]?.specimens[0]);
      if (!result.done) throw new Error('not done');
      const edited = performance.now();
      while (desk.open.cabin !== desk.present) await new Promise((resolve) => { const { port1, port2 } = new MessageChannel(); port1.addEventListener('message', resolve, { once: true }); port1.start(); port2.postMessage(0); });
      const judged = performance.now();
      await workbench.updateComplete;
      await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
      const end = performance.now();
      out.push({ total: end - start, edit: edited - start, judged: judged - edited, drawn: end - judged });
      await new Promise((resolve) => setTimeout(resolve, 400));
    }
    return out;
  }, [kind, rounds, joints] as const);
  const warm = times.slice(2);
  console.log(`${kind}, edit to frame: ${spread(warm.map(({ total }) => total))}`);
  console.log(`  edit and check: ${spread(warm.map(({ edit }) => edit))}\n  until judged: ${spread(warm.map(({ judged }) => judged))}\n  drawn: ${spread(warm.map(({ drawn }) => drawn))}`);
}
await browser.close();
app.close();
