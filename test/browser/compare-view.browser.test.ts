import { expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { coloured } from '../harmony/compare/coloured.ts';
import { faultsOfAccess, frames, setScheme, until } from '../support/screen.ts';
import { glosses, twoPartCabin } from '../support/two-part-cabin.ts';
import { drop, eachWithWorkbench, one, openByDrop, workbench, wordsOf as words } from '../support/whole-workbench.ts';

/** A cabin set against another one: what begins to clash is seen on the map, as a strip and in the table. */
eachWithWorkbench();

const square = (left: number): readonly (readonly [number, number])[] => [[left, 0], [left + 100, 0], [left + 100, 100], [left, 100]];
/** The second part is darker by that much; with 3 and more the pair cannot hold. */
function cabinOf(darker: number): Cabin {
  const cabin = twoPartCabin({ readings: [...coloured([30, 0, -1]), ...glosses(2)], gloss60: null }, { readings: [...coloured([30 - darker, 0, -1]), ...glosses(2)], gloss60: null });
  return { ...cabin, ruleBook: 'ciede2000', parts: cabin.parts.map((part, index) => ({ ...part, outline: square(101 * index) as Cabin['parts'][number]['outline'] })) };
}

test('begins empty, takes another cabin, and shows what changed', async () => {
  await openByDrop(cabinOf(4));
  location.hash = '#/compare';
  const view = await until('the view', () => one('adjoin-compare-view')?.shadowRoot ?? undefined);
  await until('the empty view', () => view.querySelector('.empty'));
  expect(await faultsOfAccess(workbench())).toEqual([]);

  const file = new File([serialiseCabin(cabinOf(0))], 'before.cabin.json');
  drop(file);
  const list = await until('the strips', () => view.querySelector('adjoin-change-list')?.shadowRoot ?? undefined);
  await until('a joint', () => list.querySelector('li'));
  expect(words(list.querySelector('.names'))).toBe('Panel A and Panel B');
  expect(words(list.querySelector('.words'))).toBe('holdsthenclashes');
  expect(words(view.querySelector('.lead'))).toContain('1 joint begins to clash without a decision');
  expect(list.querySelectorAll('.pair svg')).toHaveLength(2);
  for (const scheme of ['light', 'dark'] as const) {
    setScheme(scheme);
    await frames(2);
    expect(await faultsOfAccess(workbench())).toEqual([]);
  }

  location.hash = '#/compare?as=table';
  const row = await until('the table', () => view.querySelector('.body.table tbody tr'));
  expect([...row.querySelectorAll('th, td')].slice(0, 4).map(words)).toEqual(['Panel A and Panel B', 'worse verdict', 'holds', 'clashes']);
  // The second part became 4 darker: trial minus standard in lightness.
  const parts = [...view.querySelectorAll('table')].at(-1);
  expect([...(parts?.querySelectorAll('tbody th, tbody td') ?? [])].slice(0, 4).map(words)).toEqual(['Panel B', 'An invented maker', 'An invented maker', '\u22124.00']);
  expect(await faultsOfAccess(workbench())).toEqual([]);

  location.hash = '#/compare?kind=better';
  await until('nothing of that kind', () => words(view.querySelector('.nothing')) === 'No joint is less of the limit.');
});

test('refuses what is no cabin with its faults', async () => {
  await openByDrop(cabinOf(0));
  location.hash = '#/compare';
  const view = await until('the view', () => one('adjoin-compare-view')?.shadowRoot ?? undefined);
  drop(new File(['{"format":'], 'broken.cabin.json'));
  await until('the faults', () => words(view.querySelector('.faults')).startsWith('Not taken'));
});
