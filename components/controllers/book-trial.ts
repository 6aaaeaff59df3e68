import type { ReactiveController, ReactiveControllerHost } from 'lit';
import { actionById } from '../../src/actions/index.ts';
import type { JointChange } from '../../src/harmony/compare/index.ts';
import { compareCabins } from '../../src/harmony/compare/index.ts';
import type { Judgement } from '../../src/harmony/judgement.ts';
import type { Desk } from './desk.ts';
import type { OpenCabin } from './open-cabin.ts';

interface Host extends ReactiveControllerHost {
  readonly open: OpenCabin;
  readonly desk: Desk;
}

/** An edit of the rule book that is written and not made yet. */
export interface BookDraft {
  /** Names the field that it stands in. */
  readonly field: string;
  readonly action: string;
  readonly values: Readonly<Record<string, unknown>>;
}

/** What a draft would do to the joints. */
export interface TriedBook {
  readonly judgement: Judgement;
  /** The joints that would be judged otherwise, the worst change first. */
  readonly changes: readonly JointChange[];
}

/** Typing goes on for a while before what it does is worth judging, ms. */
const pauseMs = 220;
/** Work that lasts longer shows how far it is, ms. */
const patienceMs = 300;

/** Judges the cabin by the book as a draft would make it, in the worker: what would change is known before it is applied. A newer draft overtakes the one before. */
export class BookTrial implements ReactiveController {
  draft: BookDraft | undefined;
  /** How far the trial is, once it takes long. */
  share: number | undefined;
  result: TriedBook | undefined;

  constructor(host: Host) {
    this.host = host;
    host.addController(this);
  }

  private readonly host: Host;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private of: Judgement | undefined;

  hostUpdate(): void {
    const { open } = this.host;
    if (this.draft === undefined || this.of === undefined || open === undefined || open.judgement === this.of) return;
    this.begin(this.draft);
  }

  hostDisconnected(): void {
    this.take(undefined);
  }

  /** The draft that stands in a field now; none ends the trial. */
  take(draft: BookDraft | undefined): void {
    if (draft === undefined && this.draft === undefined) return;
    clearTimeout(this.timer);
    this.draft = draft;
    this.share = undefined;
    if (draft === undefined) this.result = undefined;
    else this.begin(draft);
    this.host.requestUpdate();
  }

  private begin(draft: BookDraft): void {
    clearTimeout(this.timer);
    this.result = undefined;
    this.of = this.host.open.judgement;
    this.timer = setTimeout(() => void this.run(draft), pauseMs);
  }

  private async run(draft: BookDraft): Promise<void> {
    const { desk, open } = this.host;
    const cabin = desk.present;
    const edited = cabin === undefined ? undefined : actionById(draft.action)?.run(cabin, draft.values).value;
    if (edited === undefined || edited.ruleBook === undefined) return;
    const begun = performance.now();
    const tried = await desk.judgeBy(edited.ruleBook, (share) => {
      if (this.draft !== draft || performance.now() - begun < patienceMs) return;
      this.share = share;
      this.host.requestUpdate();
    }).catch(() => undefined);
    if (this.draft !== draft || this.of !== open.judgement) return;
    this.share = undefined;
    if (tried?.value !== undefined) {
      const comparison = compareCabins({ cabin: open.cabin, judgement: open.judgement }, { cabin: open.cabin, judgement: tried.value });
      this.result = { judgement: tried.value, changes: comparison.joints.filter(({ kind }) => kind !== 'same') };
    }
    this.host.requestUpdate();
  }
}
