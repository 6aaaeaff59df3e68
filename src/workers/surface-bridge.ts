import type { MeasuredReply, RefusedSurface, SurfaceProgress, SurfaceReply, SurfaceRequest } from './surface-protocol.ts';

export interface SurfaceWatch {
  readonly progress?: (progress: SurfaceProgress) => void;
  readonly signal?: AbortSignal;
}

/**
 * Reads and measures surfaces off the main thread, one after the other, each in a worker of its own that is ended afterwards, since a large map takes
 * hundreds of megabytes. The bytes are handed over and gone for the caller. An aborted signal ends the worker at once and rejects with its reason;
 * whatever is wrong with the file is an answer.
 */
export class SurfaceBridge {
  private last: Promise<unknown> = Promise.resolve();

  measure(request: SurfaceRequest, watch: SurfaceWatch = {}): Promise<MeasuredReply | RefusedSurface> {
    const turn = this.last.then(() => this.run(request, watch));
    this.last = turn.catch(() => undefined);
    return turn;
  }

  private run(request: SurfaceRequest, { progress, signal }: SurfaceWatch): Promise<MeasuredReply | RefusedSurface> {
    return new Promise((resolve, reject) => {
      if (signal?.aborted) {
        reject(signal.reason);
        return;
      }
      const worker = new Worker(new URL('./surface.worker.ts', import.meta.url), { type: 'module', name: 'surface' });
      const end = (settle: () => void): void => {
        worker.terminate();
        signal?.removeEventListener('abort', aborted);
        settle();
      };
      const aborted = (): void => end(() => reject(signal?.reason));
      signal?.addEventListener('abort', aborted);
      worker.addEventListener('message', ({ data }: MessageEvent<SurfaceReply>) => {
        if (data.kind === 'progress') progress?.(data);
        else end(() => resolve(data));
      });
      worker.addEventListener('error', (event) => end(() => reject(new Error(event.message || 'The worker could not be started'))));
      const { bytes } = request;
      // A part of a larger buffer is copied, so that the rest stays the caller's.
      const own = bytes.byteLength === bytes.buffer.byteLength ? bytes : bytes.slice();
      worker.postMessage({ ...request, bytes: own } satisfies SurfaceRequest, [own.buffer as ArrayBuffer]);
    });
  }
}
