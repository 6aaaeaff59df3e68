import type { Code } from './wasm-code.ts';
import { unsigned } from './wasm-code.ts';

const int32 = 0x7f;
const vector128 = 0x7b;

/** A function without result: whole-number parameters, then whole-number and vector locals, numbered in that order. */
export interface WasmFunction {
  readonly name: string;
  readonly parameters: number;
  readonly integers: number;
  readonly vectors: number;
  readonly body: Code;
}

const list = (items: readonly Code[]): Code => [...unsigned(items.length), ...items.flat()];
const sized = (bytes: Code): Code => [...unsigned(bytes.length), ...bytes];
const section = (id: number, bytes: Code): Code => [id, ...sized(bytes)];
const text = (value: string): Code => sized([...value].map((letter) => letter.charCodeAt(0)));

/** A module of functions over one memory of `pages` times 64 KiB, exported as `memory` beside them. */
export function wasmModule(functions: readonly WasmFunction[], pages: number): Uint8Array<ArrayBuffer> {
  const types = functions.map(({ parameters }): Code => [0x60, ...sized(Array.from({ length: parameters }, () => int32)), 0]);
  const exports = functions.map(({ name }, index): Code => [...text(name), 0x00, ...unsigned(index)]);
  const bodies = functions.map(({ integers, vectors, body }) =>
    sized([...list([[...unsigned(integers), int32], [...unsigned(vectors), vector128]]), ...body, 0x0b]));
  return Uint8Array.from([
    0x00, 0x61, 0x73, 0x6d, 0x01, 0x00, 0x00, 0x00,
    ...section(1, list(types)),
    ...section(3, list(functions.map((_, index) => unsigned(index)))),
    ...section(5, list([[0x01, ...unsigned(pages), ...unsigned(pages)]])),
    ...section(7, list([[...text('memory'), 0x02, 0x00], ...exports])),
    ...section(10, list(bodies)),
  ]);
}
