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

/** A cabin that could be read, with what was judged of it, or all the faults that refused it. */
export type JudgeReply =
  | { readonly kind: 'judged'; readonly cabin: Cabin; readonly judgement: Judgement; readonly paths: JointPaths; readonly issues: readonly Issue[] }
  | { readonly kind: 'refused'; readonly issues: readonly Issue[] };
