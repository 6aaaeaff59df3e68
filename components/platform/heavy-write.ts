import type { CabinPatch } from '../../src/actions/cabin-patch.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { cabinPieces } from '../../src/workers/cabin-pieces.ts';
import type { CabinPiece } from '../../src/workers/cabin-pieces.ts';
import type { ReadingsPiece } from '../../src/workers/import-protocol.ts';

/** Where the keeping worker writes, and what is kept beside the document. */
interface Target {
  readonly database: string;
  readonly version: number;
  readonly kept: { readonly key: string };
}

/** What the keeping worker writes: the patch of the kept document without its pieces. */
export interface HeavyWrite extends Target {
  readonly kind: 'write';
  readonly patch: CabinPatch;
}

/** What the keeping worker writes: the document that came in pieces, in place of what was kept. */
export interface WholeWrite extends Target {
  readonly kind: 'write whole';
}

export type KeepingRequest = { readonly kind: 'gather'; readonly piece: CabinPiece } | ReadingsPiece | HeavyWrite | WholeWrite;
export type HeavyReply = { readonly done: true } | { readonly done: false; readonly name: string; readonly message: string };

/** Writes a change with very many readings in a worker, handed over in pieces: at once it would hold the page for seconds. Rejects as the store itself would. */
export const writeHeavily = (write: Omit<HeavyWrite, 'kind'>, pieces: readonly ReadingsPiece[]): Promise<void> => written({ kind: 'write', ...write }, pieces);

/** Writes a large document as a whole in a worker, likewise. */
export const writeWhole = (cabin: Cabin, write: Omit<WholeWrite, 'kind'>): Promise<void> =>
  written({ kind: 'write whole', ...write }, (function* pieces() { for (const piece of cabinPieces(cabin)) yield { kind: 'gather', piece } as const; })());

async function written(write: HeavyWrite | WholeWrite, pieces: Iterable<KeepingRequest>): Promise<void> {
  const worker = new Worker(new URL('./keeping.worker.ts', import.meta.url), { type: 'module', name: 'keeping' });
  try {
    const reply = new Promise<HeavyReply>((resolve, reject) => {
      worker.addEventListener('message', ({ data }: MessageEvent<HeavyReply>) => resolve(data));
      worker.addEventListener('error', (event) => reject(new Error(event.message || 'The worker could not be started')));
    });
    for (const piece of pieces) {
      worker.postMessage(piece);
      await new Promise((resolve) => setTimeout(resolve));
    }
    worker.postMessage(write);
    const answer = await reply;
    if (!answer.done) throw answer.name === '' || answer.name === 'Error' ? new Error(answer.message) : new DOMException(answer.message, answer.name);
  } finally {
    worker.terminate();
  }
}
