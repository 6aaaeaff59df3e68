import type { Browser, Page } from 'playwright-core';
import { views } from '../../components/controllers/route.ts';
import { longOnes, tasksDuring } from './main-thread.ts';

interface Step {
  readonly name: string;
  readonly work: (page: Page) => Promise<void>;
}

const quiet = (page: Page, ms = 500): Promise<void> => page.waitForTimeout(ms);
const hash = async (page: Page, change: Readonly<Record<string, string>>, view?: string): Promise<void> => {
  await page.evaluate(([wanted, place]) => {
    const [path = '', query = ''] = location.hash.split('?');
    const parameters = new URLSearchParams(query);
    for (const [key, value] of Object.entries(wanted)) if (value === '') parameters.delete(key); else parameters.set(key, value);
    location.hash = `${place === undefined ? path : `#/${place}`}?${parameters}`;
  }, [change, view] as const);
  await quiet(page);
};

async function onMap(page: Page): Promise<{ readonly x: number; readonly y: number }> {
  const box = await page.locator('adjoin-cabin-map .map').boundingBox();
  if (box === null) throw new Error('the map is not shown');
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Everything one does with map, wall and matrix, and every view. */
export const steps: readonly Step[] = [
  { name: 'map: point across', work: async (page) => {
    const { x, y } = await onMap(page);
    for (let step = 0; step < 20; step += 1) await page.mouse.move(x - 200 + 20 * step, y - 100 + 10 * step);
    await quiet(page, 300);
  } },
  { name: 'map: zoom in by wheel', work: async (page) => {
    const { x, y } = await onMap(page);
    await page.mouse.move(x, y);
    for (let step = 0; step < 6; step += 1) await page.mouse.wheel(0, -150);
    await quiet(page, 1200);
  } },
  { name: 'map: pan', work: async (page) => {
    const { x, y } = await onMap(page);
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let step = 1; step <= 15; step += 1) await page.mouse.move(x + 12 * step, y + 6 * step);
    await page.mouse.up();
    await quiet(page, 1200);
  } },
  { name: 'map: the whole again', work: async (page) => {
    await page.locator('adjoin-map-tools').getByRole('button', { name: 'Fit' }).click();
    await quiet(page, 1500);
  } },
  ...['verdict', 'gloss', 'uncertainty', ''].map((tint): Step => ({ name: `map: tint ${tint || 'colour'}`, work: (page) => hash(page, { tint }) })),
  { name: 'map: click, and back', work: async (page) => {
    const { x, y } = await onMap(page);
    await page.mouse.click(x, y);
    await quiet(page);
    // On a cabin with so many joints one is hit as a rule.
    await hash(page, {}, 'cabin');
  } },
  { name: 'light A', work: (page) => hash(page, { light: 'A' }) },
  { name: 'light D65', work: (page) => hash(page, { light: '' }) },
  { name: 'filter: clashes', work: (page) => hash(page, { verdict: 'clashes' }) },
  { name: 'filter: search typed', work: async (page) => {
    await page.locator('adjoin-wall-filters input').pressSequentially('Part 12', { delay: 60 });
    await quiet(page);
  } },
  { name: 'filter: none', work: (page) => hash(page, { verdict: '', q: '' }) },
  { name: 'wall: scroll', work: async (page) => {
    const box = await page.locator('adjoin-wall').boundingBox();
    await page.mouse.move((box?.x ?? 0) + 200, (box?.y ?? 0) + 400);
    for (let step = 0; step < 20; step += 1) {
      await page.mouse.wheel(0, 700);
      await page.waitForTimeout(30);
    }
    await quiet(page);
  } },
  { name: 'wall: to its end by key', work: async (page) => {
    await page.locator('adjoin-strip').first().focus();
    await page.keyboard.press('End');
    await quiet(page, 800);
    await page.keyboard.press('Home');
    await quiet(page, 800);
  } },
  { name: 'joint: open', work: async (page) => {
    await page.locator('adjoin-strip').nth(1).click();
    await page.locator('adjoin-joint-view').waitFor();
    await quiet(page, 800);
  } },
  { name: 'joint: back', work: async (page) => {
    await page.goBack();
    await page.locator('adjoin-strip').first().waitFor();
    await quiet(page, 800);
  } },
  { name: 'matrix: show', work: (page) => hash(page, { show: 'matrix' }) },
  { name: 'matrix: scroll', work: async (page) => {
    const box = await page.locator('adjoin-matrix').boundingBox();
    await page.mouse.move((box?.x ?? 0) + 300, (box?.y ?? 0) + 300);
    for (let step = 0; step < 12; step += 1) {
      await page.mouse.wheel(step % 3 === 0 ? 500 : 0, 500);
      await page.waitForTimeout(30);
    }
    await quiet(page);
  } },
  { name: 'matrix: back to the map', work: (page) => hash(page, { show: '' }) },
  { name: 'palette: open', work: async (page) => {
    await page.keyboard.press('Control+k');
    await quiet(page);
    await page.keyboard.press('Escape');
  } },
  ...views.filter((view) => !['start', 'cabin', 'joint'].includes(view)).flatMap((view): readonly Step[] => [
    { name: `${view}: first`, work: async (page) => { await hash(page, {}, view); await quiet(page, 2500); } },
    { name: `${view}: to the cabin`, work: async (page) => { await hash(page, {}, 'cabin'); await quiet(page, 500); } },
    { name: `${view}: again`, work: async (page) => { await hash(page, {}, view); await quiet(page, 1000); } },
  ]),
  { name: 'undo after an edit', work: async (page) => {
    await hash(page, {}, 'cabin');
    await page.evaluate(() => {
      const { desk } = document.querySelector('adjoin-workbench') as unknown as { desk: { do(action: string, values: object): unknown; undo(): void } };
      desk.do('joint.set', { joint: 'joint-1', gapMm: 1.75 });
      setTimeout(() => desk.undo(), 300);
    });
    await quiet(page, 1000);
  } },
];

/** Does everything once with the cabin that is open and prints the tasks over 50 ms of each step, by the clock, without waiting for painting, and of the processor; `only` those whose name begins so. */
export async function walkSteps(browser: Browser, page: Page, only = ''): Promise<void> {
  console.log(`${'step'.padEnd(28)} ${'by the clock'.padEnd(28)} ${'without waiting for painting'.padEnd(30)} of the processor`);
  for (const { name, work } of steps.filter((step) => step.name.startsWith(only))) {
    let fault = '';
    const tasks = await tasksDuring(browser, () => work(page).catch((reason: unknown) => { fault = ` (not done: ${String(reason).split('\n')[0]})`; }));
    console.log(`${name.padEnd(28)} ${longOnes(tasks.map(({ clock }) => clock)).padEnd(28)} ${longOnes(tasks.map(({ own }) => own)).padEnd(30)} ${longOnes(tasks.map(({ processor }) => processor))}${fault}`);
  }
}
