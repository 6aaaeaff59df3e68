import { userEvent } from 'vitest/browser';
import { expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { faultsOfAccess, frames, setScheme, until } from '../support/screen.ts';
import { eachWithWorkbench, one, openByDrop, workbench, wordsOf as words } from '../support/whole-workbench.ts';

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
