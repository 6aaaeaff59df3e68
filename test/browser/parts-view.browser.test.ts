import { userEvent } from 'vitest/browser';
import { expect, test } from 'vitest';
import type { OpenCabin } from '../../components/controllers/open-cabin.ts';
import type { Desk } from '../../components/controllers/desk.ts';
import { faultsOfAccess, frames, setScheme, until } from '../support/screen.ts';
import { all, eachWithWorkbench, one, openByDrop, wordsOf as words, workbench } from '../support/whole-workbench.ts';

/** Parts as a user looks at and edits them; names and counts are those of the small cabin for tests, counted by hand. */
const view = (): HTMLElement & { open: OpenCabin; desk: Desk } => one('adjoin-parts-view') as HTMLElement & { open: OpenCabin; desk: Desk };
const button = (label: string): HTMLButtonElement | undefined => all<HTMLButtonElement>('button').find((found) => words(found) === label);
const field = <E extends HTMLElement = HTMLInputElement>(label: string): E | undefined =>
  all('label.field').find((found) => words(found.querySelector('.label')).startsWith(label))?.querySelector<E>('input, select, textarea') ?? undefined;

const activeElement = (): Element | null => {
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  return active;
};

async function go(hash: string): Promise<void> {
  location.hash = hash;
  await until('the parts', () => one('adjoin-parts-view'));
  await frames(4);
}

eachWithWorkbench();

test('every part has its row; the keyboard goes through them and opens one; all of it is accessible in light and dark', async () => {
  await openByDrop();
  await go('#/parts');
  const rows = await until('the rows', () => (all('tbody th a').length === 6 ? all<HTMLAnchorElement>('tbody th a') : undefined));
  expect(rows.map((row) => words(row))).toEqual(['Dash upper', 'Dash lower', 'Door left', 'Door right', 'Console lid', 'Console side']);
  rows[0]?.focus();
  await userEvent.keyboard('{ArrowDown}{ArrowDown}');
  expect(words(activeElement())).toBe('Door left');
  await userEvent.keyboard('{Enter}');
  await until('the part', () => one('adjoin-part-panel'));
  expect(location.hash).toBe('#/parts/door-left');
  await frames(3);
  for (const scheme of ['light', 'dark'] as const) {
    setScheme(scheme);
    await frames(2);
    expect(await faultsOfAccess(workbench())).toEqual([]);
  }
});

test('a field is edited in place, undone by its name, and refused with the reason where it cannot be', async () => {
  await openByDrop();
  await go('#/parts/door-left');
  const name = await until('the field of the name', () => field<HTMLInputElement>('Name'));
  name.value = 'Door trim left';
  name.dispatchEvent(new Event('change', { bubbles: true }));
  await until('the new name', () => view().desk.present?.parts.some((part) => part.name === 'Door trim left'));
  expect(view().open.undo).toMatch(/^Change name .*Door left$/);
  const visibility = await until('the field of visibility', () => field<HTMLInputElement>('Visibility'));
  visibility.value = '3';
  visibility.dispatchEvent(new Event('change', { bubbles: true }));
  const fault = await until('the reason', () => one('.fault'));
  expect(words(fault)).toMatch(/1/);
  expect(view().desk.present?.parts.find(({ id }) => id === 'door-left')?.visibility).not.toBe(3);
  activeElement()?.dispatchEvent(new Event('blur'));
  view().desk.undo();
  await until('the old name', () => view().desk.present?.parts.some((part) => part.name === 'Door left'));
});

test('sources, specimens and readings open below the part; picked readings are marked and removed with undo', async () => {
  await openByDrop();
  await go('#/parts/dash-upper');
  const specimen = await until('the specimen', () => all<HTMLButtonElement>('.title').find((found) => words(found).startsWith('du-1')));
  // Five spectra, five readings of gloss, one of texture.
  expect(words(specimen)).toContain('11 readings');
  specimen.click();
  const box = await until('the readings', () => all<HTMLInputElement>('input[type=checkbox]')[0]);
  expect(all('input[type=checkbox]')).toHaveLength(11);
  box.click();
  await frames(2);
  button('Mark as outlier')?.click();
  await until('the mark', () => view().desk.present?.parts[0]?.sources[0]?.specimens[0]?.readings[0]?.outlier === true);
  button('Remove')?.click();
  await until('one reading less', () => view().desk.present?.parts[0]?.sources[0]?.specimens[0]?.readings.length === 10);
  view().desk.undo();
  view().desk.undo();
  expect(view().desk.present?.parts[0]?.sources[0]?.specimens[0]?.readings.length).toBe(11);
  expect(view().desk.present?.parts[0]?.sources[0]?.specimens[0]?.readings[0]?.outlier).toBeUndefined();
});

test('a new cabin teaches; a supplier and a part are made by their forms', async () => {
  (await until('the way to a new cabin', () => all<HTMLButtonElement>('button.way').find((found) => words(found).startsWith('Make a new cabin')))).click();
  await until('the lesson', () => one('adjoin-parts-view')?.shadowRoot?.querySelector('.teach'));
  expect(await faultsOfAccess(workbench())).toEqual([]);
  button('Add a supplier')?.click();
  const supplier = await until('the form', () => (one('dialog[open]') === undefined ? undefined : field<HTMLInputElement>('Name')));
  await userEvent.fill(supplier, 'Ferrow (invented)');
  await userEvent.keyboard('{Enter}');
  await until('the supplier', () => view().desk.present?.suppliers.length === 1);
  button('Add a part')?.click();
  const name = await until('the form of the part', () => (one('dialog[open]') === undefined ? undefined : field<HTMLInputElement>('Name')));
  await userEvent.fill(name, 'Dash top');
  // The supplier was just made and is selected, so it is not asked for.
  await userEvent.fill(await until('the material', () => field<HTMLInputElement>('Material')), 'moulded');
  await userEvent.keyboard('{Enter}');
  await until('the part', () => one('adjoin-part-panel'));
  expect(location.hash).toBe('#/parts/dash-top');
});

test('registers hold what parts refer to; a supplier in use is kept with the reason', async () => {
  await openByDrop();
  await go('#/parts?show=registers');
  const titles = await until('the registers', () => (all('adjoin-registers').length > 0 ? all('section h2').map((title) => words(title).replace(/ \d.*/, '')) : undefined));
  expect(titles).toEqual(['Zones and caps', 'Suppliers', 'Instruments', 'Conditions of readings', 'Own lights', 'Runs along which drift is watched', 'Decisions', 'Visual records', 'Files of readings']);
  expect(await faultsOfAccess(workbench())).toEqual([]);
  all<HTMLButtonElement>('button').find((found) => found.getAttribute('aria-label')?.startsWith('Remove Ferrow'))?.click();
  expect(words(await until('the reason', () => one('dialog[open] .faults')))).toMatch(/sources? (is|are) of this supplier/);
});

test('a locked cabin is looked at and not changed', async () => {
  await openByDrop();
  await go('#/parts/door-left');
  await until('the part', () => one('adjoin-part-panel'));
  view().open = { ...view().open, locked: true };
  await frames(4);
  const controls = all<HTMLInputElement>('input, select, textarea').filter((found) => (found.getRootNode() as ShadowRoot).host.localName === 'adjoin-inline-fields');
  expect(controls.length).toBeGreaterThan(10);
  expect(controls.every((control) => control.disabled)).toBe(true);
  expect(button('Remove part')?.disabled).toBe(true);
});
