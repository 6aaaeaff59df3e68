import fc from 'fast-check';
import { expect, test } from 'vitest';
import { restoreCabin } from '../../src/cabin/restore-cabin.ts';
import { checkJson } from '../../src/harmony/check-json.ts';
import { judge } from '../../src/harmony/judge.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { smallCabin } from '../support/small-cabin.ts';

type Container = Record<string | number, unknown>;

const containers = (value: unknown): Container[] =>
  (typeof value !== 'object' || value === null ? [] : [value as Container, ...Object.values(value).flatMap(containers)]);

const base = JSON.stringify(smallCabin());

/** Every leaf that can carry a number or a choice, as a path into the document. */
const leaves = containers(JSON.parse(base)).flatMap((container, index) =>
  Object.entries(container).filter(([, value]) => typeof value !== 'object').map(([key]) => [index, key] as const));

const numbers = fc.oneof(
  fc.constantFrom(0, 1e-9, 0.5, 1, 1.5, 2, 10, 85, 400, 1e6, -1, 1e308, 1e-308),
  fc.double({ min: 0, max: 1.5, noNaN: true }), fc.double({ min: -200, max: 200, noNaN: true }), fc.integer({ min: 1, max: 100 }),
);
const words = fc.constantFrom('match', 'contrast', 'tone-step', 'free', 'sightline', 'patterned', 'effect', 'melange', 'thread', 'metallised',
  'unheard-of', 'D65', 'FL11', 'di:8', 'de:8', 'excluded');

const mutations = fc.array(fc.record({ leaf: fc.nat(leaves.length - 1), number: numbers, word: words }), { minLength: 1, maxLength: 3 });

const notFinite = (value: unknown, path = ''): string[] => {
  if (typeof value === 'number') return Number.isFinite(value) ? [] : [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, member]) => notFinite(member, `${path}.${key}`));
};

/** Counted, so that the property cannot pass by refusing everything. */
let accepted = 0;

test('whatever restore lets through is judged without a crash and without a number that is not finite', () => {
  fc.assert(fc.property(mutations, fc.constantFrom(...builtInRuleBooks), (changes, book) => {
    const document = JSON.parse(base) as unknown;
    const all = containers(document);
    for (const { leaf, number, word } of changes) {
      const [index, key] = leaves[leaf];
      if (all[index] !== undefined) all[index][key] = typeof all[index][key] === 'number' ? number : word;
    }
    const { value: cabin } = restoreCabin(document);
    if (cabin === undefined) return;
    accepted++;
    const judgement = judge(cabin, book);
    expect(notFinite(checkJson(judgement))).toEqual([]);
    for (const joint of judgement.joints) {
      expect(joint.totalProbability).toBeGreaterThanOrEqual(0);
      expect(joint.totalProbability).toBeLessThanOrEqual(1);
    }
  }), { numRuns: 150, seed: 20261125 });
  expect(accepted).toBeGreaterThan(20);
}, 300_000);
