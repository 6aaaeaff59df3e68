import { page, userEvent } from 'vitest/browser';
import { beforeEach, describe, expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { serialiseRuleBook } from '../../src/rules/index.ts';
import { defaultBook } from '../../src/rules/default-book.ts';
import { coloured } from '../harmony/compare/coloured.ts';
import { faultsOfAccess, frames, setScheme, settled, until } from '../support/screen.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { glosses, twoPartCabin } from '../support/two-part-cabin.ts';
import { addressOf, all, desk, drop, eachWithWorkbench, one, wordsOf, workbench } from '../support/whole-workbench.ts';

/** The place of the rule book, in the whole workbench. Limits expected are those of the table of classes: moulded 0.7 and 0.5 GU at 60 degrees, common practice, no source. */
eachWithWorkbench();
beforeEach(() => page.viewport(1300, 900));

/** Two moulded panels of one colour, 0.4 GU apart: 80 % of the 0.5 GU that the class allows. */
const panels = (more: Partial<Cabin> = {}): Cabin => twoPartCabin(
  { readings: [...coloured([30, 0, -1]), ...glosses(2)], gloss60: null }, { readings: [...coloured([30, 0, -1]), ...glosses(2.4)], gloss60: null }, {}, { ruleBook: 'ciede2000', ...more });

async function visit(cabin: Cabin, options = ''): Promise<void> {
  location.hash = `#/rules?${options}open=${addressOf(cabin)}`;
  await until('the rules', () => one('adjoin-rules-view') !== undefined && desk().open?.judging === false, 60_000);
  await until('what is known of the joint', () => options.includes('see=compare') || one('adjoin-joint-choice') !== undefined);
  await settled(workbench());
}

/** The field of a label, wherever it is. */
const entry = (label: string): HTMLInputElement => {
  const found = all<HTMLLabelElement>('label[for=entry]').find((one) => wordsOf(one).startsWith(label))!;
  return (found.getRootNode() as ShadowRoot).querySelector('input')!;
};
const beside = (input: HTMLElement, selector: string): HTMLElement | null => (input.getRootNode() as ShadowRoot).querySelector(selector);
const write = async (input: HTMLInputElement, text: string): Promise<void> => {
  input.focus();
  await userEvent.clear(input);
  await userEvent.type(input, text.replaceAll(/[{[]/g, '$&$&'));
};
const section = (title: string): HTMLElement => all('summary').find((summary) => wordsOf(summary).startsWith(title))!;
const button = (words: string): HTMLButtonElement => all<HTMLButtonElement>('button').find((one) => wordsOf(one) === words)!;
const use = (): number => Math.round(100 * (desk().open?.judgement.joints[0]?.limitUse ?? Number.NaN));

test('a gloss limit is edited: what it would do is known before, the joint changes, one undo takes it back', async () => {
  await visit(panels());
  expect(use()).toBe(80);
  section('Gloss').click();
  const field = entry('Gloss limit');
  await write(field, '0.8');
  // 0.4 of 0.8 GU.
  await until('the trial', () => all('adjoin-trial-result').some((result) => /80%then50%/.test(wordsOf(result.shadowRoot).replaceAll(' ', ''))));
  expect(desk().open?.undo).toBeUndefined();
  expect(wordsOf(all('adjoin-trial-result')[0]?.shadowRoot)).toMatch(/No joint would change its verdict; 1 more would use more or less|would change its verdict/);
  await userEvent.keyboard('{Enter}');
  // What is applied stays in its field while it is judged.
  await settled(workbench());
  expect(field.value).toBe('0.8');
  await until('the joint', () => use() === 50);
  expect([field.value, beside(field, 'button')]).toEqual(['0.8', null]);
  expect(desk().open?.undo).toContain('of moulded in the rule book');
  desk().undo();
  await until('the joint as it was', () => use() === 80);
  await until('the field as it was', () => field.value === '0.5');
  expect(desk().present?.ruleBook).toBe('ciede2000');
});

test('a formula is checked with every key: the fault under its character, names by keyboard, the value on the chosen joint', async () => {
  await visit(panels());
  button('New rule for this pair').click();
  await until('the form', () => button('Add the rule') !== undefined);
  button('Add the rule').click();
  await until('the rule', () => one('adjoin-rule-editor') !== undefined);
  // Its fields are drawn one after the other.
  await until('its fields', () => all('adjoin-rule-editor').some(({ shadowRoot }) => [...shadowRoot?.querySelectorAll('adjoin-formula-field') ?? []].length > 1) && all('adjoin-formula-field').every((one) => one.shadowRoot?.querySelector('input') != null));
  const field = entry('Colour limit');
  await until('its value', () => field.value === '0.7');
  await write(field, '0.7 * gapMn');
  expect(beside(field, 'pre')?.textContent).toBe(`0.7 * gapMn\n${' '.repeat(6)}^`);
  expect(wordsOf(beside(field, '#found'))).toContain('Column 7: found "gapMn", expected a variable of the list');
  expect(field.getAttribute('aria-invalid')).toBe('true');
  await userEvent.keyboard('{Enter}');
  expect(desk().present?.ruleBook).toMatchObject({ rules: [{ id: 'metallised-pair' }, { colour: { limit: 0.7 } }] });
  // A sum of a length and an angle has no dimension; an assignment and a call of anything else are no formulas.
  for (const [text, said] of [['gapMm + gapArcmin', 'Column'], ['x = 1', 'Column 1'], ['import(1)', 'a function of the list'], ['9^9^9^9', 'Column'], ['-0.2', 'above 0']] as const) {
    await write(field, text);
    expect(wordsOf(beside(field, '#found')), text).toContain(said);
  }
  await write(field, '0.5 + 0.1 * gapM');
  await until('the names', () => beside(field, '[role=option]') !== null);
  expect(wordsOf(beside(field, '[role=option][aria-selected=true]'))).toContain('gapMm');
  await userEvent.keyboard('{Enter}');
  expect(field.value).toBe('0.5 + 0.1 * gapMm');
  // The gap is 1 mm.
  await until('the value', () => wordsOf(beside(field, '#found')).startsWith('0.600'));
  await userEvent.type(field, ' / 1');
  await userEvent.keyboard('{Escape}');
  await until('what was there', () => field.value === '0.7');
});

describe('against another book', () => {
  const stricter = { ...defaultBook, id: 'plant', name: 'Plant two', materials: defaultBook.materials.map((row) => (row.material === 'moulded' ? { ...row, gloss: { kind: 'limit', limit: 0.2, angle: 60, basis: 'x' } as const } : row)) };

  test('a file is judged by joint for joint, and taken in one step', async () => {
    await visit(panels());
    drop(new File([serialiseRuleBook(stricter)], 'plant-two.rules.json'));
    const row = await until('the table', () => one('tr[data-joint]'), 60_000);
    // 0.4 GU are 80 % of 0.5 and 200 % of 0.2.
    expect([...row.querySelectorAll('th, td.n')].map(wordsOf)).toEqual(['Panel A / Panel B', '80 %', '200 %', '+120 %']);
    expect(all('figure g.joint')).toHaveLength(1);
    for (const scheme of ['light', 'dark'] as const) {
      setScheme(scheme);
      await frames(2);
      expect(await faultsOfAccess(workbench())).toEqual([]);
    }
    button('Judge by Plant two').click();
    await until('the other book', () => use() === 200);
    expect(desk().open?.undo).toContain('Plant two');
    desk().undo();
    await until('the book as it was', () => use() === 80);
  });

  test('a file with faults is not taken, and each is listed with its line and column', async () => {
    await visit(panels(), 'see=compare&');
    const lines = serialiseRuleBook(stricter).split('\n');
    const line = lines.findIndex((text) => text.includes('"colourLimit": 0.7'));
    drop(new File([lines.with(line, lines[line]!.replace('0.7', '-0.7')).join('\n')], 'broken.rules.json'));
    const row = await until('the faults', () => one('.faults tbody tr'));
    expect([...row.querySelectorAll('td')].slice(0, 3).map(wordsOf)).toEqual([String(line + 1), String(lines[line]!.indexOf('0.7') + 1), 'materials[0].colourLimit']);
    expect(desk().present?.ruleBook).toBe('ciede2000');
  });
});

test('what the book wants to be read on an occasion is written in words, judges nothing, and one undo takes it back', async () => {
  await visit(panels(), 'see=book&');
  section('Readings wanted').click();
  const before = use();
  const wanted = await (async () => {
    await until('the rows', () => one('adjoin-readings-rows')?.shadowRoot?.querySelector('tbody input') != null);
    return [...one('adjoin-readings-rows')!.shadowRoot!.querySelectorAll<HTMLInputElement>('input')].find((input) => input.getAttribute('aria-label')!.startsWith('Readings wanted for'))!;
  })();
  const was = wanted.value;
  await write(wanted, '7 spots on two parts');
  await userEvent.keyboard('{Tab}');
  await until('the edit', () => desk().open?.undo === 'Change the readings wanted by the rule book');
  expect(desk().present?.ruleBook).toMatchObject({ readingsWanted: expect.arrayContaining([expect.objectContaining({ wanted: '7 spots on two parts' })]) });
  expect(use()).toBe(before);
  desk().undo();
  await until('the field as it was', () => wanted.value === was);
});

test('by keyboard alone: pair, class, limit, undo; the address keeps the place', async () => {
  await visit(smallCabin({ ruleBook: 'ciede2000' }), 'pair=moulded%2Bmoulded&');
  one('.cell[tabindex="0"]')!.focus();
  await userEvent.keyboard('{ArrowDown}{Enter}');
  await until('the next pair', () => one('[data-at="1 0"]')?.getAttribute('aria-pressed') === 'true' && /pair=moulded(%2B|\+)/.test(location.hash));
  const field = entry('Colour limit');
  field.focus();
  await userEvent.keyboard('{Control>}a{/Control}0.65');
  await until('it can be applied', () => beside(field, 'button.strong')?.getAttribute('aria-disabled') === 'false');
  await userEvent.keyboard('{Enter}');
  await until('the own book', () => typeof desk().present?.ruleBook === 'object');
  field.blur();
  await userEvent.keyboard('{Control>}z{/Control}');
  await until('undone', () => desk().present?.ruleBook === 'ciede2000');
});

test('rules of a pair stand in order with the one that wins, filtered by kind; removing is undone', async () => {
  const rules = [...defaultBook.rules, { id: 'panels', pair: ['moulded', 'moulded'], colour: { limit: 0.9 }, basis: 'x' }, { id: 'panels-gap', pair: ['moulded', 'moulded'], kind: 'gap', colour: { limit: 0.4 }, basis: 'x' }];
  await visit(panels({ ruleBook: { ...defaultBook, id: 'own', rules } }));
  const entries = (): string[] => all('button.entry').map((item) => `${wordsOf(item.querySelector('.name')).split(' ')[0]} ${wordsOf(item.querySelector('.place'))}`);
  expect(entries()).toEqual(['panels-gap wins here', 'panels applies, yields', 'classes applies, yields']);
  expect(wordsOf(one('.cell .by'))).toBe('by panels-gap');
  button('Remove').click();
  await until('the next rule', () => entries()[0] === 'panels wins here');
  desk().undo();
  await until('the rule again', () => entries()[0] === 'panels-gap wins here');
});

test('a cabin that another tab owns can be looked at, not changed; one without joints teaches', async () => {
  await visit(panels());
  // The tab says whose the cabin is once it has found out.
  await until('the lock', () => {
    (desk() as unknown as { lock(locked: boolean): void }).lock(true);
    return entry('Colour limit').readOnly;
  });
  const before = desk().present;
  expect(button('New rule for this pair').getAttribute('aria-disabled')).toBe('true');
  expect(desk().do('rule.remove', { rule: 'metallised-pair' }).done).toBe(false);
  expect(desk().present).toBe(before);
  await visit({ ...panels(), joints: [] });
  await until('what a rule book is', () => wordsOf(one('.teach')).includes('what two materials that meet must satisfy'));
});

test.each([['light', '', 1300], ['dark', '', 1300], ['light', 'see=classes&', 1300], ['dark', 'see=book&', 1300], ['light', 'as=list&', 1300], ['light', 'see=compare&', 1300], ['light', '', 320], ['light', 'see=book&', 320]] as const)('no fault of access, %s %s at %d px', async (scheme, options, width) => {
  await page.viewport(width, 900);
  setScheme(scheme);
  await visit(smallCabin({ ruleBook: 'ciede2000' }), options);
  for (const details of all<HTMLDetailsElement>('details')) details.open = true;
  await settled(workbench());
  expect(await faultsOfAccess(workbench())).toEqual([]);
});
