import { userEvent } from 'vitest/browser';
import { afterEach, beforeEach, expect, test } from 'vitest';
import '../../components/app/adjoin-workbench.ts';
import type { AdjoinWorkbench } from '../../components/app/adjoin-workbench.ts';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { deep, faultsOfAccess, frames, mount, settled, until } from '../support/screen.ts';

/** The whole workbench with its worker: files come in as a user brings them, by drop. */
let workbench: AdjoinWorkbench;

const all = <E extends Element = HTMLElement>(selector: string): E[] => deep<E>(workbench.shadowRoot as ShadowRoot, selector);
const one = <E extends Element = HTMLElement>(selector: string): E | undefined => all<E>(selector)[0];

const cabinFile = (changes: Parameters<typeof smallCabin>[0] = {}): File => new File([serialiseCabin(smallCabin({ ruleBook: 'ciede2000', ...changes }))], 'small.cabin.json');

function drop(...files: readonly File[]): void {
  const transfer = new DataTransfer();
  for (const file of files) transfer.items.add(file);
  for (const kind of ['dragenter', 'dragover', 'drop']) dispatchEvent(new DragEvent(kind, { dataTransfer: transfer, bubbles: true, cancelable: true }));
}

async function opened(): Promise<void> {
  await until('the wall', () => one('adjoin-strip'));
  await until('the address of the cabin', () => location.hash.startsWith('#/cabin'));
  await settled(workbench);
}

const activeElement = (): Element | null => {
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  return active;
};

beforeEach(async () => {
  sessionStorage.clear();
  history.replaceState(null, '', '#/');
  workbench = await mount<AdjoinWorkbench>('adjoin-workbench', {});
});

afterEach(() => {
  document.body.replaceChildren();
  history.replaceState(null, '', '#/');
});

test('with nothing open it teaches and offers ways in', async () => {
  expect(one('adjoin-start')).toBeDefined();
  expect(all<HTMLAnchorElement>('a.way').map((link) => link.getAttribute('href'))).toEqual([
    '#/cabin?open=demo-data/shuttle-slate.cabin.json', '#/cabin?open=demo-data/shuttle-chalk.cabin.json', '#/cabin?open=demo-data/first-steps.cabin.json',
    '#/series?open=demo-data/lots.cabin.json',
  ]);
  expect(await faultsOfAccess(workbench)).toEqual([]);
});

/** What the map draws: its joints are lines of few paths, found by where they run. */
const onMap = (): { readonly input: { readonly joints: readonly { readonly id: string }[] }; readonly rested: ReadonlySet<string> } =>
  one('adjoin-cabin-map') as unknown as ReturnType<typeof onMap>;

test('a dropped cabin opens: every joint on the wall and on the map, and said aloud', async () => {
  drop(cabinFile());
  await opened();
  expect(all('adjoin-strip')).toHaveLength(6);
  expect(onMap().input.joints.map(({ id }) => id).sort()).toEqual(['j1', 'j2', 'j3', 'j4', 'j5', 'j6']);
  await until('the lines of the joints', () => one('.joint-lines path'));
  await until('the announcement', () => /Small cabin for tests is open: \d+ joints? holds?/.test(one('[role=status]')?.textContent ?? ''));
  expect(location.hash).toBe('#/cabin');
  expect(document.title).toContain('Small cabin for tests');
  expect(await faultsOfAccess(workbench)).toEqual([]);
});

test('a faulty file lists its faults with line and column, and what was open stays open', async () => {
  drop(cabinFile());
  await opened();
  drop(new File(['{\n  "format": "adjoin-cabin",\n  "version": 1,\n  "name": 7\n}'], 'faulty.cabin.json'));
  const dialog = await until('the list of faults', () => one<HTMLDialogElement>('dialog[open]'));
  const words = dialog.textContent?.replace(/\s+/g, ' ') ?? '';
  expect(words).toContain('faulty.cabin.json was not opened');
  expect(words).toMatch(/line 4, column \d+/);
  expect(words).toContain('Small cabin for tests stays open as it was');
  expect(all('dialog tbody tr').length).toBeGreaterThan(1);
  expect(all('adjoin-strip')).toHaveLength(6);
  await userEvent.keyboard('{Escape}');
  await until('the list to close', () => one('dialog[open]') === undefined);
  expect(all('adjoin-strip')).toHaveLength(6);
});

test('a file that is not JSON, and several files at once, are refused with what was expected', async () => {
  drop(new File(['not json'], 'notes.txt'));
  expect((await until('the list of faults', () => one('dialog[open]'))).textContent).toContain('notes.txt was not opened');
  await userEvent.keyboard('{Escape}');
  await until('the list to close', () => one('dialog[open]') === undefined);
  drop(cabinFile(), cabinFile());
  expect((await until('the list of faults', () => one('dialog[open]'))).textContent).toContain('one cabin file');
  expect(one('adjoin-start')).toBeDefined();
});

test('from search to the first strip, into the joint and back, by keyboard alone', async () => {
  drop(cabinFile());
  await opened();
  one<HTMLInputElement>('input[type=search]')?.focus();
  await userEvent.keyboard('console');
  await until('the filter', () => all('adjoin-strip').length === 2);
  expect(location.hash).toBe('#/cabin?q=console');
  for (let i = 0; i < 5; i += 1) await userEvent.keyboard('{Tab}');
  const link = activeElement() as HTMLAnchorElement;
  expect(link.getRootNode()).toBe(one('adjoin-strip')?.shadowRoot);
  await userEvent.keyboard('{ArrowDown}');
  expect(activeElement()?.getRootNode()).toBe(all('adjoin-strip')[1]?.shadowRoot);
  await userEvent.keyboard('{ArrowUp}{Enter}');
  await until('the joint', () => one('.lead h1'));
  await frames(3);
  expect(location.hash).toMatch(/^#\/joint\/j\d\?q=console$/);
  expect(activeElement()).toBe(one('.lead h1'));
  history.back();
  await until('the wall again', () => one('adjoin-strip'));
  expect(all('adjoin-strip')).toHaveLength(2);
  expect(one<HTMLInputElement>('input[type=search]')?.value).toBe('console');
});

test('Shift with an arrow key goes to the next joint of the wall and back', async () => {
  drop(cabinFile());
  await opened();
  const order = all('adjoin-strip').map((strip) => (strip as HTMLElement & { result: { id: string } }).result.id);
  location.hash = `#/joint/${order[0]}`;
  await until('the first joint', () => one('.lead h1'));
  await userEvent.keyboard('{Shift>}{ArrowRight}{/Shift}');
  await until('the second joint', () => location.hash === `#/joint/${order[1]}`);
  await userEvent.keyboard('{Shift>}{ArrowLeft}{/Shift}');
  await until('the first joint again', () => location.hash === `#/joint/${order[0]}`);
});

test('another light repaints the samples, stays in the address and does not touch the verdicts', async () => {
  drop(cabinFile());
  await opened();
  const fills = (): (string | null)[] => all<SVGElement>('.face .sample').map((face) => face.getAttribute('fill'));
  const uses = (): string[] => all('.use').map((use) => use.textContent ?? '');
  const [colours, verdicts] = [fills(), uses()];
  one<HTMLButtonElement>('.now')?.click();
  const choice = await until('the light A', () => all<HTMLButtonElement>('.light').find((button) => button.querySelector('.name')?.textContent?.startsWith('A')));
  choice.click();
  await settled(workbench);
  expect(location.hash).toBe('#/cabin?light=A');
  expect(fills()).not.toEqual(colours);
  expect(uses()).toEqual(verdicts);
});

test('the sweep goes through the lights of the rules', async () => {
  drop(cabinFile());
  await opened();
  const light = (): string | null => new URLSearchParams(location.hash.split('?')[1]).get('light');
  one<HTMLButtonElement>('.sweep')?.click();
  await frames(2);
  const first = light();
  expect(first).not.toBeNull();
  await until('the next light of the sweep', () => light() !== first, 10_000);
  one<HTMLButtonElement>('.sweep')?.click();
  await frames(2);
  const stopped = light();
  await new Promise((resolve) => setTimeout(resolve, 2200));
  expect(light()).toBe(stopped);
});

test('an address opens a cabin, its joint and its light; an unknown light is daylight', async () => {
  const address = URL.createObjectURL(cabinFile());
  location.hash = `#/joint/j2?light=FL11&open=${encodeURIComponent(address)}`;
  await until('the joint', () => one('.lead h1'));
  expect(one('.lead h1')?.textContent?.replace(/\s+/g, ' ').trim()).toMatch(/(Dash lower|Door left) meets (Dash lower|Door left)/);
  expect(one('.now .name')?.textContent).toContain('FL11');
  location.hash = `#/joint/j2?light=moonlight&open=${encodeURIComponent(address)}`;
  await until('daylight', () => one('.now .name')?.textContent?.includes('D65'));
  location.hash = `#/joint/gone?open=${encodeURIComponent(address)}`;
  await until('the word that there is none', () => one('.missing h1')?.textContent?.includes('no joint “gone”'));
  URL.revokeObjectURL(address);
});

test('an address that leads nowhere is a fault, not an empty page', async () => {
  location.hash = '#/cabin?open=demo-data/no-such.cabin.json';
  expect((await until('the list of faults', () => one('dialog[open]'))).textContent).toContain('no-such.cabin.json was not opened');
});

test('what the address filters is counted against all joints', async () => {
  drop(cabinFile());
  await opened();
  location.hash = '#/cabin?zone=console';
  await until('the filter', () => all('adjoin-strip').length === 2);
  expect(one('.count')?.textContent).toBe('2 of 6 joints');
  expect(onMap().rested.size).toBe(4);
  await until('the lines of the others', () => one('path.rested'));
});
