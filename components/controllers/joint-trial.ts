import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { Judgement } from '../../src/harmony/judgement.ts';
import { proposedCabin } from '../../src/plan/proposal/proposed-cabin.ts';
import type { Trial } from '../../src/plan/proposal/proposed-cabin.ts';
import { isNothing } from '../model/trial-text.ts';

/** What judges a cabin that is not the document. */
export interface Trier {
  tryOut(cabin: Cabin): Promise<Judgement | undefined>;
}

/** A change that is tried at one joint, and what comes of it. While one is judged the latest wish waits; those between are passed over. */
export class JointTrial implements ReactiveController {
  trial: Trial = {};
  /** How the cabin would be judged; undefined where nothing is tried, or not judged yet. */
  judgement: Judgement | undefined;
  /** Parts that change along, since they borrow the same readings. */
  together: readonly string[] = [];

  constructor(host: ReactiveControllerHost) {
    this.host = host;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost;
  private wish: (() => Promise<void>) | undefined;
  private running = false;

  hostDisconnected(): void {
    this.reset();
  }

  reset(): void {
    this.trial = {};
    this.judgement = undefined;
    this.together = [];
    this.wish = undefined;
    this.host.requestUpdate();
  }

  /** Tries the change on the cabin as it is judged now. */
  set(trial: Trial, joint: string, cabin: Cabin, judgement: Judgement, by: Trier | undefined): void {
    if (isNothing(trial) || by === undefined) {
      this.reset();
      return;
    }
    this.trial = trial;
    this.wish = async () => {
      const proposed = proposedCabin(cabin, joint, trial, judgement);
      const tried = await by.tryOut(proposed.cabin);
      if (isNothing(this.trial)) return;
      this.judgement = tried;
      this.together = proposed.together;
      this.host.requestUpdate();
    };
    this.host.requestUpdate();
    void this.run();
  }

  private async run(): Promise<void> {
    if (this.running) return;
    this.running = true;
    try {
      for (let wish = this.wish; wish !== undefined; wish = this.wish) {
        this.wish = undefined;
        await wish();
      }
    } catch {
      // The worker was ended, as when another cabin is opened: the trial goes with it.
      this.reset();
    } finally {
      this.running = false;
    }
  }
}
