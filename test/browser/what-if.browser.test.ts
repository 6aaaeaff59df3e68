import { afterEach, beforeEach, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import '../../components/app/adjoin-workbench.ts';
import type { AdjoinWorkbench } from '../../components/app/adjoin-workbench.ts';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { deep, faultsOfAccess, frames, mount, until } from '../support/screen.ts';

let workbench: AdjoinWorkbench;
const all = <E extends Element = HTMLElement>(selector: string): E[] => deep<E>(workbench.shadowRoot as ShadowRoot, selector);
const one = <E extends Element = HTMLElement>(selector: string): E | undefined => all<E>(selector)[0];
const button = (name: RegExp): HTMLButtonElement | undefined => all<HTMLButtonElement>('button').find((each) => name.test(each.textContent?.trim() ?? ''));
const words = (element: Element | undefined): string => element?.textContent?.replace(/\s+/g, ' ').trim() ?? '';
const row = (check: string): string[] => {
  const found = all('adjoin-what-if tbody tr, tbody tr').find((each) => words(each.querySelector('th') ?? undefined) === check);
  return [...found?.querySelectorAll('td') ?? []].slice(0, 2).map(words);
};

let address: string;

beforeEach(async () => {
  sessionStorage.clear();
  const { joints, ...rest } = smallCabin({ ruleBook: 'ciede2000' });
  address = URL.createObjectURL(new File([serialiseCabin({ ...rest, joints: joints.map(({ proposals: _, ...joint }) => joint) })], 'small.cabin.json'));
  history.replaceState(null, '', `#/joint/j2?open=${encodeURIComponent(address)}`);
  workbench = await mount<AdjoinWorkbench>('adjoin-workbench', {});
  await until('the what-if', () => one('adjoin-what-if'));
  await until('the checks', () => row('colour').length === 2);
});

afterEach(() => {
  document.body.replaceChildren();
  history.replaceState(null, '', '#/');
  URL.revokeObjectURL(address);
});

test('a shift is judged at once, leaves the document alone, is kept as a proposal, tried again and undone', async () => {
  const measured = row('colour');
  expect(measured[1]).toBe('');
  button(/^Bring the trial/)?.click();
  await until('the colour as tried', () => /^holds [0-3]?\d %$/.test(row('colour')[1] ?? ''));
  expect(row('colour')[0]).toBe(measured[0]);
  expect(words(one('.tried'))).toBe(`as tried; measured: ${row('Joint')[0]?.replace(/ [^ ]+ %$/, '')}`);
  expect(button(/^Save/)?.getAttribute('aria-disabled')).toBe('true');
  expect(await faultsOfAccess(workbench)).toEqual([]);

  button(/^Keep as proposal/)?.click();
  const dialog = await until('the form', () => one<HTMLDialogElement>('adjoin-action-form dialog[open], dialog[open]'));
  expect(words(dialog)).toContain('Propose a change at a joint');
  all<HTMLFormElement>('dialog form').at(0)?.requestSubmit();
  const kept = await until('the proposal', () => all('adjoin-proposals li, li').find((each) => words(each).includes('proposal-1')));
  expect(words(kept)).toContain('Door left: dL*');
  await until('as measured again', () => row('colour')[1] === '');

  button(/^Try it again/)?.click();
  await until('the colour as tried once more', () => row('colour')[1]?.startsWith('holds'));
  button(/^Back to as measured/)?.click();
  await until('as measured', () => row('colour')[1] === '');
  await userEvent.keyboard('{Control>}z{/Control}');
  await until('no proposal', () => all('li').every((each) => !words(each).includes('proposal-1')));
});

test('sliders move by keys, fields take what a slider does not reach, and nonsense is refused in its place', async () => {
  const [slider, field] = all<HTMLInputElement>('adjoin-what-if input, .slider input');
  slider?.focus();
  await userEvent.keyboard('{ArrowRight}{ArrowRight}');
  await until('the shift in its field', () => field?.value === '0.1');
  await until('a verdict as tried', () => row('colour')[1] !== '');
  const before = row('colour')[1];
  await userEvent.fill(field as HTMLInputElement, '-12,5');
  await userEvent.keyboard('{Tab}');
  await until('another verdict', () => row('colour')[1] !== before);
  expect(field?.value).toBe('-12.5');
  await userEvent.fill(field as HTMLInputElement, 'much');
  await userEvent.keyboard('{Tab}');
  await frames(2);
  expect(field?.getAttribute('aria-invalid')).toBe('true');
});

test('kind, gap and intent of the joint are edited in place, a refused value says why, and undo has a name', async () => {
  const control = <E extends HTMLElement>(label: string): E => all('adjoin-action-fields label, label.field').find((each) => words(each.querySelector('.label') ?? undefined).startsWith(label))?.querySelector<E>('input, select') as E;
  await userEvent.fill(await until('the gap', () => control<HTMLInputElement>('Gap')), '2,5');
  await userEvent.keyboard('{Tab}');
  await until('the new gap on the stage', () => all('.set').some((each) => words(each).includes('gap of 2.5 mm')));
  expect(all<HTMLButtonElement>('button').some((each) => /Change gap of joint Dash lower and Door left to 2.5 mm|gap/.test(`${each.title} ${each.getAttribute('aria-label') ?? ''}`))).toBe(true);
  await userEvent.fill(control<HTMLInputElement>('Gap'), '-1');
  await userEvent.keyboard('{Tab}');
  await until('the reason', () => words(one('.fault')).includes('Expected'));
  await userEvent.selectOptions(control<HTMLSelectElement>('Colour'), 'free');
  await until('nothing judged of colour', () => row('colour')[0] === '' || row('colour').length === 0 || !row('colour')[0]?.startsWith('clashes'));
});
