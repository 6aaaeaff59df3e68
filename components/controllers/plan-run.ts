import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { Issue } from '../../src/issue.ts';
import { PlanBridge } from '../../src/workers/plan-bridge.ts';
import type { PlanOf, PlanTask } from '../../src/workers/plan-protocol.ts';

type TaskOf<K extends keyof PlanOf> = Extract<PlanTask, { readonly kind: K }>;

/** A plan that a view wants to show. */
export interface WantedPlan<K extends keyof PlanOf> {
  readonly cabin: Cabin;
  readonly task: TaskOf<K>;
}

/** Views share one worker, since one plan is looked at at a time and what it knows of the cabin serves them all. */
const bridge = new PlanBridge();

/**
 * One kind of plan as a view follows it: what is being made, how far it is, what came of it. Before each update of the view it looks at
 * what is wanted, and begins where that is another cabin or other terms than were asked for last; a cabin that was edited is planned
 * anew only with `again`. A new task ends the one that runs; the last plan stays to be looked at meanwhile.
 */
export class PlanRun<K extends keyof PlanOf> implements ReactiveController {
  /** The last plan that was made, of which cabin and on which terms. */
  made: (WantedPlan<K> & { readonly plan: PlanOf[K] }) | undefined;
  running: { readonly share: number; readonly doing: string } | undefined;
  /** What was wrong with the terms. */
  issues: readonly Issue[] = [];
  /** The user ended the last task, or the program failed at it. */
  ended: 'stopped' | 'failed' | undefined;

  constructor(host: ReactiveControllerHost, wanted: () => WantedPlan<K> | undefined, done: (plan: PlanOf[K]) => void = () => undefined) {
    this.host = host;
    this.wanted = wanted;
    this.done = done;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost;
  private readonly wanted: () => WantedPlan<K> | undefined;
  private readonly done: (plan: PlanOf[K]) => void;
  private work: AbortController | undefined;
  private asked = '';

  hostUpdate(): void {
    const wanted = this.wanted();
    if (wanted === undefined) return;
    const key = keyOf(wanted);
    if (key === this.asked) return;
    if (this.made !== undefined && this.made.cabin.id !== wanted.cabin.id) this.made = undefined;
    this.asked = key;
    void this.make(wanted);
  }

  hostDisconnected(): void {
    if (this.running !== undefined) this.cancel();
  }

  /** Plans what is wanted once more, of the cabin as it is now. */
  again(): void {
    const wanted = this.wanted();
    if (wanted === undefined) return;
    this.asked = keyOf(wanted);
    void this.make(wanted);
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

  private async make({ cabin, task }: WantedPlan<K>): Promise<void> {
    this.work?.abort(new DOMException('Another plan was asked for', 'AbortError'));
    const work = new AbortController();
    this.work = work;
    this.running = { share: 0, doing: 'starting' };
    this.ended = undefined;
    this.issues = [];
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
}

/** What tells one question from another. Cabins that come along are told by their ids. */
const keyOf = <K extends keyof PlanOf>({ cabin, task }: WantedPlan<K>): string =>
  JSON.stringify([cabin.id, task], (name, value: unknown) => (name === 'further' && Array.isArray(value) ? value.map((each: Cabin) => each.id) : value));
