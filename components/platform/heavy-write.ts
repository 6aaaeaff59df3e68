import type { CabinPatch } from '../../src/actions/cabin-patch.ts';
import type { ReadingsPiece } from '../../src/workers/import-protocol.ts';

/** What the keeping worker writes: the patch of the kept document without its pieces, and what is kept beside it. */
export interface HeavyWrite {
  readonly kind: 'write';
  readonly database: string;
  readonly version: number;
  readonly patch: CabinPatch;
  readonly kept: { readonly key: string };
}

export type HeavyReply = { readonly done: true } | { readonly done: false; readonly name: string; readonly message: string };

/** Writes a change with very many readings in a worker, handed over in pieces: at once it would hold the page for seconds. Rejects as the store itself would. */
export async function writeHeavily(write: HeavyWrite, pieces: readonly ReadingsPiece[]): Promise<void> {
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
