import type { Issue } from '../../src/issue.ts';

/** What is asked of the keeping worker: the text of a kept document as it was last, or to write that in place of its last whole copy and its journal. */
export interface KeepingRequest {
  readonly kind: 'recover' | 'fold';
  readonly database: string;
  readonly key: string;
}

/** `text` is absent where the document is not kept, or cannot be read. */
export interface KeepingReply {
  readonly text?: Blob;
  readonly issues: readonly Issue[];
}

/** Asks the worker once; rejects where it cannot be started or the store fails. */
export async function askKeeping(request: KeepingRequest): Promise<KeepingReply> {
  const worker = new Worker(new URL('./keeping.worker.ts', import.meta.url), { type: 'module', name: 'keeping' });
  try {
    return await new Promise<KeepingReply>((resolve, reject) => {
      worker.addEventListener('message', ({ data }: MessageEvent<KeepingReply>) => resolve(data));
      worker.addEventListener('error', (event) => reject(new Error(event.message || 'The worker could not be started')));
      worker.postMessage(request);
    });
  } finally {
    worker.terminate();
  }
}
