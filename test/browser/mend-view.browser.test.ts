import { expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { judge } from '../../src/harmony/index.ts';
import { proposedCabin } from '../../src/plan/proposal/proposed-cabin.ts';
import { defaultBook } from '../../src/rules/default-book.ts';
import { plannedCabin } from '../plan/support/planned-cabin.ts';
import { faultsOfAccess, setScheme, settled, until } from '../support/screen.ts';
import { addressOf, all, desk, eachWithWorkbench, one, wordsOf, workbench } from '../support/whole-workbench.ts';

/** The place where parts are mended, in the whole workbench with its workers. */
const words = (selector: string): string => wordsOf(one(selector));
const planned = (): Promise<unknown> => until('the plan', () => words('.said') !== '' && one('.running') === undefined, 60_000);

async function visit(cabin: Cabin, options = ''): Promise<void> {
  const address = addressOf({ ...cabin, ruleBook: 'ciede2000' });
  location.hash = `#/mend?${options}open=${address}`;
  await planned();
  await settled(workbench());
}

/** A chain of parts that scatter enough for some of their joints to clash. */
const scattered = plannedCabin(5, { parts: 6, sources: 1, scatter: 0.08, glossScatter: 0.02 });

eachWithWorkbench();

test('cards say what each supplier is asked for; kept as proposals in one step, at which every mended joint holds, and undone', async () => {
  await visit(scattered);
  const before = desk().present!;
  const now = judge(before, defaultBook);
  expect(now.summary.clashes).toBeGreaterThan(0);
  const cards = all('adjoin-mend-card');
  expect(cards.length).toBeGreaterThan(0);
  for (const card of cards) expect(card.shadowRoot!.textContent).toContain('not a forecast of a recipe');
  all<HTMLButtonElement>('.apply button')[0]!.click();
  await until('the proposals', () => words('.apply button') === 'Kept as proposals');
  const after = desk().present!;
  // A target is no reading: nothing but the proposals differs.
  expect(after.parts).toEqual(before.parts);
  expect(after.joints.map(({ proposals, ...joint }) => joint)).toEqual(before.joints.map(({ proposals, ...joint }) => joint));
  const proposed = after.joints.filter(({ proposals }) => proposals !== undefined);
  expect(proposed.length).toBeGreaterThan(0);
  for (const joint of proposed.filter(({ id }) => now.joints.find((result) => result.id === id)!.verdict === 'clashes')) {
    const { cabin } = proposedCabin(after, joint.id, joint.proposals![0]!, { stage: 'new', observer: 10 });
    expect(judge(cabin, defaultBook).joints.find(({ id }) => id === joint.id)!.verdict).toBe('holds');
  }
  desk().undo();
  expect(desk().present).toBe(before);
});

test('with every part locked there is no plan within reach, and the joint that makes it so can be left out', async () => {
  await visit(scattered, `lock=${scattered.parts.map(({ id }) => id).join(',')}&`);
  expect(words('h1')).toBe('No plan within reach');
  const rows = all('section tbody tr');
  expect(rows.length).toBeGreaterThan(0);
  const leave = all<HTMLButtonElement>('section tbody button')[0]!;
  leave.click();
  await until('the plan without it', () => location.hash.includes('except=j') && words('[aria-label^="Let go"]') !== '', 30_000);
  await planned();
});

test('a part that is locked in the form is in no card', async () => {
  await visit(scattered);
  const select = one<HTMLSelectElement>('select[name=lock]')!;
  const changed = all('adjoin-mend-card').map((card) => card.shadowRoot!.querySelector('h3')!.textContent!.trim());
  const part = scattered.parts.find(({ name }) => name === changed[0])!;
  select.value = part.id;
  select.dispatchEvent(new Event('change', { bubbles: true }));
  await until('the document', () => desk().present?.parts.find(({ id }) => id === part.id)?.mend?.locked === true);
  await until('the plan without the part', () => one('.running') === undefined && words('.said') !== ''
    && !all('adjoin-mend-card').some((card) => card.shadowRoot!.querySelector('h3')!.textContent!.trim() === part.name), 60_000);
});

test('the reach of a material is set in the form, the document keeps it, the plan keeps to it and its cards say whose it is', async () => {
  await visit(scattered);
  const field = one<HTMLInputElement>('input[name=reach][data-material=moulded][data-axis=b]')!;
  expect(field.placeholder).toBe('1.5');
  field.value = '0.1';
  field.dispatchEvent(new Event('change', { bubbles: true }));
  await until('the plan within it', () => desk().present?.planning?.reach?.['moulded']?.b === 0.1 && one('.running') === undefined && all('adjoin-mend-card').every((card) => card.shadowRoot!.textContent!.includes('±0.1 b* ') || card.shadowRoot!.textContent!.includes('as set for this plan')), 60_000);
  const shifts = all('section table').find((table) => table.querySelector('caption')?.textContent?.startsWith('Shifts'));
  for (const row of shifts?.querySelectorAll('tbody tr') ?? []) expect(Math.abs(Number(row.querySelectorAll('td')[2]!.textContent!.replace('−', '-')))).toBeLessThanOrEqual(0.1);
  // One step of undo takes it back, and the plan with it.
  desk().undo();
  await until('the assumed reach', () => desk().present?.planning === undefined && one<HTMLInputElement>('input[name=reach][data-material=moulded][data-axis=b]')!.value === '');
});

test('with the cheapest set asked for, the cost of a part is set and decides', async () => {
  await visit(scattered, 'aim=cheapest&');
  const changed = all('adjoin-mend-card').map((card) => card.shadowRoot!.querySelector('h3')!.textContent!.trim());
  const part = scattered.parts.find(({ name }) => name === changed[0])!;
  const choice = one<HTMLSelectElement>('select[name=part]')!;
  choice.value = part.id;
  choice.dispatchEvent(new Event('change', { bubbles: true }));
  await until('its fields', () => one(`input[name=cost][data-part=${part.id}]`) !== undefined);
  const field = one<HTMLInputElement>(`input[name=cost][data-part=${part.id}]`)!;
  field.value = '9000000';
  field.dispatchEvent(new Event('change', { bubbles: true }));
  await until('the plan with that cost', () => desk().present?.parts.find(({ id }) => id === part.id)?.mend?.cost === 9_000_000 && one('.running') === undefined && words('.said') !== '', 60_000);
  await until('what it costs', () => /The changes cost [\d\s\u00a0]+ in all/.test(words('.said')));
});

test('terms that an address asks for are told, and kept in the cabin in one step, or let go', async () => {
  const [first, second] = scattered.parts;
  await visit(scattered, `lock=${first!.id}&reach=moulded:1:1:1:1&time=9&`);
  expect(all('[role=status] b').map(wordsOf)).toContain('This address plans with terms of its own.');
  const before = desk().present!;
  all<HTMLButtonElement>('button').find(({ textContent }) => textContent === 'Keep them in the cabin')!.click();
  await until('the terms in the cabin', () => desk().present?.planning?.timeLimitS === 9 && !location.hash.includes('lock='));
  expect(desk().present!.parts.map(({ mend }) => mend?.locked)).toEqual(scattered.parts.map(({ id }) => (id === first!.id ? true : undefined)));
  expect(desk().present!.planning?.reach).toEqual({ moulded: { L: 1, a: 1, b: 1, gloss: 1 } });
  desk().undo();
  expect(desk().present).toBe(before);
  await visit(scattered, `cost=${second!.id}=5&`);
  all<HTMLButtonElement>('button').find(({ textContent }) => textContent === 'Plan as the cabin says')!.click();
  await until('the address without them', () => !location.hash.includes('cost='));
});

test('a card is saved as a text for its supplier, all of them as a table', async () => {
  await visit(scattered);
  const saved: string[] = [];
  const click = HTMLAnchorElement.prototype.click;
  HTMLAnchorElement.prototype.click = function clicked(this: HTMLAnchorElement) { saved.push(this.download); };
  try {
    all('adjoin-mend-card')[0]!.shadowRoot!.querySelector('button')!.click();
    all<HTMLButtonElement>('.tools button').find(({ textContent }) => textContent === 'Save all as CSV')!.click();
    all<HTMLButtonElement>('.send button')[0]!.click();
  } finally {
    HTMLAnchorElement.prototype.click = click;
  }
  expect(saved).toEqual([expect.stringMatching(/^planned-5-mend-p\d\.txt$/), 'planned-5-mend.csv', expect.stringMatching(/^planned-5-mend-(ferrow|quill|tarn)\.txt$/)]);
});

test('an empty cabin, one part, and parts that no joint ties are answered in words', async () => {
  for (const [cabin, expected] of [
    [plannedCabin(1, { parts: 0 }), 'This cabin has no parts yet.'], [plannedCabin(2, { parts: 1 }), 'No two parts of this cabin are joined yet.'], [{ ...plannedCabin(3, { parts: 3 }), joints: [] }, 'No two parts of this cabin are joined yet.'],
  ] as const) {
    location.hash = `#/mend?open=${addressOf({ ...cabin, ruleBook: 'ciede2000' })}`;
    await until(expected, () => desk().open?.cabin.id === cabin.id && words('.teach').includes(expected), 30_000);
  }
});

test.each(['light', 'dark'] as const)('it has no fault of access, %s', async (scheme) => {
  setScheme(scheme);
  await visit(scattered);
  expect(await faultsOfAccess(workbench())).toEqual([]);
});
