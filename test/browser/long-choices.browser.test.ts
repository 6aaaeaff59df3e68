import { afterEach, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import { actionById, openEditor, perform } from '../../src/actions/index.ts';
import type { AdjoinActionFields } from '../../components/app/adjoin-action-fields.ts';
import type { AdjoinActionForm } from '../../components/app/adjoin-action-form.ts';
import type { AdjoinChoice } from '../../components/app/adjoin-choice.ts';
import '../../components/app/adjoin-action-fields.ts';
import '../../components/app/adjoin-action-form.ts';
import '../../components/views/parts/adjoin-inline-fields.ts';
import type { AdjoinInlineFields } from '../../components/views/parts/adjoin-inline-fields.ts';
import { editEvent } from '../../components/controllers/edit-events.ts';
import type { WantedEdit } from '../../components/controllers/edit-events.ts';
import { bigCabin } from '../bench/big-cabin.ts';
import { faultsOfAccess, mount, setScheme, settled } from '../support/screen.ts';

/** Forms of a cabin of very many parts: no field makes an option of each of them. */
const cabin = bigCabin({ parts: 400, joints: 700, seed: 3, spots: 1 });
const first = cabin.parts[0];
/** Meets the first nowhere yet. */
const second = cabin.parts[157];

let edits: WantedEdit[];
const listen = (event: Event): void => {
  const wanted = (event as CustomEvent<WantedEdit>).detail;
  edits.push(wanted);
  const action = actionById(wanted.action);
  if (action !== undefined) wanted.result = perform(openEditor(cabin), action, wanted.values);
};

afterEach(() => {
  document.removeEventListener(editEvent, listen);
  document.body.replaceChildren();
  setScheme('light');
});

const hear = (): void => {
  edits = [];
  document.addEventListener(editEvent, listen);
};
const field = (choice: AdjoinChoice): HTMLInputElement => choice.shadowRoot!.querySelector('input')!;
const choices = (of: Element): AdjoinChoice[] => [...of.shadowRoot!.querySelectorAll('adjoin-choice')];
const longest = (of: Element): number => Math.max(0, ...[...of.shadowRoot!.querySelectorAll('select')].map(({ options }) => options.length));

async function pick(choice: AdjoinChoice, words: string): Promise<void> {
  field(choice).focus();
  await userEvent.fill(field(choice), words);
  await settled(choice);
  await userEvent.keyboard('{Enter}');
  await settled(choice);
}

test('the mirror part is searched for, set by a key and taken back by emptying the field', async () => {
  hear();
  const element = await mount<AdjoinInlineFields>('adjoin-inline-fields', { cabin, action: 'part.set-hand', about: { part: first.id }, locked: false });
  const [mirror] = choices(element);
  expect([choices(element).length, mirror?.label, longest(element) <= 121]).toEqual([1, 'Mirror of', true]);
  await pick(mirror!, second.name);
  expect(edits.map(({ action, values }) => [action, values])).toEqual([['part.set-hand', { part: first.id, mirrorOf: second.id }]]);
  element.cabin = { ...cabin, parts: cabin.parts.map((part) => (part.id === first.id ? { ...part, mirrorOf: second.id } : part)) };
  await settled(element);
  expect(field(mirror!).value).toBe(second.name);
  await userEvent.clear(field(mirror!));
  await userEvent.keyboard('{Tab}');
  expect(edits.at(-1)?.values['mirrorOf']).toBeNull();
  for (const scheme of ['light', 'dark'] as const) {
    setScheme(scheme);
    expect(await faultsOfAccess(element)).toEqual([]);
  }
});

test('the sides of a joint are searched for in its form; Enter sends it', async () => {
  hear();
  const form = await mount<AdjoinActionForm>('adjoin-action-form', { cabin });
  form.ask({ action: 'joint.add', preset: {} }, {});
  await settled(form);
  const parts = choices(form);
  expect(parts.length).toBeGreaterThanOrEqual(2);
  expect(longest(form)).toBeLessThanOrEqual(121);
  expect(await faultsOfAccess(form)).toEqual([]);
  await pick(parts[0]!, first.name);
  await pick(parts[1]!, second.name);
  await userEvent.selectOptions(form.shadowRoot!.querySelector('select')!, 'edge');
  field(parts[1]!).focus();
  await userEvent.keyboard('{Enter}');
  await settled(form);
  expect(edits.map(({ action, values }) => [action, values['first'], values['second'], values['kind']])).toEqual([['joint.add', first.id, second.id, 'edge']]);
  expect(form.shadowRoot!.querySelector('dialog')!.open).toBe(false);
});

test('Escape closes what a field of a form offers before it closes the form', async () => {
  hear();
  const form = await mount<AdjoinActionForm>('adjoin-action-form', { cabin });
  form.ask({ action: 'joint.add', preset: {} }, {});
  await settled(form);
  const dialog = form.shadowRoot!.querySelector('dialog')!;
  const [part] = choices(form);
  field(part!).focus();
  await userEvent.keyboard('{ArrowDown}');
  await settled(part!);
  expect(field(part!).getAttribute('aria-expanded')).toBe('true');
  await userEvent.keyboard('{Escape}');
  await settled(part!);
  expect([field(part!).getAttribute('aria-expanded'), dialog.open]).toEqual(['false', true]);
  await userEvent.keyboard('{Escape}');
  expect(dialog.open).toBe(false);
});

test('the standard of a joint is one of its two parts, in a list', async () => {
  const [joint] = cabin.joints;
  const element = await mount<AdjoinActionFields>('adjoin-action-fields', { cabin, action: 'joint.set', of: { joint: joint.id }, keys: ['reference'], locked: false });
  expect(choices(element)).toEqual([]);
  expect([...element.shadowRoot!.querySelectorAll('option')].map(({ value }) => value)).toEqual(['', ...cabin.parts.map(({ id }) => id).filter((id) => joint.parts.includes(id))]);
});
