import { expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import { bigCabin } from '../bench/big-cabin.ts';
import { faultsOfAccess, frames, until } from '../support/screen.ts';
import { all, eachWithWorkbench, one, openByDrop } from '../support/whole-workbench.ts';

const count = 1500;
const table = (): HTMLElement => one('adjoin-part-table')!;
const rows = (): HTMLElement[] => [...table().shadowRoot!.querySelectorAll<HTMLElement>('tr[data-place]')];
const partOf = (row: Element): string => row.querySelector('a')!.textContent!;
const focused = (): string | undefined => rows().filter((row) => row.matches(':focus-within')).map(partOf)[0];

/** The part whose row is seen at a height of the table, below its head. */
function seenAt(px: number): string | undefined {
  const { top } = table().getBoundingClientRect();
  const row = rows().find((one) => one.getBoundingClientRect().top <= top + px && one.getBoundingClientRect().bottom > top + px);
  return row === undefined ? undefined : partOf(row);
}

async function open(): Promise<void> {
  await page.viewport(1440, 900);
  await openByDrop(bigCabin({ parts: count, joints: 20, seed: 3 }));
  location.hash = '#/parts';
  await until('the rows', () => one('adjoin-part-table') !== undefined && rows().length > 20);
  await frames(6);
}

eachWithWorkbench();

test('of all parts those about what is seen have their rows, each with its place among all of them; the head stays', async () => {
  await open();
  expect(rows().length).toBeLessThan(120);
  const inside = table().shadowRoot!.querySelector('table')!;
  expect(inside.getAttribute('aria-rowcount')).toBe(String(count + 1));
  expect(rows()[0]!.getAttribute('aria-rowindex')).toBe('2');
  // At least 30 px a row, so that the bar says how long the list is.
  expect(table().scrollHeight).toBeGreaterThan(30 * count);
  for (const share of [0.5, 0.97, 0.2, 0]) {
    table().scrollTop = share * table().scrollHeight;
    const part = await until('a row in the middle', () => seenAt(400));
    expect(Math.abs(Number(part.slice(5)) / count - share)).toBeLessThan(0.02);
    expect(rows().length).toBeLessThan(160);
    const head = inside.querySelector('thead th')!.getBoundingClientRect();
    expect(Math.abs(head.top - table().getBoundingClientRect().top)).toBeLessThan(2);
  }
  expect(await faultsOfAccess(table())).toEqual([]);
});

test('columns keep their widths wherever one scrolls', async () => {
  await open();
  const widths = (): number[] => [...table().shadowRoot!.querySelectorAll('thead th')].map((cell) => Math.round(cell.getBoundingClientRect().width));
  const before = widths();
  table().scrollTop = 20_000;
  await until('rows there', () => seenAt(400));
  expect(widths()).toEqual(before);
});

test('the keys reach the last row and the first, Enter opens a part, and back leads to its row with the focus on it', async () => {
  await open();
  rows()[0]!.querySelector('a')!.focus();
  await userEvent.keyboard('{ArrowDown}');
  await until('the second', () => focused() === 'Part 1');
  await userEvent.keyboard('{End}');
  await until('the last', () => focused() === `Part ${count - 1}`);
  await userEvent.keyboard('{PageUp}{ArrowUp}');
  await until('nine before', () => focused() === `Part ${count - 10}`);
  expect(all('adjoin-part-table a[tabindex="0"]').length).toBeLessThanOrEqual(1);
  location.hash = '#/rules';
  await until('the rules', () => one('adjoin-rules-view'));
  history.back();
  await until('the row', () => one('adjoin-part-table') !== undefined && focused() === `Part ${count - 10}` && seenAt(500) !== undefined);
  await userEvent.keyboard('{Home}');
  await until('the first', () => focused() === 'Part 0' && table().scrollTop < 60);
});

test('an address of a part far down shows its row and the part beside it', async () => {
  await open();
  location.hash = '#/parts/part-1200';
  await until('the part', () => one('adjoin-part-panel'));
  const row = await until('its row', () => rows().find((one) => one.classList.contains('here')));
  await until('the row in sight', () => {
    const [frame, box] = [table().getBoundingClientRect(), row.getBoundingClientRect()];
    return box.top >= frame.top && box.bottom <= frame.bottom + 1;
  });
  expect(partOf(row)).toBe('Part 1200');
});

test('a search leaves what passes, at the top; none says so', async () => {
  await open();
  table().scrollTop = 20_000;
  await until('rows there', () => seenAt(400));
  const search = all<HTMLInputElement>('adjoin-parts-view input[type=search], input[aria-label="Search parts"]')[0]!;
  search.value = 'part 149';
  search.dispatchEvent(new Event('input', { bubbles: true }));
  // 149, 1149 and 1490 to 1499: those of 0 to 1499 that hold 149.
  await until('what passes', () => rows().length === 12 && seenAt(45) === 'Part 149');
  search.value = 'door';
  search.dispatchEvent(new Event('input', { bubbles: true }));
  await until('that none passes', () => table().shadowRoot!.querySelector('.none'));
});

test('all rows go on paper', async () => {
  await open();
  dispatchEvent(new Event('beforeprint'));
  await until('the rows for paper', () => rows().length === count);
  dispatchEvent(new Event('afterprint'));
  await until('fewer again', () => rows().length < 160);
});
