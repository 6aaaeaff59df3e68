import type { Selection } from '../../src/actions/selection.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { Judgement } from '../../src/harmony/judgement.ts';
import type { Issue } from '../../src/issue.ts';
import type { JointPaths } from '../../src/workers/session-protocol.ts';

/** The cabin that is open, as the views see it. A new object whenever anything of it changes. */
export interface OpenCabin {
  /** Name of the file, or of the cabin where it is in none. */
  readonly file: string;
  /** The parts can be shown, and the joints that `judgement` has by now; the others are still being judged. */
  readonly judging: boolean;
  /** The document that `judgement` and `paths` belong to; an edit shows here once it is judged. */
  readonly cabin: Cabin;
  readonly judgement: Judgement;
  readonly paths: JointPaths;
  /** Warnings and notes of a file that was taken. */
  readonly issues: readonly Issue[];
  readonly selection: Selection;
  /** It has changes that are not in its file. */
  readonly unsaved: boolean;
  /** What undo and redo would do, in words. */
  readonly undo: string | undefined;
  readonly redo: string | undefined;
  /** Another tab owns the document; it can be seen here and not changed. */
  readonly locked: boolean;
}

/** A file that was not taken, and why. */
export interface Refusal {
  readonly file: string;
  readonly issues: readonly Issue[];
}
