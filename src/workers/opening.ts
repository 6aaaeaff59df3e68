import type { Cabin } from '../cabin/cabin.ts';
import type { JointResult, Judgement } from '../harmony/judgement.ts';
import type { JointPath } from '../cabin/index.ts';
import type { Issue } from '../issue.ts';
import { patchJudgement } from './judgement-patch.ts';
import type { JointPaths, JudgedReply, JudgingReply, ReadReply } from './session-protocol.ts';

/** A cabin that is opened, as far as it is judged: first only how its parts look, then ever more joints, in the order of the document. */
export interface Opened {
  readonly cabin: Cabin;
  readonly judgement: Judgement;
  readonly paths: JointPaths;
}

/** The same with every joint judged, and what was to be said of its file. */
export interface OpenedWhole extends Opened {
  readonly kind: 'judged';
  readonly issues: readonly Issue[];
}

/** Puts together on the page what the worker tells of a cabin that it opens. */
export class Opening {
  /** `cabin` where the page had it and handed it over; else the worker read it and tells of it. */
  constructor(cabin?: Cabin) {
    this.cabin = cabin;
  }

  private readonly cabin: Cabin | undefined;
  private opened: Opened | undefined;

  /** Takes a reply; gives the cabin as it can be shown now. */
  take(reply: ReadReply | JudgingReply): Opened {
    switch (reply.kind) {
      case 'read': {
        const cabin = this.cabin ?? reply.cabin;
        if (cabin === undefined) throw new Error('a cabin that is read is told of');
        this.opened = { cabin, judgement: reply.judgement, paths: new Map() };
        return this.opened;
      }
      case 'judging': {
        const { cabin, judgement, paths } = this.shown;
        const joints: readonly JointResult[] = [...judgement.joints, ...reply.joints];
        // The map grows in place, since those who draw from it look at it anew with every lot of joints: to copy it for each would cost the square.
        for (const [joint, path] of reply.paths) (paths as Map<string, JointPath>).set(joint, path);
        this.opened = { cabin, judgement: { ...judgement, joints, summary: reply.summary }, paths };
        return this.opened;
      }
    }
  }

  end({ patch, issues }: JudgedReply): OpenedWhole {
    const { cabin, judgement, paths } = this.shown;
    return { kind: 'judged', cabin, judgement: patchJudgement(judgement, patch), paths, issues };
  }

  private get shown(): Opened {
    if (this.opened === undefined) throw new Error('a cabin is judged after it was read');
    return this.opened;
  }
}
