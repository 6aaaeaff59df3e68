import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { Issue } from '../../src/issue.ts';
import { PlanBridge } from '../../src/workers/plan-bridge.ts';
import type { PlanOf, PlanTask } from '../../src/workers/plan-protocol.ts';

type TaskOf<K extends keyof PlanOf> = Extract<PlanTask, { readonly kind: K }>;

/** Views share one worker, since one plan is looked at at a time and what it knows of the cabin serves them all. */
const bridge = new PlanBridge();

/**
 * One kind of plan as a view follows it: what is being made, how far it is, what came of it. A new task ends the one that runs; the last
 * plan stays to be looked at meanwhile.
 */
export class PlanRun<K extends keyof PlanOf> implements ReactiveController {
  /** The last plan that was made, of which cabin and on which terms. */
  made: { readonly plan: PlanOf[K]; readonly cabin: Cabin; readonly task: TaskOf<K> } | undefined;
  running: { readonly share: number; readonly doing: string } | undefined;
  /** What was wrong with the terms. */
  issues: readonly Issue[] = [];
  /** The user ended the last task, or the program failed at it. */
  ended: 'stopped' | 'failed' | undefined;

  constructor(host: ReactiveControllerHost, done: (plan: PlanOf[K]) => void = () => undefined) {
    this.host = host;
    this.done = done;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost;
  private readonly done: (plan: PlanOf[K]) => void;
  private work: AbortController | undefined;

  hostDisconnected(): void {
    if (this.running !== undefined) this.cancel();
  }

  async start(cabin: Cabin, task: TaskOf<K>): Promise<void> {
    this.work?.abort(new DOMException('Another plan was asked for', 'AbortError'));
    const work = new AbortController();
    this.work = work;
    this.running = { share: 0, doing: 'starting' };
    this.ended = undefined;
    this.issues = [];
    this.host.requestUpdate();
    try {
      const reply = await bridge.make(cabin, task, {
        signal: work.signal,
        progress: ({ share, doing }) => {
          if (this.work !== work) return;
          this.running = { share, doing };
          this.host.requestUpdate();
        },
      });
      if (this.work !== work) return;
      if (reply.kind === 'refused') this.issues = reply.issues;
      else {
        this.made = { plan: reply.plan as PlanOf[K], cabin, task };
        this.done(this.made.plan);
      }
    } catch {
      if (this.work !== work) return;
      if (!work.signal.aborted) this.ended = 'failed';
    }
    this.work = undefined;
    this.running = undefined;
    this.host.requestUpdate();
  }

  /** The user has waited enough. */
  cancel(): void {
    if (this.work === undefined) return;
    const { work } = this;
    this.work = undefined;
    this.running = undefined;
    this.ended = 'stopped';
    work.abort(new DOMException('Stopped', 'AbortError'));
    this.host.requestUpdate();
  }

  forget(): void {
    this.cancel();
    this.made = undefined;
    this.issues = [];
    this.ended = undefined;
  }
}
