import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import type { Page } from 'playwright-core';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { serveBuiltApp } from '../support/built-app.ts';
import { chromiumArguments, chromiumPath } from '../support/chromium.ts';
import { bigCabin } from './big-cabin.ts';
import { tasksDuring, taskWords } from './main-thread.ts';
import { manyReadings } from './many-readings.ts';
import { walkSteps } from './workbench-steps.ts';

/**
 * How long the built workbench takes in Chromium: from opening the demo to its map; from opening a cabin of 2,000 parts and 6,000 joints to its
 * map, its first strips and its last verdict; from an edit of one value there to the frame that shows it judged, part by part; from saving it and
 * taking it up again after a crash; all that one does with map, wall, matrix and views there; and taking over 200,000 readings. Beside each
 * the tasks of the page's main thread over 50 ms, also without what they stood waiting for the browser's painting. Prints; holds nothing: node --import tsx test/bench/workbench.ts [parts joints]
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
/** Goes to a cabin from the start page; resolves to the ms until each of the things came to be. */
async function openFrom(page: Page, file: string): Promise<{ readonly map: number; readonly strip: number; readonly judged: number }> {
  await page.goto(`${app.address}#/`);
  await page.locator('adjoin-start').waitFor();
  await page.waitForTimeout(500);
  return page.evaluate((name) => new Promise((resolve, reject) => {
    const start = performance.now();
    location.hash = `#/cabin?open=demo-data/${name}`;
    let [map, strip] = [0, 0];
    const look = (): void => {
      const workbench = document.querySelector('adjoin-workbench') as unknown as { shadowRoot: ShadowRoot; desk: { refusal?: { issues: object[] }; open?: { judging: boolean } } };
      const { refusal, open } = workbench.desk;
      if (refusal !== undefined) {
        reject(new Error(`refused: ${JSON.stringify(refusal.issues[0])}`));
        return;
      }
      const view = workbench.shadowRoot.querySelector('adjoin-cabin-view')?.shadowRoot;
      const passed = performance.now() - start;
      if (map === 0 && view?.querySelector('adjoin-cabin-map')?.shadowRoot?.querySelector('.face') != null) map = passed;
      if (strip === 0 && view?.querySelector('adjoin-wall')?.shadowRoot?.querySelector('adjoin-strip') != null) strip = passed;
      if (map > 0 && strip > 0 && open?.judging === false) resolve({ map, strip, judged: passed });
      else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  }), file);
}

const openings: number[] = [];
for (let round = 0; round < 7; round += 1) {
  const page = await context.newPage();
  openings.push((await openFrom(page, 'shuttle-slate.cabin.json')).map);
  await page.close();
}
console.log(`demo opened to map shown: ${spread(openings)}`);

const page = await context.newPage();
await page.goto(`${app.address}#/`);
await page.waitForTimeout(1000);
let opened = { map: 0, strip: 0, judged: 0 };
const openingTasks = await tasksDuring(browser, async () => {
  opened = await openFrom(page, 'big.cabin.json');
  await page.waitForTimeout(3000);
});
console.log(`${parts} parts and ${joints} joints opened: map after ${opened.map.toFixed(0)} ms, first strips after ${opened.strip.toFixed(0)} ms, all judged after ${opened.judged.toFixed(0)} ms; ${taskWords(openingTasks)}`);

interface Specimen { readonly id: string; readonly readings: readonly { readonly values?: readonly number[] }[] }
interface Workbench {
  readonly updateComplete: Promise<unknown>;
  desk: {
    present: { parts: { sources: { specimens: Specimen[] }[] }[] };
    do(action: string, values: object): { done: boolean };
    session: { edit(patch: object): Promise<object> };
    takeChange(reply: object, cabin: object): void;
  };
}
for (const kind of ['gap of a joint', 'reading of a part'] as const) {
  let times: Awaited<ReturnType<typeof edits>> = [];
  const tasks = await tasksDuring(browser, async () => { times = await edits(page, kind); });
  const warm = times.slice(2);
  const of = (name: keyof (typeof warm)[number]): string => spread(warm.map((each) => each[name]));
  console.log(`${kind}, edit to frame: ${of('all')}; ${taskWords(tasks)}`);
  console.log(`  edit and check: ${of('edit')}\n  asked of the worker after: ${of('asked')}\n  judged and back: ${of('answered')}\n  taken: ${of('taken')}\n  rendered: ${of('rendered')}\n  frame: ${of('frame')}`);
}

/** Edits one value after the other; of each what it waited for, ms. */
function edits(on: Page, kind: 'gap of a joint' | 'reading of a part') {
  return on.evaluate(async ([wanted, count, of]) => {
    const workbench = document.querySelector('adjoin-workbench') as unknown as Workbench;
    const { desk } = workbench;
    const out: Record<'edit' | 'asked' | 'answered' | 'taken' | 'rendered' | 'frame' | 'all', number>[] = [];
    const [ask, take] = [desk.session.edit.bind(desk.session), desk.takeChange.bind(desk)];
    for (let round = 1; round <= count; round += 1) {
      const place = (round * 97) % desk.present.parts.length;
      const specimen = desk.present.parts[place]?.sources[0]?.specimens[0];
      const reading = specimen?.readings[0];
      let [asked, answered, taken] = [0, 0, 0];
      desk.session.edit = (patch) => {
        asked = performance.now();
        return ask(patch);
      };
      const judged = new Promise<void>((resolve) => {
        desk.takeChange = (reply, cabin) => {
          answered = performance.now();
          take(reply, cabin);
          taken = performance.now();
          resolve();
        };
      });
      const start = performance.now();
      const result = wanted === 'gap of a joint'
        ? desk.do('joint.set', { joint: `joint-${(round * 131) % of}`, gapMm: 0.5 + 0.037 * round })
        : desk.do('readings.replace', { specimen: specimen?.id, place: 0, reading: { ...reading, values: reading?.values?.map((value) => value * 1.01) } });
      if (!result.done) throw new Error('not done');
      const edited = performance.now();
      await judged;
      await workbench.updateComplete;
      const rendered = performance.now();
      // After the frame is drawn, as far as a page can tell.
      await new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
      const end = performance.now();
      out.push({ edit: edited - start, asked: asked - start, answered: answered - asked, taken: taken - answered, rendered: rendered - taken, frame: end - rendered, all: end - start });
      await new Promise((resolve) => setTimeout(resolve, 400));
    }
    return out;
  }, [kind, rounds, joints] as const);
}

/** A trial at one joint, from the wish to its judgement on the page: what a slider of the joint view waits for. */
async function trials(on: Page): Promise<string> {
  return spread(await on.evaluate(async (count) => {
    const { desk } = document.querySelector('adjoin-workbench') as unknown as { desk: { present: { joints: { gapMm?: number }[] }; tryOut(cabin: object): Promise<unknown> } };
    const times: number[] = [];
    for (let round = 0; round < count; round += 1) {
      const { present } = desk;
      const place = (round * 37) % present.joints.length;
      const start = performance.now();
      await desk.tryOut({ ...present, joints: present.joints.with(place, { ...present.joints[place], gapMm: 0.4 + 0.05 * round }) });
      if (round > 1) times.push(performance.now() - start);
    }
    return times;
  }, rounds));
}
console.log(`trial at a joint, judged and back: ${await trials(page)}`);
await walkSteps(browser, page);

/** Ms until a desk in the page says so. */
const until = (on: Page, what: 'kept' | 'judged'): Promise<unknown> => on.waitForFunction((wanted) => {
  const { desk } = document.querySelector('adjoin-workbench') as unknown as { desk: { keeping?: number; open?: { judging: boolean } } };
  return wanted === 'kept' ? desk.keeping === undefined : desk.open?.judging === false;
}, what, { timeout: 120_000 });
const timed = async (work: () => Promise<unknown>): Promise<string> => {
  let took = 0;
  const tasks = await tasksDuring(browser, async () => {
    const start = performance.now();
    await work();
    took = performance.now() - start;
    await page.waitForTimeout(500);
  });
  return `${took.toFixed(0)} ms; ${taskWords(tasks)}`;
};

console.log(`saved as a download: ${await timed(async () => {
  await page.evaluate(() => {
    Object.assign(window, { showSaveFilePicker: undefined });
    (document.querySelector('adjoin-workbench') as unknown as { desk: { save(): Promise<void> } }).desk.save().catch(() => undefined);
  });
  await page.waitForEvent('download');
})}`);
await page.evaluate(() => { (document.querySelector('adjoin-workbench') as unknown as { desk: { do(action: string, values: object): unknown } }).desk.do('cabin.rename', { name: 'Renamed' }); });
await page.waitForTimeout(1500);
await page.evaluate(() => sessionStorage.clear());
await page.goto('about:blank');
await page.goto(`${app.address}#/`);
await page.getByRole('button', { name: 'Take up again' }).first().waitFor();
console.log(`taken up again after a crash, to its last verdict: ${await timed(async () => {
  await page.getByRole('button', { name: 'Take up again' }).first().click();
  await until(page, 'judged');
})}`);

interface Importing { views: { get(view: string): object | undefined } }
interface ImportDesk { items: { key: string; state: string; planned?: { taken: boolean } }[]; bridge: object; choose(key: string, choices: object): void; take(): Promise<boolean> }
await page.goto('about:blank');
await page.goto(`${app.address}#/cabin?open=demo-data/shuttle-slate.cabin.json`);
await until(page, 'judged');
const single = await page.evaluate(() => (document.querySelector('adjoin-workbench') as unknown as { desk: { present: { parts: { id: string; sources: object[] }[] } } })
  .desk.present.parts.filter(({ sources }) => sources.length === 1).slice(0, 40).map(({ id }) => id));
writeFileSync(join(app.folder, 'demo-data', 'many.csv'), manyReadings(single, 200_000, 3));
await page.evaluate(() => { location.hash = '#/import'; });
await page.locator('adjoin-import-view').waitFor();
await page.waitForTimeout(1000);
const planned = (taken: boolean): Promise<unknown> => page.waitForFunction((wanted) => {
  const view = (document.querySelector('adjoin-workbench') as unknown as Importing).views.get('import') ?? {};
  const desk = Object.values(view).find((each): each is ImportDesk => typeof each === 'object' && each !== null && 'items' in each && 'bridge' in each);
  Object.assign(window, { importing: desk });
  return desk?.items[0]?.state === 'found' && desk.items[0].planned?.taken === wanted;
}, taken, { timeout: 120_000 });
console.log(`200,000 readings read and planned: ${await timed(async () => {
  await page.evaluate(async () => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([await (await fetch('demo-data/many.csv')).blob()], 'many.csv'));
    dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
  });
  await planned(false);
})}`);
await page.evaluate(() => {
  const { importing } = window as unknown as { importing: ImportDesk };
  const { desk } = document.querySelector('adjoin-workbench') as unknown as { desk: { present: { instruments: { id: string; kind: string }[] } } };
  importing.choose(importing.items[0]?.key ?? '', { newSpecimens: 'plaque', instruments: { 'gloss-1': desk.present.instruments.find(({ kind }) => kind === 'glossmeter')?.id } });
});
await planned(true);
await page.waitForTimeout(1000);
console.log(`  taken over: ${await timed(() => page.evaluate(() => (window as unknown as { importing: ImportDesk }).importing.take()))}`);
console.log(`  then kept against a crash: ${await timed(async () => {
  await page.waitForTimeout(1000);
  await until(page, 'kept');
})}`);
const small = await context.newPage();
await openFrom(small, 'shuttle-slate.cabin.json');
console.log(`  of the demo: ${await trials(small)}`);
await browser.close();
app.close();
