import { expect, test } from 'vitest';
import type { Desk } from '../../components/controllers/desk.ts';
import type { OpenCabin } from '../../components/controllers/open-cabin.ts';
import { readText } from '../../src/formats/index.ts';
import { smallCurves } from '../support/small-cabin.ts';
import { frames, until } from '../support/screen.ts';
import { all, eachWithWorkbench, expectAccessible, one, openByDrop, wordsOf as words } from '../support/whole-workbench.ts';

/** The masters as a user looks at them. What is expected was planted in the demo cabin, or is read off the small cabin for tests. */
const view = (): HTMLElement & { open: OpenCabin; desk: Desk } => one('adjoin-masters-view') as HTMLElement & { open: OpenCabin; desk: Desk };

eachWithWorkbench();

test('parts in tolerance to their master that clash where they meet are seen at once', async () => {
  location.hash = '#/masters?open=demo-data/shuttle-slate.cabin.json';
  const pair = await until('the planted pair', () => all('.pairs li').find((found) => words(found).includes('Upper dash skin and Door top roll, left')), 60_000);
  // As planted: 60 and 70 % of what the master allows, together 146 % of the limit of the joint.
  expect([...pair.querySelectorAll('dd.number')].map((use) => Number(/\d+/.exec(words(use))?.[0]))).toEqual([60, 70, 146]);
  await expectAccessible();
  pair.querySelector<HTMLAnchorElement>('dt a')?.click();
  await until('the master with its parts', () => one('adjoin-master-panel'));
  await frames(3);
  const flagged = all('tr.within').map((row) => words(row));
  expect(flagged.some((row) => row.includes('Upper dash skin') && row.includes('in tolerance, yet clashing'))).toBe(true);
  await expectAccessible();
});

test('a master with its dates, edited in place, and its readings as ISO 17972-1 and as a page', async () => {
  await openByDrop();
  location.hash = '#/masters/m-slate';
  await until('the master', () => one('adjoin-master-panel'));
  await frames(3);
  expect(words(one('adjoin-master-panel')?.shadowRoot?.querySelector('header'))).toMatch(/issue 2.*made 2030-06-01/);
  const issue = await until('the field of the issue', () => all('label.field').find((found) => words(found.querySelector('.label')) === 'Issue')?.querySelector('input'));
  issue.value = '3';
  issue.dispatchEvent(new Event('change', { bubbles: true }));
  await until('the new issue', () => view().desk.present?.masters?.[0]?.issue === '3');
  const saved: { name: string; text: Promise<string> }[] = [];
  const click = HTMLAnchorElement.prototype.click;
  HTMLAnchorElement.prototype.click = function save(this: HTMLAnchorElement): void {
    saved.push({ name: this.download, text: fetch(this.href).then((answer) => answer.text()) });
  };
  try {
    for (const [at, start] of ['ISO 17972-1', 'One page'].entries()) {
      all<HTMLButtonElement>('button').find((button) => words(button).startsWith(start))?.click();
      await until(`the file of ${start}`, () => saved.length === at + 1);
    }
  } finally {
    HTMLAnchorElement.prototype.click = click;
  }
  expect(saved.map(({ name }) => name)).toEqual(['m-slate.cxf', 'm-slate.html']);
  const { value } = readText({ text: await saved[0]?.text ?? '' });
  const spectrum = value?.records.find(({ data }) => data.quantity === 'spectrum')?.data;
  // The first spot of the master is its curve times 1 + 0.004 sin 2.4, rounded to six decimals.
  expect(spectrum?.quantity === 'spectrum' ? spectrum.values[0] : undefined).toBeCloseTo((smallCurves.slate[0] ?? 0) * (1 + 0.004 * Math.sin(2.4)), 5);
  expect(await saved[1]?.text).toMatch(/m-slate/);
});

test('a locked cabin is looked at and not changed', async () => {
  await openByDrop();
  location.hash = '#/masters/m-slate';
  await until('the master', () => one('adjoin-master-panel'));
  view().open = { ...view().open, locked: true };
  await frames(3);
  expect(all<HTMLButtonElement>('button').find((button) => words(button) === 'Add a master')?.disabled).toBe(true);
  expect(all<HTMLButtonElement>('button').find((button) => words(button) === 'Remove master')?.disabled).toBe(true);
  expect(all<HTMLInputElement>('label.field input').every((field) => field.disabled)).toBe(true);
});

test('without masters it says what one is', async () => {
  (await until('the way to a new cabin', () => all<HTMLButtonElement>('button.way').find((found) => words(found).startsWith('Make a new cabin')))).click();
  await until('the new cabin', () => location.hash.startsWith('#/parts'));
  location.hash = '#/masters';
  await until('the word', () => words(one('.note')).includes('No master is recorded'));
  await expectAccessible();
});
