import { describe, expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { runCommand } from '../../src/cli/router.ts';
import type { ApportionPlan, ChosenSet, MendPlan } from '../../src/plan/index.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { memoryIo, parsed } from '../cli/memory-io.ts';
import { independentLab } from '../support/independent-colorimetry.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';
import { metByHand } from './support/met-by-hand.ts';
import { plannedCabin } from './support/planned-cabin.ts';

/**
 * What a plan promises is asked of another command: the plan is written to a file, and `check` judges that file as it would judge any other. The promise is
 * read from what the plan printed.
 */
interface Checked {
  readonly joints: readonly { readonly id: string; readonly verdict: string }[];
  readonly parts: readonly { readonly id: string; readonly checks: readonly { readonly check: string; readonly subject?: string; readonly limit?: number }[] }[];
}
const written = async (cabin: Cabin, words: readonly string[]): Promise<{ readonly stdout: string; readonly files: Readonly<Record<string, string>> }> => {
  const result = await runCommand([words[0], 'a.json', ...words.slice(1), '--json'], memoryIo({ 'a.json': JSON.stringify(cabin) }));
  expect(result.exit, result.stdout.slice(0, 400)).toBeLessThan(2);
  return { stdout: result.stdout, files: Object.fromEntries(result.files.map(({ path, content }) => [path, String(content)])) };
};
const check = async (text: string): Promise<Checked> => parsed<Checked>(await runCommand(['check', 'b.json', '--json'], memoryIo({ 'b.json': text })));
const verdicts = ({ joints }: Checked): Readonly<Record<string, string>> => Object.fromEntries(joints.map(({ id, verdict }) => [id, verdict]));
const ring = [[0, 1], [1, 2], [2, 3], [3, 0], [0, 2]] as const;

describe('choose', () => {
  test.each([21, 22, 23, 24, 25, 26])('cabin %i: the set that is written has the clashes and open joints that were promised, and no other', async (seed) => {
    const cabin = plannedCabin(seed, { parts: 4, sources: 3, joints: ring, scatter: 0.12, glossScatter: 0.5 });
    const { stdout, files } = await written(cabin, ['choose', '--out', 'b.json']);
    const [best] = (JSON.parse(stdout) as { readonly sets: readonly ChosenSet[] }).sets;
    const judged = await check(files['b.json']);
    const promised = Object.fromEntries(cabin.joints.map(({ id }) => [id, best.clashing.includes(id) ? 'clashes' : best.open.includes(id) ? 'open' : 'holds']));
    expect(verdicts(judged)).toEqual(promised);
    const stands = Object.fromEntries((JSON.parse(files['b.json']) as Cabin).parts.map((part) => [part.id, part.source ?? part.sources[0].id]));
    expect(stands).toEqual(best.picks);
  });
});

describe('mend', () => {
  test.each([31, 32, 33, 34, 35, 36])('cabin %i: the file as met, and the cards put on by hand, have the verdicts that were promised; the file with proposals has those of before', async (seed) => {
    const cabin = plannedCabin(seed, { parts: 4, sources: 1, joints: ring, scatter: 0.09, glossScatter: 0.4 });
    const { stdout, files } = await written(cabin, ['mend', '--as-met', 'met.json', '--out', 'kept.json']);
    const plan = JSON.parse(stdout) as MendPlan;
    const { cards, outcome } = plan.feasible ? plan : plan.withoutBlockers!;
    const promised = Object.fromEntries(outcome.map(({ id, verdict }) => [id, verdict]));
    if (plan.feasible) expect(Object.values(promised)).toEqual(cabin.joints.map(() => 'holds'));
    if (plan.feasible) expect(verdicts(await check(files['met.json']))).toEqual(promised);
    expect(verdicts(await check(JSON.stringify(metByHand(cabin, cards))))).toEqual(promised);
    expect(JSON.parse(files['met.json'])).toMatchObject({ note: expect.stringContaining('Not measured') as string });
    expect(verdicts(await check(files['kept.json']))).toEqual(verdicts(await check(JSON.stringify(cabin))));
    const kept = JSON.parse(files['kept.json']) as Cabin;
    if (plan.changes.length > 0) expect(kept.joints.some(({ proposals }) => (proposals ?? []).length > 0)).toBe(true);
  });
});

describe('apportion', () => {
  /** By value against limit: a tolerance is of true colours, without what measuring adds. */
  const plainBook = { ...builtInRuleBooks[0], id: 'plain', name: 'By value', decision: { ...builtInRuleBooks[0].decision, rule: 'simple' as const } };
  const layout = { startNm: 400, stepNm: 10, count: 31 };
  const colour = (values: readonly number[]): number[] => independentLab(values, layout, 'D65', 10);

  /** Every part with a recorded master of its own colour. */
  const mastered = (seed: number): Cabin => {
    const base = plannedCabin(seed, { parts: 4, sources: 1, joints: ring, scatter: 0.02, glossScatter: 0.05 });
    return {
      ...base, ruleBook: plainBook, masters: base.parts.map(({ id, sources }) => ({ id: `m-${id}`, kind: 'master' as const, readings: sources[0].specimens[0].readings })),
      parts: base.parts.map((part) => ({ ...part, target: { master: `m-${part.id}` } })),
    };
  };

  /** Reflectance on the edge of a tolerance, found by making a smooth change larger until its colour, reckoned from the published tables, lies there. */
  function onEdge(mean: readonly number[], { target, metric, radius }: ApportionPlan['parts'][number], slopes: readonly number[], share: number): number[] {
    const changed = (size: number): number[] => mean.map((value, band) => { const x = (band - 15) / 15; return value * (1 + size * (slopes[0] + slopes[1] * x + slopes[2] * (3 * x * x - 1) / 2)); });
    const sizeOf = (size: number): number => {
      const d = colour(changed(size)).map((value, axis) => value - target![axis]);
      return Math.sqrt([0, 1, 2].reduce((sum, i) => sum + [0, 1, 2].reduce((row, j) => row + d[i] * metric![3 * i + j] * d[j], 0), 0));
    };
    let [low, high] = [0, 0.001];
    while (sizeOf(high) < share * radius!) high *= 2;
    for (let step = 0; step < 30; step++) { const middle = (low + high) / 2; if (sizeOf(middle) < share * radius!) low = middle; else high = middle; }
    return changed(low);
  }

  test.each([41, 42, 43])('cabin %i: any parts on the edges of their tolerances hold at every joint; the limits that are written are those that parts are held to', async (seed) => {
    const cabin = mastered(seed);
    const { stdout, files } = await written(cabin, ['apportion', '--draws', '50', '--out', 'b.json']);
    const plan = JSON.parse(stdout) as ApportionPlan;
    expect(plan.targetsClash).toEqual([]);
    const random = seededNumbers(seed);
    for (let draw = 0; draw < 6; draw++) {
      const built: Cabin = {
        ...cabin,
        parts: cabin.parts.map((part, place) => {
          const tolerance = plan.parts[place];
          const readings = part.sources[0].specimens[0].readings;
          const spectra = readings.flatMap((reading) => (reading.quantity === 'spectrum' ? [reading.values] : []));
          const mean = spectra[0].map((_, band) => spectra.reduce((sum, row) => sum + row[band], 0) / spectra.length);
          const edge = onEdge(mean, tolerance, [2 * random() - 1, 2 * random() - 1, 0.5 * (2 * random() - 1)], 0.995);
          const shine = (tolerance.glossBand ?? 0) * (random() < 0.5 ? -0.995 : 0.995);
          return { ...part, sources: [{ ...part.sources[0], specimens: [{ ...part.sources[0].specimens[0], readings: readings.map((reading) => (reading.quantity === 'gloss' ? { ...reading, gloss: reading.gloss + shine }
            : reading.quantity === 'spectrum' ? { ...reading, values: reading.values.map((value, band) => value * (edge[band] / mean[band])) } : reading)) }] }] };
        }),
      };
      expect(Object.values(verdicts(await check(JSON.stringify(built))))).toEqual(cabin.joints.map(() => 'holds'));
    }
    const held = await check(files['b.json']);
    for (const { id, radius, glossBand } of plan.parts) {
      const own = held.parts.find((part) => part.id === id)!.checks.filter((each) => each.check === 'master');
      const limits = own.map(({ limit }) => limit);
      expect(limits).toContain(Math.floor(radius! * 100 + 1e-9) / 100);
      expect(limits).toContain(Math.floor(glossBand! * 100 + 1e-9) / 100);
    }
  });
});
