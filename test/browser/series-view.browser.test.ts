import { expect, test } from 'vitest';
import { fixed } from '../../src/report/number-text.ts';
import { defaultBook } from '../../src/rules/default-book.ts';
import { cabinSeries } from '../../src/series/index.ts';
import type { PlannedLot } from '../series/support/lot-cabin.ts';
import { lotCabin } from '../series/support/lot-cabin.ts';
import { faultsOfAccess, setScheme, settled, until } from '../support/screen.ts';
import { addressOf, all, eachWithWorkbench, one, wordsOf, workbench } from '../support/whole-workbench.ts';

/** The place of lots over time, in the whole workbench with its workers. */
const words = (selector: string): string => wordsOf(one(selector));

/** Eight lots that become yellower, and six of a neighbour that scatter a little, the last astray. */
const drifting: PlannedLot[] = Array.from({ length: 8 }, (_, lot) => ({ id: `A${lot}`, day: 10 * lot, lab: [30 + 0.03 * ((3 * lot) % 5), 0.4 + 0.01 * ((lot * lot) % 7), -1 + 0.05 * lot] }));
const steady: PlannedLot[] = Array.from({ length: 6 }, (_, lot) => ({ id: `B${lot}`, day: 12 * lot, lab: [30 + 0.02 * ((2 * lot) % 5), 0.4 + 0.01 * ((lot * lot) % 5), -1 + (lot === 5 ? 0.9 : 0.02 * ((lot * 7) % 4))] }));
const cabin = { ...lotCabin(drifting, steady), ruleBook: 'ciede2000' };

async function visit(options = '', of = cabin): Promise<void> {
  location.hash = `#/series?${options}open=${addressOf(of)}`;
  await until('the series', () => one('#build') !== undefined && one('.running') === undefined, 60_000);
  await settled(workbench());
}

const pick = (name: string, value: string): void => {
  const select = one<HTMLSelectElement>(`select[name=${name}]`)!;
  select.value = value;
  select.dispatchEvent(new Event('change', { bubbles: true }));
};

eachWithWorkbench();

test('says which joint clashes first, and shows lots, forecast and pairs as the core reckons them', async () => {
  await visit();
  const found = await cabinSeries(cabin, defaultBook);
  expect(words('.lead')).toContain('First to clash: Panel A and Panel B');
  const [forecast] = found.joints;
  expect(words('#forecast ~ .scroll tbody tr')).toContain(forecast.when!.day);
  expect(words('#forecast ~ .scroll tbody tr')).toContain(forecast.earliest!.day);
  const rows = all('.which:has(#lots) ~ .scroll tbody tr').filter((row) => drifting.some(({ id }) => wordsOf(row).includes(id)));
  expect(rows).toHaveLength(8);
  found.parts[0].lots.forEach((lot, index) => expect(wordsOf(rows[index])).toContain(fixed(lot.charted?.statistic, 1)));
  expect(all('.which:has(#build) ~ .scroll tbody tr')).toHaveLength(6);
  await until('the pictures', () => all('adjoin-drawn').length === 5 && all('adjoin-drawn').every((drawn) => drawn.shadowRoot!.querySelector('svg') !== null));
});

test('another part, other limits and another confidence stand in the address and change what is shown', async () => {
  await visit();
  pick('part', 'b');
  await until('the other part', () => words('#lots') === 'Lots of Panel B');
  expect(location.hash).toContain('part=b');
  const first = one<HTMLInputElement>('input[name=first]')!;
  first.value = '5';
  first.dispatchEvent(new Event('change', { bubbles: true }));
  await until('limits from five lots', () => one('.running') === undefined && all('td').some((cell) => wordsOf(cell).startsWith('a further lot')), 60_000);
  pick('confidence', '0.9');
  await until('the other confidence', () => one('.running') === undefined && words('.which:has(#lots) ~ .two figcaption').includes('90 %'), 60_000);
});

test('a lot that is not there is not planned with, and is put back', async () => {
  await visit();
  const box = (): HTMLInputElement => all<HTMLInputElement>('input[name=lot]').find(({ value }) => value === 'B5')!;
  box().click();
  await until('five sets', () => one('.running') === undefined && all('.which:has(#build) ~ .scroll tbody tr').length === 5, 60_000);
  expect(decodeURIComponent(location.hash)).toContain('b:B5');
  expect(words('.stock summary')).toBe('Lots that can be built: all but 1');
  box().click();
  await until('six sets', () => one('.running') === undefined && all('.which:has(#build) ~ .scroll tbody tr').length === 6, 60_000);
});

test('a cabin without two lots of any part is taught, and has nothing that runs', async () => {
  const few = { ...lotCabin(drifting.slice(0, 1), steady.slice(0, 1)), ruleBook: 'ciede2000' };
  location.hash = `#/series?open=${addressOf(few)}`;
  await until('the words', () => words('.teach').includes('No part has two lots yet'));
  expect(one('.running')).toBeUndefined();
});

test.each(['light', 'dark'] as const)('it has no fault of access, %s', async (scheme) => {
  setScheme(scheme);
  await visit();
  expect(await faultsOfAccess(workbench())).toEqual([]);
});
