import { numberBytes, wasmMachine } from '../../../wasm/wasm-machine.ts';
import { hueRotationTable } from '../hue-rotation-table.ts';
import type { LabColumns } from '../lab-columns.ts';
import { ciede2000, columnBytes } from './ciede2000-function.ts';

interface Functions {
  /** The parameters of `ciede2000`, in their order. */
  readonly ciede2000: (at: number, twos: number, factors: number, table: number) => void;
}

const columnLength = columnBytes / numberBytes;
/** The six columns of coordinates and that of the differences. */
const columns = 7;
const factorsAt = columns * columnLength;
const tableAt = factorsAt + 4;
/** Below so many pairs it costs more to carry them over. */
const fewestPairs = 8;

interface Machine {
  readonly numbers: Float64Array;
  readonly exports: Functions;
}

/** Made when it is first asked for; `null` where the engine has no vectors or is not allowed to compile. */
let machine: Machine | null | undefined;

function start(): Machine | null {
  const exports = wasmMachine<Functions>([ciede2000], (tableAt + hueRotationTable.length) * numberBytes);
  if (exports === null) return null;
  const numbers = new Float64Array(exports.memory.buffer);
  numbers.set(hueRotationTable, tableAt);
  return { exports, numbers };
}

/** CIEDE2000 of the colours in the same places of two columns by vectors of two numbers; false, with nothing done, where that cannot be or does not pay. */
export function ciede2000BySimd(standard: LabColumns, trial: LabColumns, into: Float64Array, kL: number, kC: number, kH: number): boolean {
  if (into.length < fewestPairs) return false;
  machine ??= start();
  if (machine === null) return false;
  const { numbers, exports } = machine;
  const coordinates = [standard.L, standard.a, standard.b, trial.L, trial.a, trial.b];
  numbers[factorsAt] = kL;
  numbers[factorsAt + 1] = kC;
  numbers[factorsAt + 2] = kH;
  for (let from = 0; from < into.length; from += columnLength) {
    const count = Math.min(columnLength, into.length - from);
    coordinates.forEach((column, place) => numbers.set(column.subarray(from, from + count), place * columnLength));
    exports.ciede2000(0, Math.ceil(count / 2), factorsAt * numberBytes, tableAt * numberBytes);
    into.set(numbers.subarray((columns - 1) * columnLength, (columns - 1) * columnLength + count), from);
  }
  return true;
}
