import { describe, expect, test } from 'vitest';
import { runCommand } from '../../src/cli/router.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { memoryIo } from '../cli/memory-io.ts';
import { plannedCabin } from './support/planned-cabin.ts';

/** Cabins that leave a plan little to do: each is answered in words, by the exit code that stands for it. */
const clashing = plannedCabin(11, { parts: 3, sources: 2, scatter: 0.3 });
const onlySources = Object.fromEntries(clashing.parts.map((part) => [part.id, part.sources[0].id]));
const apart = (cabin: Cabin): Cabin => ({ ...cabin, joints: [] });
/** Two pairs that no joint ties to each other. */
const inPieces = plannedCabin(6, { parts: 4, sources: 2, scatter: 0.05, joints: [[0, 1], [2, 3]] });

const run = async (cabin: Cabin, ...words: readonly string[]): Promise<{ readonly exit: number; readonly said: string }> => {
  const { exit, stdout } = await runCommand([words[0], 'a.cabin.json', ...words.slice(1)], memoryIo({ 'a.cabin.json': JSON.stringify(cabin) }));
  return { exit, said: stdout.replaceAll(/\s+/g, ' ') };
};
const locks = (option: (part: string, source: string) => string): readonly string[] => Object.entries(onlySources).flatMap(([part, source]) => ['--lock', option(part, source)]);

describe('choose', () => {
  test.each<[string, Cabin, readonly string[], number, RegExp]>([
    ['empty', plannedCabin(1, { parts: 0 }), [], 0, /^The cabin has no parts: there is nothing to choose\./],
    ['one part', plannedCabin(1, { parts: 1, sources: 2 }), [], 0, /^The (best set changes 1 of 1 parts|sources the cabin stands by are the best set).*no clash/],
    ['parts that no joint ties', apart(clashing), [], 0, /no clash, 0 open/],
    ['in pieces', inPieces, [], 0, /That no set is better is proved/],
    ['all locked', clashing, locks((part, source) => `${part}=${source}`), 0, /^Every part has only one source that may be picked: there is nothing to choose\./],
    ['infeasible: budget', clashing, ['--budget', '10'], 1, /The cheapest set that is otherwise allowed costs .*; 10 EUR are allowed/],
    ['infeasible: lead time', clashing, ['--max-lead', '1'], 1, /Nothing is left for .*every source of it is ruled out \(lead time\)/],
  ])('%s', async (_, cabin, options, exit, expected) => {
    const result = await run(cabin, 'choose', ...options);
    expect(result.said).toMatch(expected);
    expect(result.exit).toBe(exit);
  });
});

describe('mend', () => {
  test.each<[string, Cabin, readonly string[], number, RegExp]>([
    ['empty', plannedCabin(1, { parts: 0 }), [], 0, /^The cabin has no parts: there is nothing to mend\./],
    ['one part', plannedCabin(1, { parts: 1 }), [], 0, /^No two parts are joined: there is nothing to mend\./],
    ['parts that no joint ties', apart(clashing), [], 0, /^No two parts are joined: there is nothing to mend\./],
    ['in pieces', inPieces, [], 0, /part(s)? changes?: .*That no smaller set will do is proved|nothing is to change/],
    ['all locked', clashing, locks((part) => part), 1, /^There is no plan within reach: the joints? .* cannot (all )?be made to hold/],
    ['infeasible: nothing within reach', clashing, ['--reach', 'moulded=0,0,0,0'], 1, /^There is no plan within reach/],
  ])('%s', async (_, cabin, options, exit, expected) => {
    const result = await run(cabin, 'mend', ...options);
    expect(result.said).toMatch(expected);
    expect(result.exit).toBe(exit);
  });
});

describe('apportion', () => {
  const all = Object.keys(onlySources);
  test.each<[string, Cabin, readonly string[], number, RegExp]>([
    ['empty', plannedCabin(1, { parts: 0 }), [], 0, /^The cabin has no parts: there is nothing to apportion\./],
    ['one part', plannedCabin(1, { parts: 1 }), [], 0, /^No joint is judged by numbers: nothing limits the tolerances of the parts\./],
    ['parts that no joint ties', apart(clashing), [], 0, /^No joint is judged by numbers: nothing limits the tolerances of the parts\./],
    ['in pieces', plannedCabin(6, { parts: 4, sources: 1, scatter: 0.02, joints: [[0, 1], [2, 3]] }), [], 0, /^Any two parts in tolerance hold at their joint/],
    ['all carried over', { ...plannedCabin(6, { parts: 3, sources: 1, scatter: 0.02 }), parts: plannedCabin(6, { parts: 3, sources: 1, scatter: 0.02 }).parts.map((part) => ({ ...part, frozen: true })) }, [], 0, /^Any two parts in tolerance hold at their joint/],
    ['infeasible: targets that clash', clashing, [], 1, /The targets themselves are outside the limits .* Mend the targets first\./],
  ])('%s', async (_, cabin, options, exit, expected) => {
    expect(all.length).toBe(3);
    const result = await run(cabin, 'apportion', '--draws', '20', ...options);
    expect(result.said).toMatch(expected);
    expect(result.exit).toBe(exit);
  });
});
