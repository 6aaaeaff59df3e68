import type { WasmFunction } from './wasm-module.ts';
import { wasmModule } from './wasm-module.ts';

interface Exports {
  readonly memory: { readonly buffer: ArrayBuffer };
}

declare const WebAssembly: undefined | {
  readonly Module: new (bytes: Uint8Array<ArrayBuffer>) => object;
  readonly Instance: new (module: object) => { readonly exports: unknown };
};

/** Size of a number and of a whole number in the memory of a module, bytes. */
export const numberBytes = 8;
export const intBytes = 4;

/** Functions over one memory of at least `bytes`, as the given interface calls them; `null` where the engine has no vectors or is not allowed to compile. */
export function wasmMachine<Functions>(functions: readonly WasmFunction[], bytes: number): (Exports & Functions) | null {
  if (typeof WebAssembly === 'undefined') return null;
  try {
    return new WebAssembly.Instance(new WebAssembly.Module(wasmModule(functions, Math.ceil(bytes / 65536)))).exports as Exports & Functions;
  } catch {
    return null;
  }
}
