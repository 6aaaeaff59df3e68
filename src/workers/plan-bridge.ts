import type { Cabin } from '../cabin/cabin.ts';
import type { PlannedReply, PlanOf, PlanProgress, PlanReply, PlanRequest, PlanTask, RefusedPlan } from './plan-protocol.ts';
import { ToldCabins } from './told-cabins.ts';
import { WorkerLine } from './worker-line.ts';

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
  private line: WorkerLine<PlanRequest, PlanReply> | undefined;
  /** What the worker holds. */
  private told = new ToldCabins();
  /** The task that runs hears of its worker. */
  private heard: (reply: PlanReply) => void = () => undefined;
  private failed: (reason: Error) => void = () => undefined;
  private last: Promise<unknown> = Promise.resolve();

  make<T extends PlanTask>(cabin: Cabin, task: T, watch: PlanWatch = {}): Promise<PlannedReply<T['kind'] & keyof PlanOf> | RefusedPlan> {
    const turn = this.last.then(() => this.run(cabin, task, watch));
    this.last = turn.catch(() => undefined);
    return turn as Promise<PlannedReply<T['kind'] & keyof PlanOf> | RefusedPlan>;
  }

  /** Ends the worker; a running task is left unanswered. */
  end(): void {
    this.line?.end();
    this.line = undefined;
    this.told = new ToldCabins();
  }

  private run(cabin: Cabin, task: PlanTask, { progress, signal }: PlanWatch): Promise<PlannedReply | RefusedPlan> {
    return new Promise((resolve, reject) => {
      if (signal?.aborted) {
        reject(signal.reason);
        return;
      }
      const line = (this.line ??= this.start());
      const settle = (settled: () => void): void => {
        signal?.removeEventListener('abort', aborted);
        this.heard = () => undefined;
        settled();
      };
      const lost = (reason: unknown): void => settle(() => {
        this.end();
        reject(reason);
      });
      const aborted = (): void => lost(signal?.reason);
      signal?.addEventListener('abort', aborted);
      this.failed = lost;
      this.heard = (reply) => {
        if (reply.kind === 'progress') progress?.(reply);
        else if (reply.kind === 'failed') lost(new Error(reply.message));
        else settle(() => resolve(reply));
      };
      const further = task.kind === 'mix' ? task.further ?? [] : [];
      // Cabins go by their numbers.
      const short: PlanTask = task.kind === 'mix' ? { kind: 'mix', options: task.options } : task;
      const cabins = this.told.tell([cabin, ...further], (news) => line.send(news));
      line.send({ kind: 'make', task: short, cabins });
    });
  }

  private start(): WorkerLine<PlanRequest, PlanReply> {
    return new WorkerLine(
      new Worker(new URL('./plan.worker.ts', import.meta.url), { type: 'module', name: 'plan' }), (reply) => this.heard(reply), (reason) => this.failed(reason),
    );
  }
}
