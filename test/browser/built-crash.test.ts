import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from 'playwright-core';
import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { bigCabin } from '../bench/big-cabin.ts';
import { manyReadings } from '../bench/many-readings.ts';
import { serveBuiltApp } from '../support/built-app.ts';
import type { ServedApp } from '../support/built-app.ts';
import { chromiumArguments, chromiumPath } from '../support/chromium.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';

/** The built workbench in a profile on disk whose pages are killed, as when a tab crashes, in the midst of edits. */
let app: ServedApp;
let profile: string;
let context: BrowserContext;

const opened = '#/cabin?open=demo-data/first-steps.cabin.json';
const crashes = 50;
/** Some 20,000 readings, 12 MB of text. */
const large = { parts: 2000, joints: 300, seed: 3, spots: 5 } as const;
const largeCrashes = 8;
/** What may be lost: the edits of the last second. */
const lostMs = 1000;

beforeAll(async () => {
  app = await serveBuiltApp(5470);
  profile = mkdtempSync(join(tmpdir(), 'adjoin-profile-'));
  context = await chromium.launchPersistentContext(profile, { executablePath: await chromiumPath(), args: chromiumArguments });
  await context.addInitScript('globalThis.__name = (f) => f');
}, 180_000);

afterAll(async () => {
  await context?.close();
  app?.close();
  rmSync(profile, { recursive: true, force: true });
});

const ready = (page: Page): Promise<void> => page.locator('adjoin-strip').first().waitFor({ timeout: 60_000 });

/** What the workbench gives to its parts, for asking and editing from a test. */
interface Workbench {
  desk: {
    recoverable: readonly { key: string }[]; open?: { judging: boolean }; present?: { name: string; parts: { id: string }[] };
    findRecoverable(): Promise<void>; forget(key: string): Promise<void>; close(): Promise<void>; do(action: string, values: object): { done: boolean };
  };
}

/** Every joint of the cabin is judged, so that it can be edited. */
const judged = async (page: Page): Promise<void> => {
  await page.waitForFunction(() => (document.querySelector('adjoin-workbench') as unknown as Workbench | null)?.desk.open?.judging === false, undefined, { timeout: 60_000 });
};

const nameOf = (page: Page): Promise<string> => page.evaluate(() => (document.querySelector('adjoin-workbench') as unknown as Workbench).desk.present?.name ?? '');

/** Whether changes are offered that never reached a file: there are none where the page was killed before it kept any. */
const isOffered = (page: Page): Promise<boolean> => page.evaluate(async () => {
  const { desk } = document.querySelector('adjoin-workbench') as unknown as Workbench;
  await desk.findRecoverable();
  return desk.recoverable.length > 0;
});

/** Ends the page's process as a crash does, and closes what is left of it. */
async function kill(page: Page): Promise<void> {
  const crashed = page.waitForEvent('crash');
  void page.goto('chrome://crash').catch(() => undefined);
  await crashed;
  await page.close();
}

/** A new page, with what was kept taken up again and judged. */
async function takenUpAgain(): Promise<Page> {
  const page = await context.newPage();
  await page.goto(`${app.address}#/`);
  expect(await isOffered(page)).toBe(true);
  await page.getByRole('button', { name: 'Take up again' }).first().click();
  await judged(page);
  return page;
}

/** Renames the cabin again and again, a few milliseconds apart, changes a part in between, and tells the test of each name that was given. */
const beginEdits = (page: Page, round: number): Promise<void> => page.evaluate((tag) => {
  const { desk } = document.querySelector('adjoin-workbench') as unknown as Workbench;
  const told = (window as unknown as { told: (edit: number, at: number) => void }).told;
  let edit = 0;
  const step = (): void => {
    edit += 1;
    const part = desk.present?.parts[(edit * 37) % desk.present.parts.length]?.id;
    if (edit % 3 === 0) desk.do('part.set', { part, partNumber: `N-${tag}-${edit}` });
    if (desk.do('cabin.rename', { name: `Round ${tag} edit ${edit}` }).done) told(edit, Date.now());
    setTimeout(step, 15 + (edit * 7) % 30);
  };
  step();
}, round);

/** Kills the page so many times in the midst of edits and takes up again what was kept; gives for every time how far back the edits go that were lost, ms. */
async function lossesOf(crashes: number, address: string, seed: number): Promise<readonly number[]> {
  const random = seededNumbers(seed);
  let page = await context.newPage();
  await page.goto(address);
  await judged(page);
  const losses: number[] = [];
  let before: string | undefined;
  for (let round = 1; round <= crashes; round += 1) {
    const done: { readonly edit: number; readonly at: number }[] = [];
    await page.exposeFunction('told', (edit: number, at: number) => { done.push({ edit, at }); });
    await beginEdits(page, round);
    await new Promise((resolve) => setTimeout(resolve, 100 + 1000 * random()));
    const killedAt = Date.now();
    await kill(page);
    const written = done.filter(({ at }) => at <= killedAt);
    page = await context.newPage();
    await page.goto(`${app.address}#/`);
    if (await isOffered(page)) await page.getByRole('button', { name: 'Take up again' }).first().click();
    else await page.goto(address);
    await judged(page);
    const name = await nameOf(page);
    const [, tag, edit] = /^Round (\d+) edit (\d+)$/.exec(name) ?? [];
    const kept = Number(tag) === round ? Number(edit) : 0;
    // Nothing of this round: then all of the one before is there, or the file where that had kept nothing either.
    if (kept === 0) expect([undefined, before]).toContain(tag);
    before = tag;
    const first = written.find((one) => one.edit > kept);
    losses.push(first === undefined ? 0 : killedAt - first.at);
  }
  await page.evaluate(async () => {
    const { desk } = document.querySelector('adjoin-workbench') as unknown as Workbench;
    await desk.close();
    for (const { key } of desk.recoverable) await desk.forget(key);
  });
  await page.close();
  return losses;
}

test(`a page that is killed ${crashes} times in the midst of edits loses at most the last second`, async () => {
  const losses = await lossesOf(crashes, app.address + opened, 20261129);
  expect(losses).toHaveLength(crashes);
  expect(Math.max(...losses)).toBeLessThan(lostMs);
}, 240_000);

test(`so does one with a cabin of ${large.parts} parts, killed ${largeCrashes} times`, async () => {
  // Few joints, since all are judged anew after every kill; the store does not know them from parts.
  writeFileSync(join(app.folder, 'demo-data', 'large.cabin.json'), serialiseCabin(bigCabin(large)));
  const losses = await lossesOf(largeCrashes, `${app.address}#/cabin?open=demo-data/large.cabin.json`, 5);
  expect(losses).toHaveLength(largeCrashes);
  expect(Math.max(...losses)).toBeLessThan(lostMs);
}, 240_000);

test('a second tab sees the cabin locked and cannot change it, and takes it over with the last edit in it', async () => {
  const [first, second] = [await context.newPage(), await context.newPage()];
  await first.goto(app.address + opened);
  await ready(first);
  await first.evaluate(() => { (document.querySelector('adjoin-workbench') as unknown as Workbench).desk.do('cabin.rename', { name: 'Changed in the first tab' }); });
  await second.goto(app.address + opened);
  await ready(second);
  await second.getByText('It can be looked at here, not changed.').waitFor();
  expect(await second.evaluate(() => (document.querySelector('adjoin-workbench') as unknown as Workbench).desk.do('cabin.rename', { name: 'From the second' }).done)).toBe(false);
  await second.getByRole('button', { name: 'Take it over' }).click();
  await expect.poll(() => nameOf(second)).toBe('Changed in the first tab');
  await first.getByText('It can be looked at here, not changed.').waitFor();
  expect(await first.evaluate(() => (document.querySelector('adjoin-workbench') as unknown as Workbench).desk.do('cabin.rename', { name: 'Too late' }).done)).toBe(false);
  expect(await second.evaluate(() => (document.querySelector('adjoin-workbench') as unknown as Workbench).desk.do('cabin.rename', { name: 'Changed in the second' }).done)).toBe(true);
  await Promise.all([first.close(), second.close()]);
}, 90_000);

test('where a browser has no room, the fault is shown with what to do, and work goes on', async () => {
  const page = await context.newPage();
  await page.addInitScript(() => {
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function full(...given: Parameters<typeof put>) {
      if ((window as unknown as { full?: boolean }).full) throw new DOMException('The quota has been exceeded.', 'QuotaExceededError');
      return put.apply(this, given);
    };
  });
  await page.goto(`${app.address}#/cabin?open=demo-data/shuttle-chalk.cabin.json`);
  await ready(page);
  await page.evaluate(() => {
    (window as unknown as { full: boolean }).full = true;
    (document.querySelector('adjoin-workbench') as unknown as Workbench).desk.do('cabin.rename', { name: 'No room' });
  });
  await page.getByText('Changes are not kept.').waitFor();
  await page.getByRole('button', { name: 'Save to a file' }).waitFor();
  await page.evaluate(() => {
    (window as unknown as { full: boolean }).full = false;
    (document.querySelector('adjoin-workbench') as unknown as Workbench).desk.do('cabin.rename', { name: 'Room again' });
  });
  await expect.poll(() => page.getByText('Changes are not kept.').count()).toBe(0);
  await page.close();
}, 60_000);

test('while a change with very many readings is not kept yet, it is said; then it is kept', async () => {
  const page = await context.newPage();
  await page.goto(`${app.address}#/cabin?open=demo-data/shuttle-slate.cabin.json`);
  await judged(page);
  await page.evaluate(() => {
    interface Part { readonly sources: readonly { readonly specimens: readonly { readonly readings: readonly object[] }[] }[] }
    const { desk } = document.querySelector('adjoin-workbench') as unknown as { desk: { present: { parts: Part[] }; commit(cabin: object, label: string, options: object): { done: boolean } } };
    const { present } = desk;
    const place = present.parts.findIndex(({ sources }) => (sources[0]?.specimens[0]?.readings.length ?? 0) > 0);
    const part = present.parts[place] as Part;
    const [source, ...sources] = part.sources;
    const [specimen] = source?.specimens ?? [];
    const many = Array.from({ length: 6 }, (_, copy) => ({
      ...specimen, id: `many-${copy}`, readings: Array.from({ length: 10_000 }, (__, at) => ({ ...specimen?.readings[at % specimen.readings.length], spot: { name: `n${at}` } })),
    }));
    const grown = { ...part, sources: [{ ...source, specimens: [...source?.specimens ?? [], ...many] }, ...sources] } as Part;
    desk.commit({ ...present, name: 'Many', parts: present.parts.with(place, grown) }, 'Import', { checkedAgainst: present });
  });
  await page.getByText('Not safe from a crash yet.').waitFor();
  await expect.poll(() => page.getByText('Not safe from a crash yet.').count(), { timeout: 30_000 }).toBe(0);
  await kill(page);
  const after = await takenUpAgain();
  expect(await nameOf(after)).toBe('Many');
  expect(await after.evaluate(() => {
    const { desk } = document.querySelector('adjoin-workbench') as unknown as { desk: { present: { parts: { sources: { specimens: { id: string; readings: unknown[] }[] }[] }[] } } };
    return desk.present.parts.flatMap(({ sources }) => sources.flatMap(({ specimens }) => specimens.filter(({ id }) => id.startsWith('many-')).map(({ readings }) => readings.length)));
  })).toEqual(Array.from({ length: 6 }, () => 10_000));
  await after.close();
}, 120_000);

/** Asks the page to close as a user does, and answers whether it asked back; it stays open where it did. */
async function asksBeforeLeaving(page: Page): Promise<boolean> {
  const asked = page.waitForEvent('dialog', { timeout: 3000 }).then(async (dialog) => {
    expect(dialog.type()).toBe('beforeunload');
    await dialog.dismiss();
    return true;
  }, () => false);
  const closed = page.waitForEvent('close', { timeout: 3000 }).then(() => false, () => true);
  await page.close({ runBeforeUnload: true });
  return Promise.race([asked, closed]);
}

test('leaving is asked about while something would be lost, and then no more', async () => {
  const page = await context.newPage();
  await page.goto(`${app.address}#/cabin?open=demo-data/shuttle-slate.cabin.json`);
  await judged(page);
  // A page that nobody has touched may not ask.
  await page.locator('adjoin-strip').first().click();
  await page.goBack();
  // The store is held up, so that the writing lasts as long as the test looks at it.
  await page.evaluate(() => {
    const held = window as unknown as { hold: boolean };
    held.hold = true;
    const { transaction } = IDBDatabase.prototype;
    let written = 0;
    IDBDatabase.prototype.transaction = function slow(this: IDBDatabase, ...given: Parameters<typeof transaction>) {
      const made = transaction.apply(this, given);
      written += 1;
      if (written > 3) {
        const store = made.objectStore('kept');
        const again = (): void => { if (held.hold) store.get('none').addEventListener('success', again); };
        again();
      }
      return made;
    };
    interface Part { readonly sources: readonly { readonly specimens: readonly { readonly readings: readonly object[] }[] }[] }
    const { desk } = document.querySelector('adjoin-workbench') as unknown as { desk: { present: { parts: Part[] }; commit(cabin: object, label: string, options: object): { done: boolean } } };
    const { present } = desk;
    const place = present.parts.findIndex(({ sources }) => (sources[0]?.specimens[0]?.readings.length ?? 0) > 0);
    const part = present.parts[place] as Part;
    const [source, ...sources] = part.sources;
    const [specimen] = source?.specimens ?? [];
    const many = { ...specimen, id: 'many', readings: Array.from({ length: 20_000 }, (_, at) => ({ ...specimen?.readings[at % specimen.readings.length], spot: { name: `n${at}` } })) };
    desk.commit({ ...present, parts: present.parts.with(place, { ...part, sources: [{ ...source, specimens: [...source?.specimens ?? [], many] }, ...sources] } as Part) }, 'Many', { checkedAgainst: present });
  });
  await page.getByText('Not safe from a crash yet.').waitFor();
  expect(await asksBeforeLeaving(page)).toBe(true);
  await page.evaluate(() => { (window as unknown as { hold: boolean }).hold = false; });
  await expect.poll(() => page.getByText('Not safe from a crash yet.').count(), { timeout: 30_000 }).toBe(0);
  expect(await asksBeforeLeaving(page)).toBe(false);
}, 90_000);

test('an import is safe at once: a page that is killed while its readings are written has all of them again', async () => {
  const page = await context.newPage();
  await page.goto(`${app.address}#/cabin?open=demo-data/shuttle-slate.cabin.json`);
  await judged(page);
  const single = await page.evaluate(() => (document.querySelector('adjoin-workbench') as unknown as { desk: { present: { parts: { id: string; sources: object[] }[] } } })
    .desk.present.parts.filter(({ sources }) => sources.length === 1).slice(0, 40).map(({ id }) => id));
  const count = 100_000;
  writeFileSync(join(app.folder, 'demo-data', 'many.csv'), manyReadings(single, count, 3));
  await page.evaluate(() => { location.hash = '#/import'; });
  await page.locator('adjoin-import-view').waitFor();
  interface ImportDesk { items: { key: string; state: string; planned?: { taken: boolean } }[]; choose(key: string, choices: object): void; take(): Promise<boolean> }
  const planned = (taken: boolean): Promise<unknown> => page.waitForFunction((wanted) => {
    const view = (document.querySelector('adjoin-workbench') as unknown as { views: { get(view: string): object | undefined } }).views.get('import') ?? {};
    const desk = Object.values(view).find((each): each is ImportDesk => typeof each === 'object' && each !== null && 'items' in each && 'bridge' in each);
    Object.assign(window, { importing: desk });
    return desk?.items[0]?.state === 'found' && desk.items[0].planned?.taken === wanted;
  }, taken, { timeout: 60_000 });
  await page.evaluate(async () => {
    const transfer = new DataTransfer();
    transfer.items.add(new File([await (await fetch('demo-data/many.csv')).blob()], 'many.csv'));
    dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
  });
  await planned(false);
  await page.evaluate(() => {
    const { importing } = window as unknown as { importing: ImportDesk };
    const { desk } = document.querySelector('adjoin-workbench') as unknown as { desk: { present: { instruments: { id: string; kind: string }[] } } };
    importing.choose(importing.items[0]?.key ?? '', { newSpecimens: 'plaque', instruments: { 'gloss-1': desk.present.instruments.find(({ kind }) => kind === 'glossmeter')?.id } });
  });
  await planned(true);
  // What lies in the journal a moment after: the files, and of the readings not yet the change that would make them count.
  const kinds = await page.evaluate(async () => {
    const { desk } = document.querySelector('adjoin-workbench') as unknown as Workbench;
    // Nothing has written this edit yet when the import comes.
    desk.do('cabin.rename', { name: 'Just before' });
    if (!(await (window as unknown as { importing: ImportDesk }).importing.take())) throw new Error('not taken');
    const database = await new Promise<IDBDatabase>((resolve) => { const request = indexedDB.open('adjoin'); request.addEventListener('success', () => resolve(request.result)); });
    const found = (): Promise<string[]> => new Promise((resolve) => {
      const request = database.transaction('journal').objectStore('journal').getAll();
      request.addEventListener('success', () => resolve((request.result as { entries: { kind: string }[] }[]).flatMap(({ entries }) => entries.map(({ kind }) => kind))));
    });
    for (;;) {
      const now = await found();
      if (now.includes('import')) return now;
      await new Promise((resolve) => setTimeout(resolve, 5));
    }
  });
  await kill(page);
  expect(kinds.slice(kinds.indexOf('import')).filter((kind) => kind === 'change')).toEqual([]);
  const after = await takenUpAgain();
  expect(await nameOf(after)).toBe('Just before');
  const readings = (on: Page): Promise<number> => on.evaluate(() => {
    const { desk } = document.querySelector('adjoin-workbench') as unknown as { desk: { present: { parts: { sources: { specimens: { id: string; readings: unknown[] }[] }[] }[] } } };
    return desk.present.parts.flatMap(({ sources }) => sources.flatMap(({ specimens }) => specimens)).filter(({ readings: own }) => own.length >= 2000).reduce((sum, { readings: own }) => sum + own.length, 0);
  });
  expect(await readings(after)).toBe(count);
  // What is edited then counts from the import, and is there after the next kill.
  await after.evaluate(() => { (document.querySelector('adjoin-workbench') as unknown as Workbench).desk.do('cabin.rename', { name: 'After the import' }); });
  await after.waitForTimeout(1500);
  await kill(after);
  const last = await takenUpAgain();
  expect(await nameOf(last)).toBe('After the import');
  expect(await readings(last)).toBe(count);
  await last.close();
}, 180_000);

test('a cabin of a newer version is refused with a clear line, and what is open stays', async () => {
  const page = await context.newPage();
  await page.goto(`${app.address}#/cabin?open=demo-data/first-steps.cabin.json`);
  await ready(page);
  const before = await nameOf(page);
  await page.evaluate(() => {
    const transfer = new DataTransfer();
    transfer.items.add(new File(['{"format":"adjoin-cabin","version":99,"id":"later","name":"From later","asOf":"2031-01-01","parts":[]}'], 'later.cabin.json'));
    dispatchEvent(new DragEvent('drop', { dataTransfer: transfer, bubbles: true, cancelable: true }));
  });
  const dialog = page.locator('adjoin-faults dialog[open]');
  await dialog.waitFor();
  expect((await dialog.textContent())?.replace(/\s+/g, ' ')).toMatch(/newer/);
  expect(await nameOf(page)).toBe(before);
  await page.close();
}, 60_000);
