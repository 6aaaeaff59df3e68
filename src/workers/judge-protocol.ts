import type { Cabin } from '../cabin/cabin.ts';
import type { JointPath } from '../cabin/index.ts';
import type { Judgement } from '../harmony/judgement.ts';
import type { Issue } from '../issue.ts';

/** A file's text to be read and judged. */
export interface JudgeRequest {
  readonly text: string;
  readonly file: string;
}

/** Where every joint that can be drawn runs on the map, by its id. */
export type JointPaths = ReadonlyMap<string, JointPath>;

/** A cabin that could be read and will be judged: what its parts look like is known, no joint is judged yet. */
export interface ReadReply {
  readonly kind: 'read';
  readonly cabin: Cabin;
  readonly judgement: Judgement;
}

export interface JudgedReply {
  readonly kind: 'judged';
  readonly judgement: Judgement;
  readonly paths: JointPaths;
  /** Warnings and notes of the file. */
  readonly issues: readonly Issue[];
}

/** All the faults that refused the file. */
export interface RefusedReply {
  readonly kind: 'refused';
  readonly issues: readonly Issue[];
}

/** The worker answers with `read` and then `judged`, or with `refused` alone. */
export type JudgeReply = ReadReply | JudgedReply | RefusedReply;
