import { afterEach, expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import { mostInList } from '../../components/model/matching.ts';
import '../../components/app/adjoin-choice.ts';
import type { AdjoinChoice } from '../../components/app/adjoin-choice.ts';
import { faultsOfAccess, mount, setScheme, settled } from '../support/screen.ts';

let element: AdjoinChoice;
let chosen: string[];
let asked: number;
const root = (): ShadowRoot => element.shadowRoot!;
const field = (): HTMLInputElement => root().querySelector('input')!;
const offers = (): string[] => [...root().querySelectorAll('li')].map((offer) => offer.textContent ?? '');
const active = (): string | undefined => root().getElementById(field().getAttribute('aria-activedescendant') ?? '')?.textContent ?? undefined;

async function show(count: number, properties: Partial<AdjoinChoice> = {}): Promise<void> {
  [chosen, asked] = [[], 0];
  const choices = (): { id: string; name: string }[] => {
    asked += 1;
    return Array.from({ length: count }, (_, place) => ({ id: `part-${place}`, name: `Part ${place}` }));
  };
  element = await mount<AdjoinChoice>('adjoin-choice', { label: 'Lock a part…', name: 'lock', count, choices, ...properties });
  element.addEventListener('adjoin-chosen', (event) => chosen.push((event as CustomEvent<string>).detail));
}

afterEach(() => {
  document.body.replaceChildren();
  setScheme('light');
});

test('a few choices are a list to pick from, empty again after each', async () => {
  await show(mostInList);
  const select = root().querySelector('select')!;
  expect(select.options.length).toBe(mostInList + 1);
  await userEvent.selectOptions(select, 'part-7');
  expect(chosen).toEqual(['part-7']);
  expect(select.value).toBe('');
});

test('of thousands none is made before the field is opened; words find one, the keys take it', async () => {
  await show(2000);
  expect(root().querySelector('select')).toBeNull();
  expect([asked, offers().length, field().getAttribute('aria-expanded')]).toEqual([0, 0, 'false']);
  field().focus();
  await userEvent.keyboard('{ArrowDown}');
  await settled(element);
  expect([asked, active(), field().getAttribute('aria-expanded')]).toEqual([1, 'Part 0', 'true']);
  expect(offers().length).toBeLessThan(100);
  expect(root().querySelector('[role=status]')!.textContent).toContain('of 2000 matches');
  for (const scheme of ['light', 'dark'] as const) {
    setScheme(scheme);
    expect(await faultsOfAccess(element)).toEqual([]);
  }
  await userEvent.keyboard('part 199');
  await settled(element);
  // All of 0 to 1999 that hold 199; the one whose name does not begin so comes last.
  expect(offers()).toEqual(['Part 199', ...Array.from({ length: 10 }, (_, place) => `Part 199${place}`), 'Part 1199']);
  await userEvent.keyboard('{ArrowDown}{ArrowDown}{ArrowUp}');
  await settled(element);
  expect(active()).toBe('Part 1990');
  await userEvent.keyboard('{Enter}');
  await settled(element);
  expect(chosen).toEqual(['part-1990']);
  expect([field().value, offers().length, field().getAttribute('aria-expanded')]).toEqual(['', 0, 'false']);
});

test('Escape closes what is offered and takes nothing; words that nothing has say so', async () => {
  await show(2000);
  field().focus();
  await userEvent.keyboard('door');
  await settled(element);
  expect([offers(), root().querySelector('[role=status]')!.textContent]).toEqual([[], 'Nothing has these words.']);
  await userEvent.keyboard('{Enter}{Escape}');
  await settled(element);
  expect([chosen, field().getAttribute('aria-expanded')]).toEqual([[], 'false']);
});

test('by the pointer too; where it keeps, what was chosen stays until other words are written', async () => {
  await show(2000, { keeps: true });
  await userEvent.click(field());
  await settled(element);
  await userEvent.click(root().querySelectorAll('li')[2]!);
  await settled(element);
  expect([chosen, element.value, field().value]).toEqual([['part-2'], 'part-2', 'Part 2']);
  await userEvent.type(field(), '5');
  expect(element.value).toBe('');
});

test('words that are half written give way to what was chosen; an emptied field takes it back where it may', async () => {
  await show(2000, { keeps: true, clears: true, given: { id: 'part-4', name: 'Part 4' }, hint: 'none' });
  expect([element.value, field().value, asked]).toEqual(['part-4', 'Part 4', 0]);
  await userEvent.fill(field(), 'part 19');
  await userEvent.keyboard('{Tab}');
  await settled(element);
  expect([element.value, field().value, chosen]).toEqual(['part-4', 'Part 4', []]);
  await userEvent.fill(field(), 'part 19');
  await userEvent.keyboard('{Escape}');
  await settled(element);
  expect([element.value, field().value, field().getAttribute('aria-expanded')]).toEqual(['part-4', 'Part 4', 'false']);
  await userEvent.clear(field());
  await userEvent.keyboard('{Tab}');
  await settled(element);
  expect([element.value, field().value, field().placeholder, chosen]).toEqual(['', '', 'none', ['']]);
  element.clears = false;
  element.given = { id: 'part-7', name: 'Part 7' };
  await settled(element);
  await userEvent.clear(field());
  await userEvent.keyboard('{Tab}');
  await settled(element);
  expect([element.value, field().value, chosen]).toEqual(['part-7', 'Part 7', ['']]);
});

test('a refusal is told with the field, and a label about it leads there', async () => {
  await show(2000, { keeps: true, invalid: true, fault: 'Its own mirror' });
  expect(field().getAttribute('aria-invalid')).toBe('true');
  expect(root().getElementById(field().getAttribute('aria-describedby') ?? '')?.textContent).toBe('Its own mirror');
  const label = document.createElement('label');
  label.append('Mirror of', element);
  document.body.append(label);
  await settled(element);
  await userEvent.click(label, { position: { x: 4, y: 4 } });
  expect(root().activeElement).toBe(field());
  expect(await faultsOfAccess(element)).toEqual([]);
});
