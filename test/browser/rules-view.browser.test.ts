import { userEvent } from 'vitest/browser';
import { beforeEach, expect, test } from 'vitest';
import { smallCabin } from '../support/small-cabin.ts';
import { faultsOfAccess, setScheme, settled, until } from '../support/screen.ts';
import { addressOf, all, desk, eachWithWorkbench, one, workbench } from '../support/whole-workbench.ts';

/** The place of the rule book, in the whole workbench. */

eachWithWorkbench();

beforeEach(async () => {
  const address = addressOf(smallCabin({ ruleBook: 'ciede2000' }));
  location.hash = `#/rules?pair=moulded%2Bmoulded&open=${address}`;
  await until('the matrix', () => one('.matrix') !== undefined && desk().open?.judging === false, 60_000);
  await settled(workbench());
});

test('arrow keys go from pair to pair, Enter shows the rule', async () => {
  one('[data-at="0 0"]')!.focus();
  await userEvent.keyboard('{ArrowRight}{Enter}');
  await until('the pair', () => one('[data-at="0 1"]')?.getAttribute('aria-pressed') === 'true' && location.hash.includes('pair='));
});

test('a faulty formula shows where, a good one is saved as the cabin\'s own book and undone', async () => {
  const type = async (text: string): Promise<void> => {
    const field = one<HTMLInputElement>('input[name=limit]')!;
    field.value = text;
    field.dispatchEvent(new Event('input', { bubbles: true }));
    await settled(workbench());
  };
  await type('0.7 * gapMn');
  expect(one('#found')!.textContent).toContain('Column 7');
  await type('0.01 + 0 * gapMm');
  const before = desk().present!;
  all<HTMLButtonElement>('button').find(({ textContent }) => textContent?.includes('own book'))!.click();
  const book = desk().present!.ruleBook as { readonly rules: readonly { readonly pair: readonly string[]; readonly colour?: { readonly limit?: unknown } }[] };
  expect(book.rules.find(({ pair }) => pair.join() === 'moulded,moulded')?.colour?.limit).toBe('0.01 + 0 * gapMm');
  desk().undo();
  expect(desk().present).toBe(before);
});

test.each(['light', 'dark'] as const)('it has no fault of access, %s', async (scheme) => {
  setScheme(scheme);
  expect(await faultsOfAccess(workbench())).toEqual([]);
});
