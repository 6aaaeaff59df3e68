import { expect, test } from 'vitest';
import { userEvent } from 'vitest/browser';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { AdjoinImportPlaces } from '../../components/views/import/adjoin-import-places.ts';
import '../../components/views/import/adjoin-import-places.ts';
import type { ImportItem } from '../../components/controllers/import-desk.ts';
import { deep, mount, until } from '../support/screen.ts';
import { smallCabin } from '../support/small-cabin.ts';

/** Places of a few specimens of a file in a cabin of so many parts: what is asked of the element is only what it shows. */
async function places(count: number, rows = 3): Promise<{ readonly selects: readonly HTMLSelectElement[]; readonly told: object[] }> {
  const small = smallCabin({ ruleBook: 'ciede2000' });
  const [first] = small.parts;
  const cabin: Cabin = { ...small, parts: Array.from({ length: count }, (_, at) => ({ ...first!, id: `part-${at}`, name: `Part ${at}` })) };
  const specimens = Array.from({ length: rows }, (_, at) => ({ part: `Row ${at}`, specimen: `row-${at}`, readings: 3 }));
  const item = { key: 'a', name: 'a.csv', choices: { parts: { 'Row 1': 'part-7' } }, found: { summary: { specimens } }, planned: { places: {} } } as unknown as ImportItem;
  const told: object[] = [];
  const element = await mount<AdjoinImportPlaces>('adjoin-import-places', { cabin, item, locked: false });
  element.addEventListener('adjoin-choices', (event) => told.push((event as CustomEvent<object>).detail));
  return { selects: deep<HTMLSelectElement>(element.shadowRoot!, 'select[aria-label^="Part for"]'), told };
}

test('of a few parts every row offers all', async () => {
  const { selects } = await places(100);
  expect(selects.map(({ options }) => options.length)).toEqual([103, 103, 103]);
});

test('of many rows each offers its own until it is gone to', async () => {
  const { selects } = await places(100, 20);
  expect(selects.map(({ options }) => options.length)).toEqual(Array.from({ length: 20 }, (_, at) => (at === 1 ? 4 : 3)));
  await userEvent.click(selects[2]!);
  await until('all parts', () => selects[2]?.options.length === 103);
});

test('of many a row offers its own until it is gone to, and all then, by pointer or by key', async () => {
  const { selects, told } = await places(2000);
  expect(selects.map(({ options }) => options.length)).toEqual([3, 4, 3]);
  expect(selects[1]?.selectedOptions[0]?.textContent).toBe('Part 7');
  selects[1]?.focus();
  await until('all parts', () => selects[1]?.options.length === 2003);
  expect(selects[1]?.value).toBe('part-7');
  await userEvent.selectOptions(selects[1]!, 'part-1999');
  expect(told).toMatchObject([{ parts: { 'Row 1': 'part-1999' } }]);
  selects[2]?.dispatchEvent(new PointerEvent('pointerdown', { bubbles: true }));
  await until('all parts of the other row', () => selects[2]?.options.length === 2003);
  expect(selects[0]?.options.length).toBe(3);
});
