import { intBytes, numberBytes, wasmMachine } from '../../wasm/wasm-machine.ts';
import type { DrawTests } from '../draw-tests.ts';
import { testWidth } from '../draw-tests.ts';
import type { StackedDraw } from '../stacked-draw.ts';
import { mark } from './mark-function.ts';

interface Functions {
  /** The parameters of `mark`, in their order. */
  readonly mark: (
    normals: number, columnBytes: number, rank: number, factor: number, means: number, lights: number, testsOfLights: number, table: number,
    pair: number, lastPair: number, stride: number, pairs: number, scratch: number, marks: number,
  ) => void;
}

const [mostRank, mostLights, mostTests, mostPairs] = [24, 24, 96, 4096];
/** Pairs that are marked in one go. */
export const pairsTogether = 256;

const scratchAt = 0;
const meansAt = scratchAt + 2 * mostRank * numberBytes;
const factorAt = meansAt + 3 * mostLights * numberBytes;
const tableAt = factorAt + 3 * mostLights * mostRank * numberBytes;
const countsAt = tableAt + testWidth * mostTests * numberBytes;
const marksAt = countsAt + mostLights * intBytes;
/** Columns of normals stay where they are for as long as the draws are of that many pairs: 2, 4, 8 and so on have a place each. */
const normalsAt = Math.ceil((marksAt + pairsTogether * mostTests) / numberBytes) * numberBytes;
const normalsOf = (pairs: number): number => normalsAt + (pairs - 2) * mostRank * numberBytes;

interface Machine {
  readonly exports: Functions;
  readonly numbers: Float64Array;
  readonly counts: Int32Array;
  readonly marks: Uint8Array;
  /** The columns that lie in the memory, by the number of pairs. */
  readonly columns: Map<number, Float64Array[]>;
}

/** Made when it is first asked for; `null` where the engine has no vectors or is not allowed to compile. */
let machine: Machine | null | undefined;

function start(): Machine | null {
  const exports = wasmMachine<Functions>([mark], normalsOf(2 * mostPairs));
  if (exports === null) return null;
  const { buffer } = exports.memory;
  return {
    exports, columns: new Map(), numbers: new Float64Array(buffer),
    counts: new Int32Array(buffer, countsAt, mostLights), marks: new Uint8Array(buffer, marksAt, pairsTogether * mostTests),
  };
}

/** Marks of some pairs of a draw, from the pair `from` and so far on each time; at most `pairsTogether`. The array is shared and written over. */
export type MarkPairs = (from: number, stride: number, pairs: number) => Uint8Array;

/** Marks draws by vectors of two numbers; undefined where that cannot be. What it gives is good until it is asked for another draw. */
export function marksBySimd(draw: StackedDraw, tests: DrawTests): MarkPairs | undefined {
  const pairs = draw.points / 2;
  const [lights, asked] = [tests.perLight.length, tests.values.length];
  if (draw.rank === 0 || draw.rank > mostRank || lights > mostLights || asked === 0 || asked > mostTests || pairs > mostPairs || tests.perLight.includes(0)) return undefined;
  machine ??= start();
  if (machine === null) return undefined;
  const { exports, numbers, counts, marks } = machine;
  layColumns(machine, draw, pairs);
  numbers.set(draw.factor, factorAt / numberBytes);
  numbers.set(tests.means, meansAt / numberBytes);
  numbers.set(tests.table, tableAt / numberBytes);
  counts.set(tests.perLight);
  const [normals, columnBytes, lastPair] = [normalsOf(pairs), pairs * numberBytes, pairs - 1];
  return (pair, stride, count) => {
    exports.mark(normals, columnBytes, draw.rank, factorAt, meansAt, lights, countsAt, tableAt, pair, lastPair, stride, count, scratchAt, marksAt);
    return marks;
  };
}

function layColumns({ numbers, columns }: Machine, draw: StackedDraw, pairs: number): void {
  const laid = columns.get(pairs) ?? [];
  columns.set(pairs, laid);
  draw.columns.forEach((column, place) => {
    if (laid[place] === column) return;
    numbers.set(column, normalsOf(pairs) / numberBytes + place * pairs);
    laid[place] = column;
  });
}
