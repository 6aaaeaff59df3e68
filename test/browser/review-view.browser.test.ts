import { userEvent } from 'vitest/browser';
import { expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { faultsOfAccess, frames, setScheme, until } from '../support/screen.ts';
import { desk, eachWithWorkbench, one, openByDrop, workbench, wordsOf as words } from '../support/whole-workbench.ts';

/** A design review by the keyboard alone: from joint to joint, the light swept, a record and a note taken, the list at the end. */
eachWithWorkbench();

const view = (): ShadowRoot => one('adjoin-review-view')?.shadowRoot as ShadowRoot;
const place = (): string => words(view().querySelector('.place'));
const present = (): Cabin => (one('adjoin-review-view') as unknown as { desk: { present: Cabin } }).desk.present;
const heading = (): string => words(view().querySelector('h1'));

async function begin(cabin: Cabin): Promise<void> {
  await openByDrop(cabin);
  await until('a judged cabin', () => one('adjoin-strip'));
  location.hash = '#/review';
}

test('goes through the joints, takes a visual record and a note, and ends with the list', async () => {
  const cabin = smallCabin({ ruleBook: 'ciede2000' });
  await begin(cabin);
  await until('the first joint', () => one('adjoin-review-view')?.shadowRoot?.querySelector('dialog[open] .told'));
  const count = cabin.joints.length;
  expect(place()).toBe(`Joint 1 of ${count}`);
  for (const scheme of ['light', 'dark'] as const) {
    setScheme(scheme);
    await frames(2);
    expect(await faultsOfAccess(workbench())).toEqual([]);
  }

  const first = heading();
  await userEvent.keyboard('{ArrowRight}');
  await until('the second joint', () => place() === `Joint 2 of ${count}`);
  expect(heading()).not.toBe(first);
  expect(location.hash).toMatch(/^#\/review\/j\d/u);

  const light = (): string => words(view().querySelector('.light b'));
  const before = light();
  await userEvent.keyboard('l');
  await until('the next light', () => light() !== before);

  const joint = decodeURIComponent(location.hash.split('/')[2]?.split('?')[0] ?? '');
  const records = present().joints.find(({ id }) => id === joint)?.visualRecords?.length ?? 0;
  await userEvent.keyboard('v');
  const form = await until('the form', () => view().querySelector('adjoin-record-form')?.shadowRoot?.querySelector('form'));
  expect(await faultsOfAccess(workbench())).toEqual([]);
  form.querySelector<HTMLInputElement>('input[value="clash"]')?.click();
  const field = (name: string): HTMLInputElement => form.querySelector<HTMLInputElement>(`[name="${name}"]`) as HTMLInputElement;
  field('observers').value = '3';
  field('roles').value = 'design quality, colour and trim';
  field('grade').value = '3';
  form.requestSubmit();
  await until('the record', () => (present().joints.find(({ id }) => id === joint)?.visualRecords?.length ?? 0) === records + 1);
  expect(present().joints.find(({ id }) => id === joint)?.visualRecords?.at(-1)).toMatchObject({
    result: 'clash', light: 'D65', illuminanceLx: 2000, observers: { count: 3, roles: ['design quality', 'colour and trim'] }, rating: { scale: 'ISO 3668', grade: 3 },
  });

  await until('the keys again', () => view().querySelector('footer kbd'));
  await userEvent.keyboard('n');
  const area = await until('the note', () => view().querySelector('textarea'));
  area.value = 'Seen with the door open.';
  area.form?.requestSubmit();
  await until('the note in the document', () => present().joints.find(({ id }) => id === joint)?.note === 'Seen with the door open.');

  await until('the keys once more', () => view().querySelector('footer kbd'));
  await userEvent.keyboard('{End}');
  const list = await until('the list', () => view().querySelector('adjoin-review-list')?.shadowRoot ?? undefined);
  await until('its rows', () => list.querySelectorAll('tbody tr').length === 2);
  expect(words(list)).toContain('0 decisions, 1 visual record and 1 note taken in this review');
  expect(words(list)).toContain('Seen with the door open.');
  expect(await faultsOfAccess(workbench())).toEqual([]);

  await userEvent.keyboard('{Escape}');
  await until('the cabin', () => location.hash.startsWith('#/cabin'));
});

test('takes a decision through the form of the action, at the value and light of the check', async () => {
  await begin(smallCabin({ ruleBook: 'ciede2000' }));
  await until('the first joint', () => one('adjoin-review-view')?.shadowRoot?.querySelector('dialog[open] .told'));
  await userEvent.keyboard('d');
  const form = await until('the form', () => one('adjoin-action-form')?.shadowRoot?.querySelector('dialog[open] form'));
  expect(words(form.querySelector('h2'))).toBe('Accept a clash for a time');
  const value = [...form.querySelectorAll('label')].find((label) => words(label).startsWith('Agreed value'))?.querySelector('input');
  expect(Number(value?.value)).toBeGreaterThan(0);
});

test('says so where there is no joint', async () => {
  await openByDrop(smallCabin({ ruleBook: 'ciede2000', joints: [], runs: [] }));
  location.hash = '#/review';
  await until('the empty view', () => words(one('adjoin-review-view')?.shadowRoot?.querySelector('.empty')).startsWith('There is no joint'));
  expect(await faultsOfAccess(workbench())).toEqual([]);
});

test('goes through what the filter of the wall lets through, says so, and through all where that is asked for', async () => {
  const cabin = smallCabin({ ruleBook: 'ciede2000' });
  await openByDrop(cabin);
  await until('a judged cabin', () => one('adjoin-strip'));
  const { joints } = desk().open!.judgement;
  const verdict = joints[0]!.verdict;
  const passing = joints.filter((joint) => joint.verdict === verdict);
  expect(passing.length).toBeLessThan(joints.length);
  location.hash = `#/review?verdict=${verdict}`;
  await until('the first joint', () => one('adjoin-review-view')?.shadowRoot?.querySelector('dialog[open] .told'));
  expect(place()).toBe(`Joint 1 of ${passing.length}`);
  expect(words(view().querySelector('.filtered'))).toMatch(new RegExp(`^Only .*All ${joints.length} joints$`));
  await until('the joint in the address', () => passing.some(({ id }) => location.hash.startsWith(`#/review/${encodeURIComponent(id)}?verdict=`)));
  expect(await faultsOfAccess(workbench())).toEqual([]);
  view().querySelector<HTMLButtonElement>('.filtered button')!.click();
  await until('all joints', () => place().endsWith(`of ${joints.length}`));
  location.hash = '#/review?q=nothing+is+called+so';
  await until('that none passes', () => words(view().querySelector('.empty h1')) === 'No joint passes the filter.');
  expect(await faultsOfAccess(workbench())).toEqual([]);
});

test('form, joint and list stand in the address, and a new list can be begun', async () => {
  const cabin = smallCabin({ ruleBook: 'ciede2000' });
  await openByDrop(cabin);
  await until('a judged cabin', () => one('adjoin-strip'));
  const [, second] = cabin.joints;
  location.hash = `#/review/${encodeURIComponent(second!.id)}?panel=note`;
  const area = await until('the note', () => one('adjoin-review-view')?.shadowRoot?.querySelector('textarea'));
  await until('the caret in it', () => view().activeElement === area);
  area.value = 'Seen with the door open.';
  area.form?.requestSubmit();
  await until('the keys', () => view().querySelector('footer kbd'));
  expect(location.hash).toBe(`#/review/${encodeURIComponent(second!.id)}`);

  await userEvent.keyboard('{End}');
  await until('the list in the address', () => location.hash === `#/review/${encodeURIComponent(second!.id)}?at=list`);
  [...view().querySelectorAll<HTMLButtonElement>('.ending button')].find((button) => words(button) === 'Begin a new list')!.click();
  await until('the first joint', () => place() === `Joint 1 of ${cabin.joints.length}`);
  expect(words(view().querySelector('.bar .quiet'))).toBe('1 seen, 0 taken');
});
