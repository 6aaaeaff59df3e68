import { Session } from 'node:inspector/promises';
import type { Profiler } from 'node:inspector';
import { cabinPatch, patchCabin } from '../../src/actions/cabin-patch.ts';
import { openEditor, perform } from '../../src/actions/editor.ts';
import { replaceReading } from '../../src/actions/reading-actions.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { judgeCabin } from '../../src/harmony/judge.ts';
import type { JudgedCabin } from '../../src/harmony/judge.ts';
import { rejudge } from '../../src/harmony/rejudge.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import type { RuleBook } from '../../src/rules/rule-book.ts';
import { bigCabin } from './big-cabin.ts';
import { checksumOf, scaled, spreadOf } from './bench-line.ts';
import type { BenchLine, Spread } from './bench-line.ts';

const book = builtInRuleBooks[0]!;
const sixLights: RuleBook = { ...book, lights: ['D65', 'A', 'FL11', 'LED-B3', 'D50', 'FL2'].map((light) => ({ light, standing: 'required', factor: 1, basis: 'of the benchmark' })) };
const edits = 21;
const jointsPerPart = 3;

/** Functions whose time counts as that of the kernels: colours from spectra, differences, and the probability that all holds together. */
const kernels = new Set(['spectraToLab', 'spectrumToXyz', 'spectrumToLab', 'productsOf', 'difference', 'stackedProbability', 'stackedSide', 'stackedExcess', 'withinProbability', 'principalFactor', 'symmetricEigen']);

const cabinOf = (joints: number): Cabin => bigCabin({ parts: Math.ceil(joints / jointsPerPart), joints, seed: 7 });

const sumOf = ({ judgement }: JudgedCabin): string => checksumOf([judgement.summary.holds, 1e-2 * judgement.summary.open, 1e-4 * judgement.summary.clashes]);

/** All joints judged with uncertainty, and one part edited, at several sizes; the time by joint is to stay, and the time of an edit too. */
export function checkBenchmark(sizes: readonly number[]): readonly BenchLine[] {
  judgeCabin(cabinOf(60), book);
  const lines: BenchLine[] = [];
  let [perJoint, perEdit]: [Spread | undefined, Spread | undefined] = [undefined, undefined];
  for (const joints of sizes) {
    const cabin = cabinOf(joints);
    const times: number[] = [];
    let judged: JudgedCabin | undefined;
    for (let round = 0; round < Math.max(1, Math.min(5, Math.floor(3000 / joints))); round += 1) {
      const start = performance.now();
      judged = judgeCabin(cabin, book);
      times.push(performance.now() - start);
    }
    if (judged === undefined) throw new Error('nothing was judged');
    const own = scaled(spreadOf(times), 1 / joints);
    perJoint ??= own;
    const name = joints.toLocaleString('en-GB').replaceAll(',', ' ');
    lines.push({ name: `check of ${name} joints, a joint`, unit: 'ms', own, growth: own.median / perJoint.median, wanted: 'growth about 1', checksum: sumOf(judged) });
    const edit = editTimes(cabin, judged);
    perEdit ??= edit.time;
    lines.push({ name: `a reading of one part edited, ${name} joints`, unit: 'ms', own: edit.time, growth: edit.time.median / perEdit.median, wanted: 'growth about 1', checksum: edit.checksum });
  }
  return lines;
}

function editTimes(cabin: Cabin, before: JudgedCabin): { readonly time: Spread; readonly checksum: string } {
  const times: number[] = [];
  let editor = openEditor(cabin);
  let judged = before;
  for (let round = 0; round <= edits; round += 1) {
    const place = (round * 97) % cabin.parts.length;
    const source = editor.history.present.parts[place]!.sources[0]!;
    const reading = source.specimens[0]!.readings[0]!;
    if (reading.quantity !== 'spectrum') throw new Error('the first reading is a spectrum');
    const changed = { ...reading, values: reading.values.map((value) => value * 1.01) };
    const present = editor.history.present;
    const start = performance.now();
    const result = perform(editor, replaceReading, { specimen: source.specimens[0]!.id, place: 0, reading: changed });
    judged = rejudge(judged, patchCabin(present, cabinPatch(present, result.editor.history.present)));
    if (round > 0) times.push(performance.now() - start);
    editor = { ...result.editor, history: { ...result.editor.history, present: judged.context.cabin } };
  }
  return { time: spreadOf(times), checksum: sumOf(judged) };
}

/** How much longer a whole check of many joints under six lights takes than its kernels, by the engine's own sampling profiler in one run. */
export async function shareBenchmark(joints: number): Promise<readonly BenchLine[]> {
  const cabin = cabinOf(joints);
  judgeCabin(cabinOf(60), sixLights);
  const session = new Session();
  session.connect();
  await session.post('Profiler.enable');
  await session.post('Profiler.setSamplingInterval', { interval: 500 });
  await session.post('Profiler.start');
  const start = performance.now();
  const judged = judgeCabin(cabin, sixLights);
  const took = performance.now() - start;
  const { profile } = await session.post('Profiler.stop');
  session.disconnect();
  const { inside, total } = timeInside(profile, kernels);
  const perJoint = (ms: number): Spread => spreadOf([ms / joints]);
  return [{
    name: `check of ${joints.toLocaleString('en-GB').replaceAll(',', ' ')} joints under 6 lights, a joint`, unit: 'ms', own: perJoint(took),
    beside: { name: 'its kernels in the same run', figure: perJoint((took * inside) / total) }, ratio: inside / total, wanted: 'at least 0.667: at most 1.5 times its kernels', checksum: sumOf(judged),
  }];
}

/** Microseconds of all samples of a profile, and of those that lie in a function of one of these names or in what it calls. */
function timeInside(profile: Profiler.Profile, names: ReadonlySet<string>): { readonly inside: number; readonly total: number } {
  const nodes = new Map(profile.nodes.map((node) => [node.id, node]));
  const parents = new Map(profile.nodes.flatMap((node) => (node.children ?? []).map((child) => [child, node.id] as const)));
  const known = new Map<number, boolean>();
  const within = (id: number | undefined): boolean => {
    if (id === undefined) return false;
    const before = known.get(id);
    if (before !== undefined) return before;
    const own = names.has((nodes.get(id)?.callFrame.functionName ?? '').replace(/\$\d+$/, '')) || within(parents.get(id));
    known.set(id, own);
    return own;
  };
  let [inside, total] = [0, 0];
  profile.samples?.forEach((id, at) => {
    const time = profile.timeDeltas?.[at] ?? 0;
    total += time;
    if (within(id)) inside += time;
  });
  return { inside, total };
}
