import type { Cabin } from '../cabin/cabin.ts';
import { handOver } from './hand-over.ts';
import type { PlannedReply, PlanOf, PlanProgress, PlanReply, PlanRequest, PlanTask, RefusedPlan } from './plan-protocol.ts';

export interface PlanWatch {
  readonly progress?: (progress: PlanProgress) => void;
  readonly signal?: AbortSignal;
}

/**
 * Makes plans off the main thread, one after the other, in one worker that is kept: it knows a cabin again that it was given before.
 * A solver cannot be interrupted, so an aborted signal ends the worker with all it knows and rejects with its reason; the next task starts
 * another. What is wrong with the terms is an answer, a fault of the program rejects.
 */
export class PlanBridge {
  private worker: Worker | undefined;
  /** What the worker holds. */
  private told: Cabin | undefined;
  private last: Promise<unknown> = Promise.resolve();

  make<T extends PlanTask>(cabin: Cabin, task: T, watch: PlanWatch = {}): Promise<PlannedReply<T['kind'] & keyof PlanOf> | RefusedPlan> {
    const turn = this.last.then(() => this.run(cabin, task, watch));
    this.last = turn.catch(() => undefined);
    return turn as Promise<PlannedReply<T['kind'] & keyof PlanOf> | RefusedPlan>;
  }

  /** Ends the worker; a running task is left unanswered. */
  end(): void {
    this.worker?.terminate();
    this.worker = undefined;
    this.told = undefined;
  }

  private run(cabin: Cabin, task: PlanTask, { progress, signal }: PlanWatch): Promise<PlannedReply | RefusedPlan> {
    return new Promise((resolve, reject) => {
      if (signal?.aborted) {
        reject(signal.reason);
        return;
      }
      const worker = (this.worker ??= new Worker(new URL('./plan.worker.ts', import.meta.url), { type: 'module', name: 'plan' }));
      const settle = (settled: () => void): void => {
        signal?.removeEventListener('abort', aborted);
        worker.removeEventListener('message', heard);
        worker.removeEventListener('error', failed);
        settled();
      };
      const lost = (reason: unknown): void => settle(() => {
        this.end();
        reject(reason);
      });
      const aborted = (): void => lost(signal?.reason);
      const failed = (event: ErrorEvent): void => lost(new Error(event.message || 'The worker could not be started'));
      const heard = ({ data }: MessageEvent<PlanReply>): void => {
        if (data.kind === 'progress') progress?.(data);
        else if (data.kind === 'failed') lost(new Error(data.message));
        else settle(() => resolve(data));
      };
      signal?.addEventListener('abort', aborted);
      worker.addEventListener('message', heard);
      worker.addEventListener('error', failed);
      const anew = this.told !== cabin;
      const post = (request: PlanRequest): void => worker.postMessage(request);
      const told = anew ? handOver(cabin, (piece) => post({ kind: 'gather', piece }), () => this.worker === worker) : Promise.resolve();
      told.then(() => {
        if (this.worker !== worker) return;
        post({ kind: 'make', task, anew });
        this.told = cabin;
      }).catch(lost);
    });
  }
}
