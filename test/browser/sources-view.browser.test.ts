import { userEvent } from 'vitest/browser';
import { expect, test } from 'vitest';
import { sourceOf } from '../../src/cabin/source-of.ts';
import { plannedCabin } from '../plan/support/planned-cabin.ts';
import { faultsOfAccess, setScheme, settled, until } from '../support/screen.ts';
import { addressOf, all, desk, eachWithWorkbench, one, wordsOf, workbench } from '../support/whole-workbench.ts';

/** The place where sources are chosen, in the whole workbench with its workers. */
const words = (selector: string): string => wordsOf(one(selector));
const planned = (): Promise<unknown> => until('the plan', () => one('adjoin-source-choice') !== undefined && one('.running') === undefined, 60_000);
const button = (text: RegExp): HTMLButtonElement => all<HTMLButtonElement>('button').find((each) => text.test(`${each.textContent ?? ''}`.trim())) as HTMLButtonElement;

const small = plannedCabin(7, { parts: 6, sources: 3, scatter: 0.25 });

async function visit(address: string, options = ''): Promise<void> {
  location.hash = `#/sources?${options}open=${address}`;
  await planned();
  await settled(workbench());
}

async function visitSmall(options = ''): Promise<void> {
  const address = addressOf({ ...small, ruleBook: 'ciede2000' });
  await visit(address, options);
}

eachWithWorkbench();

test('the job of the material planner: a supplier drops out, a point of the front is picked, taken over in one step and taken back', async () => {
  await visit('/demo-data/shuttle-slate.cabin.json');
  const before = desk().present!;
  const dropped = all<HTMLInputElement>('input[name=without]').find((box) => box.value === 'pallendine')!;
  dropped.click();
  await until('the plan without it', () => location.hash.includes('without=pallendine') && one('.running') !== undefined);
  await planned();
  const plot = one('[role=slider]')!;
  expect(Number(plot.getAttribute('aria-valuemax'))).toBeGreaterThan(2);
  plot.focus();
  await userEvent.keyboard('{ArrowLeft}{ArrowLeft}');
  await until('the third point', () => location.hash.includes('point=3') && one('[role=slider]')?.getAttribute('aria-valuenow') === '3');
  await until('the swaps from it', () => one('.running') === undefined && words('.does').includes('Instead'));
  const apply = button(/^Apply: \d+ parts? to another source$/);
  const asked = Number(/\d+/.exec(apply.textContent ?? '')?.[0]);
  apply.click();
  const after = desk().present!;
  expect(after.parts.filter((part, index) => sourceOf(part).id !== sourceOf(before.parts[index]!).id)).toHaveLength(asked);
  // What is left of the supplier is what no other serves: the terms would else have no set.
  expect(after.parts.filter((part) => part.sources.some(({ supplier }) => supplier !== 'pallendine') && sourceOf(part).supplier === 'pallendine' && part.frozen !== true)).toEqual([]);
  await until('the judgement of the new set', () => desk().open?.cabin === after);
  const clashing = all('.picture tbody tr').find((row) => row.textContent?.includes('clashing for certain'))!.querySelectorAll('td')[1]!.textContent;
  expect(desk().open!.judgement.summary.clashes).toBe(Number(clashing));
  await until('the word that it stands by it', () => button(/^The cabin stands by this set$/));
  desk().undo();
  expect(desk().present).toBe(before);
}, 120_000);

test('what terms make impossible is said in words, and the form still stands', async () => {
  await visitSmall();
  const budget = one<HTMLInputElement>('input[name=budget]')!;
  budget.value = '10';
  budget.dispatchEvent(new Event('change', { bubbles: true }));
  await until('the refusal', () => words('h1') === 'No set of sources keeps to these terms', 30_000);
  expect(words('.said')).toMatch(/The cheapest set that is otherwise allowed costs .*10 EUR are allowed/);
  expect(one<HTMLInputElement>('input[name=budget]')?.value).toBe('10');
});

test('a part is kept on a source, the address says so, and the plan keeps to it', async () => {
  await visitSmall();
  const other = all<HTMLButtonElement>('.source:not(.picked) button')[0]!;
  const label = other.getAttribute('aria-label')!;
  other.click();
  await until('the plan with it', () => location.hash.includes('lock=') && all<HTMLButtonElement>('.source.picked button').some((each) => each.getAttribute('aria-label') === label), 30_000);
  const [part = '', source = ''] = new URLSearchParams(location.hash.split('?')[1]).get('lock')!.split('=');
  expect(small.parts.find(({ id }) => id === part)?.sources.some(({ id }) => id === source)).toBe(true);
  expect(words('.locks')).toContain('Let go');
});

test('two sets stand side by side: the parts that differ, what each costs more, and the joints that clash in one alone; the picked one is saved as a list', async () => {
  await visitSmall();
  const choice = one<HTMLSelectElement>('select[name=beside]')!;
  const points = [...choice.options].map(({ value }) => value);
  expect(points.slice(0, 2)).toEqual(['', 'point-1']);
  // The cheapest point of the front against the most harmonious one.
  choice.value = points.filter((value) => value.startsWith('point-')).at(-1)!;
  choice.dispatchEvent(new Event('change', { bubbles: true }));
  await until('the address', () => location.hash.includes('beside=point-'));
  const comparison = (): ShadowRoot => one('adjoin-set-comparison')!.shadowRoot!;
  await until('the comparison', () => (comparison().querySelector('h3')?.textContent ?? '').startsWith('Clash only in point'));
  const rows = [...comparison().querySelectorAll('tbody tr')];
  expect(rows.length).toBeGreaterThan(0);
  const whole = (text: string | null | undefined): number => Number((text ?? '').replaceAll(/[\s\u00a0+]/g, '').replace('\u2212', '-').replace('–', '0'));
  const parts = rows.reduce((sum, row) => sum + whole(row.querySelectorAll('td')[2]?.textContent), 0);
  const [setups, total] = [...comparison().querySelectorAll('tfoot tr')].map((row) => whole(row.querySelector('td')?.textContent));
  // What the rows say comes to what the sets cost apart, as the table of facts has it; each is rounded to one.
  const facts = whole(all('.picture tbody tr').find((row) => row.textContent?.includes('cost of a year'))?.querySelectorAll('td')[2]?.textContent);
  expect(Math.abs(parts + (total === undefined ? 0 : setups!) - facts)).toBeLessThanOrEqual(rows.length + 1);
  expect(total ?? setups).toBe(facts);
  const saved: string[] = [];
  const click = HTMLAnchorElement.prototype.click;
  HTMLAnchorElement.prototype.click = function clicked(this: HTMLAnchorElement) { saved.push(this.download); };
  try {
    button(/^Save the list as CSV$/).click();
  } finally {
    HTMLAnchorElement.prototype.click = click;
  }
  expect(saved).toEqual([`planned-7-sources-point-1-of-${points.filter((value) => value.startsWith('point-')).length}.csv`]);
});

test('two parts are tied to one supplier in the form, the address says so, and the plan keeps to it', async () => {
  await visitSmall();
  const [first, second] = small.parts;
  one<HTMLDetailsElement>('details.tie')!.open = true;
  for (const [name, value] of [['first', first!.id], ['second', second!.id], ['what', 'supplier']] as const) one<HTMLSelectElement>(`select[name=${name}]`)!.value = value;
  button(/^Tie$/).click();
  await until('the plan with it', () => location.hash.includes('share=') && one('.running') === undefined && words('.locks').includes(`${first!.name} and ${second!.name}: one supplier`), 30_000);
  await planned();
  const picked = (part: string): string | undefined => all('.part').find((section) => section.getAttribute('aria-label') === part)?.querySelector('.source.picked .name')?.textContent ?? undefined;
  expect(picked(first!.name)).toBeDefined();
  expect(picked(first!.name)).toBe(picked(second!.name));
  button(/^Let go$/).click();
  await until('the plan without it', () => !location.hash.includes('share='));
});

test('prices in two monies are refused until the cabin says which to reckon in and at what rate; both are steps of undo', async () => {
  const foreign = { ...small, id: 'foreign', ruleBook: 'ciede2000', parts: small.parts.map((part, index) => (index > 0 ? part : { ...part, sources: part.sources.map((source, place) => (place > 0 ? source : { ...source, currency: 'USD' })) })) };
  location.hash = `#/sources?open=${addressOf(foreign)}`;
  await until('the refusal', () => words('[role=alert]').includes('prices in one currency'), 60_000);
  const money = one<HTMLSelectElement>('select[name=currency]')!;
  money.value = 'EUR';
  money.dispatchEvent(new Event('change', { bubbles: true }));
  await until('that a rate is wanting', () => words('[role=alert]').includes('what one unit of each is worth in EUR'), 60_000);
  const rate = one<HTMLInputElement>('input[name=rate]')!;
  rate.value = '0.9';
  rate.dispatchEvent(new Event('change', { bubbles: true }));
  await planned();
  expect(desk().present!.planning).toEqual({ currency: 'EUR', rates: { USD: 0.9 } });
  desk().undo();
  desk().undo();
  expect(desk().present!.planning).toBeUndefined();
});

test('the free mix is reckoned from an address that asks for it, and has its table', async () => {
  await visitSmall('mix=yes&');
  await until('the mix', () => one('adjoin-free-mix'), 30_000);
  expect(words('.big')).toMatch(/cabins with at least one clash ?(>.)?[\d.]+.%/);
});

test('another colourway is mixed with it, what both carry over once, and can be left out again', async () => {
  await visitSmall();
  const chalk = { ...small, id: 'chalk', name: 'Chalk cabin (invented)', colourway: 'Chalk', ruleBook: 'ciede2000', parts: small.parts.map((part, index) => (index < 4 ? { ...part, frozen: true } : part)) };
  const picker = Reflect.get(window, 'showOpenFilePicker') as unknown;
  Reflect.set(window, 'showOpenFilePicker', () => Promise.resolve([{ getFile: () => Promise.resolve(new File([JSON.stringify(chalk)], 'chalk.cabin.json')) }]));
  try {
    button(/^Reckon it with another colourway$/).click();
    await until('the mix of both', () => words('.colourways').includes('Chalk') && one('adjoin-free-mix') !== undefined && one('.running') === undefined, 60_000);
    expect(location.hash).toContain('mix=yes');
    await until('the words of the mix', () => one('adjoin-free-mix')!.shadowRoot!.textContent.includes('4 parts are carried over'));
    expect(one('adjoin-free-mix')!.shadowRoot!.querySelectorAll('.big')).toHaveLength(2);
    button(/^Add a colourway$/).click();
    await until('that it is there already', () => words('[role=alert]').includes('another colourway than those that are open'), 30_000);
  } finally {
    Reflect.set(window, 'showOpenFilePicker', picker);
  }
  button(/^Leave out$/).click();
  await until('the mix of one', () => one('.running') === undefined && one('adjoin-free-mix')?.shadowRoot!.querySelectorAll('.big').length === 1, 60_000);
}, 120_000);

test('an empty cabin, one part, parts that no joint ties, and all of them kept are answered in words', async () => {
  const kept = small.parts.map(({ id, sources: [source] }) => `${id}=${source!.id}`).join(',');
  for (const [cabin, options, expected] of [
    [plannedCabin(1, { parts: 0 }), '', 'This cabin has no parts yet.'], [plannedCabin(2, { parts: 1, sources: 2 }), '', 'no clash'], [{ ...plannedCabin(3, { parts: 3 }), joints: [] }, '', 'no clash'],
    [small, `lock=${kept}&`, 'Every part has only one source that may be picked'],
  ] as const) {
    location.hash = `#/sources?${options}open=${addressOf({ ...cabin, ruleBook: 'ciede2000' })}`;
    await until(expected, () => desk().open?.cabin.id === cabin.id && one('.running') === undefined && `${words('.teach')} ${words('.said')}`.includes(expected), 30_000);
  }
});

test('a plan can be stopped, and made again', async () => {
  location.hash = '#/sources?open=/demo-data/shuttle-slate.cabin.json';
  (await until('the plan to run', () => all<HTMLButtonElement>('.running button')[0], 60_000)).click();
  await until('that it stopped', () => words('.notice').startsWith('Stopped.'));
  button(/^Plan again$/).click();
  await planned();
}, 90_000);

test.each(['light', 'dark'] as const)('it has no fault of access, %s', async (scheme) => {
  setScheme(scheme);
  await visitSmall('mix=yes&');
  await until('the mix', () => one('adjoin-free-mix'), 30_000);
  expect(await faultsOfAccess(workbench())).toEqual([]);
});
