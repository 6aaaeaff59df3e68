import { difference } from '../../src/colour/difference.ts';
import type { Lab } from '../../src/quantities.ts';
import { exitCloud } from '../../src/plan/apportion/exit-cloud.ts';
import { firstExits } from '../../src/plan/apportion/first-exits.ts';
import { scatterDirections } from '../../src/plan/apportion/scatter-directions.ts';
import { deadline } from '../../src/plan/deadline.ts';
import type { PickProblem } from '../../src/plan/picks/pick-problem.ts';
import { solvePicks } from '../../src/plan/picks/solve-picks.ts';
import { seededNumbers } from '../support/seeded-numbers.ts';
import { randomJoint } from '../plan/support/random-joint.ts';
import { checksumOf, interleaved, scaled, spreadOf } from './bench-line.ts';
import type { BenchLine } from './bench-line.ts';

const scale = 2 ** 29;

/**
 * A cabin by chance, as numbers: points in the plane joined to their nearest neighbours until there are 1.8 joints for each part,
 * connected; the colour of every source is its part's target plus normal noise of 0.8 in each axis; a joint clashes by CIEDE2000
 * against a limit of 1, is open near it, and holds below. Source k is of supplier k.
 */
export function randomCabin(parts: number, sources: number, joints: number, seed: number, more: Partial<PickProblem> = {}): PickProblem {
  const random = seededNumbers(seed);
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
  const places = Array.from({ length: parts }, () => [random(), random()] as const);
  const target: Lab = [28, -0.4, -1.8];
  const colours = places.map(() => Array.from({ length: sources }, (): Lab => [target[0] + 0.8 * normal(), target[1] + 0.8 * normal(), target[2] + 0.8 * normal()]));
  const pairs = nearestPairs(places, joints).map(([first, second]) => {
    const weight = 0.2 + 0.8 * random();
    return {
      first, second,
      harmony: Float64Array.from({ length: sources * sources }, (_, entry) => {
        const use = difference({ name: 'ciede2000' }, colours[first][Math.floor(entry / sources)], colours[second][entry % sources]);
        const clash = Math.min(1, Math.max(0, (use - 0.7) / 0.6));
        return Math.round(1e4 * clash) * scale + Math.round(1e4 * weight * Math.max(0, Math.min(10, use) - 1));
      }),
    };
  });
  return {
    pairs, scale,
    variables: places.map(() => ({
      harmony: new Float64Array(sources),
      money: Float64Array.from({ length: sources }, () => Math.round(1e5 * (5 + 40 * random()))),
      suppliers: Array.from({ length: sources }, (_, supplier) => [supplier]),
    })),
    setups: new Float64Array(sources),
    ...more,
  };
}

/** A tree of nearest neighbours, then the shortest further pairs: connected, and as sparse as asked. */
function nearestPairs(places: readonly (readonly [number, number])[], count: number): readonly (readonly [number, number])[] {
  const apart = (a: number, b: number): number => (places[a][0] - places[b][0]) ** 2 + (places[a][1] - places[b][1]) ** 2;
  const pairs = new Map<string, readonly [number, number]>();
  const add = (a: number, b: number): void => { pairs.set(`${Math.min(a, b)} ${Math.max(a, b)}`, [Math.min(a, b), Math.max(a, b)]); };
  const inside = new Set([0]);
  const nearest = places.map(() => 0);
  while (inside.size < places.length) {
    let next = -1;
    places.forEach((_, index) => { if (!inside.has(index) && (next < 0 || apart(index, nearest[index]) < apart(next, nearest[next]))) next = index; });
    add(next, nearest[next]);
    inside.add(next);
    places.forEach((_, index) => { if (apart(index, next) < apart(index, nearest[index]) || !inside.has(nearest[index])) nearest[index] = next; });
  }
  const rest = places.flatMap((_, a) => places.slice(a + 1).map((__, index) => [a, a + 1 + index] as const)).sort((x, y) => apart(...x) - apart(...y));
  const degree = places.map((_, index) => [...pairs.values()].filter((pair) => pair.includes(index)).length);
  for (const [a, b] of rest) {
    if (pairs.size >= count) break;
    if (degree[a] >= 6 || degree[b] >= 6 || pairs.has(`${a} ${b}`)) continue;
    add(a, b);
    degree[a]++;
    degree[b]++;
  }
  return [...pairs.values()];
}

const cases = [
  { name: 'choose, 120 parts x 5 sources, 216 joints', parts: 120, joints: 216, wanted: 'at most 1 s' },
  { name: 'choose, 300 parts x 5 sources, 540 joints', parts: 300, joints: 540, wanted: 'at most 3 s' },
  { name: 'choose, 300 parts, at most 3 of 5 suppliers', parts: 300, joints: 540, more: { maxSuppliers: 3 }, wanted: 'at most 5 s' },
] as const;
/** Small enough for the program alone. */
const besideProgram = { parts: 40, joints: 72 };

/** Choosing sources on seeded cabins: different ones, each proved optimal; the checksum is of all optima. Then small ones beside the mixed-integer program alone. */
export async function plansBenchmark(repeats = 5): Promise<readonly BenchLine[]> {
  await solvePicks(randomCabin(20, 3, 30, 1));
  const lines: BenchLine[] = [];
  for (const { name, parts, joints, wanted, ...rest } of cases) {
    const times: number[] = [];
    let checksum = 0;
    for (let seed = 1; seed <= repeats; seed++) {
      const problem = randomCabin(parts, 5, joints, seed, 'more' in rest ? rest.more : {});
      const { ms, outcome: { solution, proved, method } } = await timed(() => solvePicks(problem));
      times.push(ms);
      if (!proved || solution === undefined || method === 'mixed-integer program') throw new Error(`${name}, cabin ${seed}: not proved by elimination`);
      checksum = (checksum * 31 + (solution.harmony % 1000003) + (solution.money % 1000003)) % 2147483647;
    }
    lines.push({ name, unit: 'ms', own: spreadOf(times), wanted, checksum: checksum.toString(16) });
  }
  const [own, program]: [number[], number[]] = [[], []];
  let checksum = 0;
  for (let seed = 1; seed <= repeats; seed++) {
    const problem = randomCabin(besideProgram.parts, 5, besideProgram.joints, seed);
    const [mine, other] = [await timed(() => solvePicks(problem)), await timed(() => solvePicks(problem, { only: 'program', until: deadline(60, undefined) }))];
    if (other.outcome.proved && other.outcome.solution?.harmony !== mine.outcome.solution?.harmony) throw new Error(`cabin ${seed}: another optimum by the program`);
    own.push(mine.ms);
    program.push(other.ms);
    checksum = (checksum * 31 + ((mine.outcome.solution?.harmony ?? 0) % 1000003)) % 2147483647;
  }
  lines.push({
    name: `choose, ${besideProgram.parts} parts x 5 sources, ${besideProgram.joints} joints`, unit: 'ms', own: spreadOf(own), beside: { name: 'HiGHS alone', figure: spreadOf(program) },
    ratio: spreadOf(program.map((time, at) => time / own[at]!)).median, checksum: checksum.toString(16),
  });
  return [...lines, exitsLine()];
}

const joints = 12;

/** How far two parts can be off their targets in each direction until their joint fails, by columns and as it is defined, direction by direction. */
function exitsLine(): BenchLine {
  const asked = Array.from({ length: joints }, (_, index) => randomJoint(index + 1));
  let sum = 0;
  const { ms, ratio } = interleaved(7, {
    own: () => {
      sum = 0;
      for (const joint of asked) for (const exit of exitCloud('fine').take(joint).exitsAt(joint.sds)) sum += 1 / exit;
    },
    defined: () => asked.map(({ terms, shapes, sds }) => firstExits(terms, shapes, sds, scatterDirections('fine'))),
  });
  return {
    name: 'tolerances by squares, exits of a joint in 2048 directions', unit: 'ms', own: scaled(ms.own, 1 / joints), beside: { name: 'one by one', figure: scaled(ms.defined, 1 / joints) },
    ratio: ratio('defined', 'own'), wanted: 'at least 3', checksum: checksumOf([sum]),
  };
}

async function timed<T>(work: () => Promise<T>): Promise<{ readonly ms: number; readonly outcome: T }> {
  const start = performance.now();
  const outcome = await work();
  return { ms: performance.now() - start, outcome };
}
