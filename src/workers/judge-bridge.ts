import type { JudgedReply, JudgeReply, JudgeRequest, ReadReply, RefusedReply } from './judge-protocol.ts';

const idleMs = 20_000;

/**
 * Judges off the main thread. One job at a time: a new one ends the one before it, and an aborted signal ends the
 * worker, since a running judgement cannot be interrupted in any other way. `read` is told of the cabin as soon as its
 * parts can be shown. An idle worker is let go.
 */
export class JudgeBridge {
  private worker: Worker | undefined;
  private stop: ((reason: unknown) => void) | undefined;
  private idle: ReturnType<typeof setTimeout> | undefined;

  judge(request: JudgeRequest, read: (reply: ReadReply) => void, signal?: AbortSignal): Promise<JudgedReply | RefusedReply> {
    this.stop?.(new DOMException('A newer file was opened', 'AbortError'));
    clearTimeout(this.idle);
    return new Promise((resolve, reject) => {
      if (signal?.aborted) {
        reject(signal.reason);
        return;
      }
      const worker = (this.worker ??= new Worker(new URL('./judge.worker.ts', import.meta.url), { type: 'module', name: 'judge' }));
      const settle = (end: () => void): void => {
        worker.removeEventListener('message', answered);
        worker.removeEventListener('error', failed);
        signal?.removeEventListener('abort', aborted);
        this.stop = undefined;
        end();
      };
      const answered = ({ data }: MessageEvent<JudgeReply>): void => {
        if (data.kind === 'read') {
          read(data);
          return;
        }
        settle(() => {
          this.idle = setTimeout(() => this.dispose(), idleMs);
          resolve(data);
        });
      };
      const failed = (event: ErrorEvent): void => settle(() => {
        this.dispose();
        reject(new Error(event.message || 'The worker could not be started'));
      });
      const aborted = (): void => this.stop?.(signal?.reason);
      this.stop = (reason) => settle(() => {
        this.dispose();
        reject(reason);
      });
      worker.addEventListener('message', answered);
      worker.addEventListener('error', failed);
      signal?.addEventListener('abort', aborted);
      worker.postMessage(request);
    });
  }

  dispose(): void {
    clearTimeout(this.idle);
    this.worker?.terminate();
    this.worker = undefined;
  }
}
