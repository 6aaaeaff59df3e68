import { expect, test } from 'vitest';
import { toleranceExtent } from '../../components/views/apportion/tolerance-glyph.ts';
import { apportionCabin } from '../../src/plan/index.ts';
import { defaultBook } from '../../src/rules/default-book.ts';
import { fixed } from '../../src/report/number-text.ts';
import { plannedCabin } from '../plan/support/planned-cabin.ts';
import { faultsOfAccess, setScheme, settled, until } from '../support/screen.ts';
import { addressOf, all, desk, eachWithWorkbench, one, wordsOf, workbench } from '../support/whole-workbench.ts';

/** The place where tolerances are shared out, in the whole workbench with its workers. */
const words = (selector: string): string => wordsOf(one(selector));
const cabin = plannedCabin(3, { parts: 5, sources: 1, scatter: 0.03 });

async function visit(options = ''): Promise<void> {
  const address = addressOf({ ...cabin, ruleBook: 'ciede2000' });
  location.hash = `#/apportion?${options}open=${address}`;
  await until('the plan', () => one('.tolerances') !== undefined && one('.running') === undefined, 60_000);
  await settled(workbench());
}

const radii = (): string[] => cabin.parts.map(({ name }) => all('.tolerances tbody tr').find((row) => row.querySelector('th')?.textContent === name)?.querySelector('b')?.textContent ?? '');

eachWithWorkbench();

test('every part has the radius that the core gives it, and no cabin drawn clashes; statistical gives more', async () => {
  await visit();
  const plan = await apportionCabin(cabin, defaultBook);
  expect(radii()).toEqual(plan.parts.map(({ radius }) => fixed(radius, 2)));
  expect(words('.drawn')).toMatch(/^0 of 2000 /);
  const before = radii();
  all<HTMLInputElement>('input[name=rule]').find(({ value }) => value === 'statistical')!.click();
  await until('the other tolerances', () => location.hash.includes('rule=statistical') && one('.running') === undefined && radii().join() !== before.join(), 60_000);
  expect(Math.min(...radii().map(Number))).toBeGreaterThan(Math.min(...before.map(Number)));
});

test('how often joints are to hold is set in the form: more often, smaller tolerances, and the quantiles are named', async () => {
  await visit('rule=statistical&');
  const before = radii().map(Number);
  expect(words('aside')).toContain('chi-square with three degrees of freedom');
  const field = one<HTMLInputElement>('input[name=confidence]')!;
  field.value = '99.7';
  field.dispatchEvent(new Event('change', { bubbles: true }));
  await until('the smaller tolerances', () => location.hash.includes('confidence=99.7') && one('.running') === undefined && radii().map(Number)[0]! < before[0]!, 60_000);
  expect(words('.said')).toContain('in at least 99.7 % of the cabins');
});

test('an empty cabin, one part, parts that no joint ties and targets that clash are answered in words', async () => {
  for (const [other, expected] of [
    [plannedCabin(1, { parts: 0 }), 'This cabin has no parts yet.'], [plannedCabin(2, { parts: 1 }), 'No two parts of this cabin are joined yet.'],
    [{ ...plannedCabin(4, { parts: 3 }), joints: [] }, 'No two parts of this cabin are joined yet.'], [plannedCabin(11, { parts: 3, sources: 1, scatter: 0.3 }), 'Mend the targets first.'],
  ] as const) {
    location.hash = `#/apportion?open=${addressOf({ ...other, ruleBook: 'ciede2000' })}`;
    await until(expected, () => desk().open?.cabin.id === other.id && `${words('.teach')} ${words('.said')}`.includes(expected), 30_000);
  }
});

test('tolerances become the limits that parts are held to against their masters, in one step, and that is undone', async () => {
  const mastered = {
    ...cabin, ruleBook: 'ciede2000', masters: cabin.parts.slice(1).map(({ id, sources }) => ({ id: `m-${id}`, kind: 'master' as const, readings: sources[0]!.specimens[0]!.readings })),
    parts: cabin.parts.map((part, index) => (index === 0 ? part : { ...part, target: { master: `m-${part.id}` } })),
  };
  location.hash = `#/apportion?open=${addressOf(mastered)}`;
  await until('the plan', () => desk().open?.cabin.masters?.length === 4 && one('.tolerances') !== undefined && one('.running') === undefined, 60_000);
  const before = desk().present!;
  const { parts } = await apportionCabin(before, defaultBook);
  const hold = (): HTMLButtonElement => all<HTMLButtonElement>('.apply button')[0]!;
  await until('the button', () => wordsOf(hold()) === 'Hold to these tolerances: 4 parts');
  hold().click();
  await until('that they are held', () => wordsOf(hold()) === 'The parts are held as tightly');
  // The part without a recorded master is as it was; no limit that is written is wider than the one that was reckoned, nor a hundredth narrower.
  desk().present!.parts.forEach((part, index) => {
    if (index === 0) return expect(part).toBe(before.parts[0]);
    for (const [written, reckoned] of [[part.target?.colourLimit, parts[index]!.radius], [part.target?.glossLimit, parts[index]!.glossBand]] as const) {
      expect(written).toBeLessThanOrEqual(reckoned! + 1e-9);
      expect(written).toBeGreaterThan(reckoned! - 0.01);
    }
  });
  expect(one('.notice')).toBeUndefined();
  desk().undo();
  expect(desk().present).toBe(before);
});

test('a sheet is saved as a file of its supplier', async () => {
  await visit();
  const saved: string[] = [];
  const click = HTMLAnchorElement.prototype.click;
  HTMLAnchorElement.prototype.click = function clicked(this: HTMLAnchorElement) { saved.push(this.download); };
  try {
    all<HTMLButtonElement>('.tolerances button')[0]!.click();
  } finally {
    HTMLAnchorElement.prototype.click = click;
  }
  expect(saved).toEqual([expect.stringMatching(/^planned-3-tolerances-.*\.csv$/)]);
});

test('the extents of a sphere, and of a turned ellipse by its closed form', () => {
  expect(toleranceExtent([1, 0, 0, 0, 1, 0, 0, 0, 1], 2)).toEqual({ L: 2, aa: 4, ab: -0, bb: 4 });
  // Half axes 3 and 1 in the a*, b* plane, turned by 30 degrees: covariance R diag(9, 1) R'.
  const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
  const [e, f, i] = [c * c / 9 + s * s, c * s / 9 - c * s, s * s / 9 + c * c];
  const extent = toleranceExtent([4, 0, 0, 0, e, f, 0, f, i], 1);
  expect(extent.L).toBeCloseTo(0.5, 12);
  expect(extent.aa).toBeCloseTo(9 * c * c + s * s, 12);
  expect(extent.bb).toBeCloseTo(9 * s * s + c * c, 12);
  expect(extent.ab).toBeCloseTo(8 * c * s, 12);
});

test.each(['light', 'dark'] as const)('it has no fault of access, %s', async (scheme) => {
  setScheme(scheme);
  await visit();
  expect(await faultsOfAccess(workbench())).toEqual([]);
});
