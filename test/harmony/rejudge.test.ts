import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { parseCabin } from '../../src/cabin/index.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { judgeCabin } from '../../src/harmony/judge.ts';
import { rejudge } from '../../src/harmony/rejudge.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import type { RuleBook } from '../../src/rules/rule-book.ts';
import { editsOf } from '../actions/random-edits.ts';
import { smallCabin } from '../support/small-cabin.ts';

/** The expected value of every test here is the judgement of the whole cabin, which takes nothing over. */
const [book, cmcBook] = builtInRuleBooks as readonly [RuleBook, RuleBook];

/** A book whose limits depend on the gap, the viewing distance and the visibility, so that those reach the verdicts, and that shows an own light. */
const bookOfVariables: RuleBook = {
  ...book, id: 'variables',
  lights: [...book.lights, { light: 'cabin-ambient', factor: 1, standing: 'shown', basis: 'made up for a test' }],
  rules: [...book.rules, { id: 'by-the-variables', pair: ['*', '*'], colour: { limit: '0.8 * (1 + gapMm / 20) * (2 - visibility) * (1 + 0.001 * viewMm)' }, basis: 'made up for a test' }],
};

describe('an edit judged again', () => {
  test.each([['default', book], ['CMC(2:1)', cmcBook], ['limits by the variables', bookOfVariables]] as const)('gives what judging all gives, book %s', (_, by) => {
    const start = judgeCabin(smallCabin(), by);
    let done = 0;
    fc.assert(fc.property(fc.array(fc.nat(), { minLength: 2, maxLength: 40 }), (choices) => {
      let judged = start;
      for (const cabin of editsOf(judged.context.cabin, choices)) {
        judged = rejudge(judged, cabin);
        done += 1;
      }
      const whole = judgeCabin(judged.context.cabin, by);
      expect(judged.judgement).toEqual(whole.judgement);
      expect(judged.paths).toEqual(whole.paths);
      expect(judged.joints.map(({ input }) => [input.joint, input.sides.map(({ part }) => part), input.rule]))
        .toEqual(whole.joints.map(({ input }) => [input.joint, input.sides.map(({ part }) => part), input.rule]));
    }), { numRuns: 40, seed: 20261125 });
    expect(done).toBeGreaterThan(100);
  }, 300_000);

  test('on a cabin of sixty parts', () => {
    const { value } = parseCabin(readFileSync(join(import.meta.dirname, '..', '..', 'demo-data', 'shuttle-slate.cabin.json'), 'utf8'));
    const cabin = value as Cabin;
    let judged = judgeCabin(cabin, book);
    for (const edited of editsOf(cabin, [11, 5, 903, 77, 2, 4021, 318, 64, 9, 1234, 57, 86, 21, 3000, 45, 450, 17, 29, 731, 8, 15, 1600, 23, 42])) judged = rejudge(judged, edited);
    expect(judged.context.cabin).not.toBe(cabin);
    expect(judged.judgement).toEqual(judgeCabin(judged.context.cabin, book).judgement);
  }, 300_000);
});

const edited = (change: (cabin: Cabin) => Partial<Cabin>): Cabin => {
  const cabin = smallCabin();
  return { ...cabin, ...change(cabin) };
};

/** Edits that reach a joint by a way round: each by what it changes. */
const ways: readonly (readonly [string, (cabin: Cabin) => Partial<Cabin>])[] = [
  ['the readings of the part that another borrows from', ({ parts }) => ({
    parts: parts.map((part) => (part.id !== 'door-left' ? part : {
      ...part, sources: part.sources.map((source) => ({ ...source, specimens: source.specimens.map((one) => ({ ...one, readings: one.readings.slice(0, 7) })) })),
    })),
  })],
  ['the instrument of conditions', ({ instruments }) => ({ instruments: instruments.map((one) => (one.id === 'spectro-a' ? { ...one, name: 'Bench renamed', agreement: undefined } : one)) })],
  ['the geometry of conditions', ({ conditions }) => ({ conditions: conditions.map((one) => (one.id === 'colour-a' ? { ...one, geometry: 'di:8' as const } : one)) })],
  ['a master that parts are held to', ({ masters }) => ({ masters: masters?.map((one) => (one.id === 'm-slate' ? { ...one, readings: one.readings.slice(2), expires: '2031-01-01' } : one)) })],
  ['the cap of a zone', ({ zones }) => ({ zones: zones.map((one) => (one.id === 'dash' ? { ...one, caps: [] } : one)) })],
  ['the name of a supplier', ({ suppliers }) => ({ suppliers: suppliers.map((one) => ({ ...one, name: `${one.name} again` })) })],
  ['the name of a part to that of another', ({ parts }) => ({ parts: parts.map((part) => (part.id === 'console-side' ? { ...part, name: 'Dash lower' } : part)) })],
  ['an own light', ({ lights }) => ({ lights: lights?.map((one) => ({ ...one, values: one.values.map((value) => value + 1) })) })],
  ['the gap of a joint', ({ joints }) => ({ joints: joints.map((one) => (one.id === 'j2' ? { ...one, gapMm: 9 } : one)) })],
  ['the visibility of a part', ({ parts }) => ({ parts: parts.map((part) => (part.id === 'dash-lower' || part.id === 'dash-upper' ? { ...part, visibility: 0.2 } : part)) })],
  ['a decision', ({ joints }) => ({ joints: joints.map((one) => (one.id === 'j2' ? { ...one, decisions: [], visualRecords: [] } : one)) })],
  ['the day and the stage', () => ({ asOf: '2031-08-01', stage: 'light-exposed' })],
  ['the runs', () => ({ runs: [{ id: 'r2', parts: ['dash-upper', 'dash-lower', 'door-left'] }] })],
  ['the order of the parts and joints', ({ parts, joints }) => ({ parts: [...parts].reverse(), joints: [...joints].reverse() })],
];

test.each(ways)('a change of %s is seen', (_, change) => {
  const judged = rejudge(judgeCabin(smallCabin(), bookOfVariables), edited(change));
  const whole = judgeCabin(edited(change), bookOfVariables).judgement;
  expect(judged.judgement).toEqual(whole);
  expect(judged.judgement).not.toEqual(judgeCabin(smallCabin(), bookOfVariables).judgement);
});

test('what an edit does not touch is the same object as before', () => {
  const before = judgeCabin(smallCabin(), book);
  const after = rejudge(before, { ...before.context.cabin, joints: before.context.cabin.joints.map((joint) => (joint.id === 'j6' ? { ...joint, intent: { colour: 'contrast' } } : joint)) });
  const same = after.judgement.joints.filter((joint, index) => joint === before.judgement.joints[index]).map(({ id }) => id);
  expect(same).toEqual(['j1', 'j2', 'j3', 'j4', 'j5']);
  expect(after.judgement.parts.every((part, index) => part === before.judgement.parts[index])).toBe(true);
});

test('an outline that moves leaves the verdicts as they are where no limit depends on it', () => {
  const before = judgeCabin(smallCabin(), book);
  const parts = before.context.cabin.parts.map((part) => (part.id === 'console' ? { ...part, outline: part.outline?.map(([x, y]) => [x + 1, y] as const) } : part));
  const after = rejudge(before, { ...before.context.cabin, parts });
  expect(after.judgement.joints.every((joint, index) => joint === before.judgement.joints[index])).toBe(true);
  expect(after.joints.find(({ result }) => result.id === 'j6')?.input.sides.some(({ part }) => part === parts.find(({ id }) => id === 'console'))).toBe(true);
});
