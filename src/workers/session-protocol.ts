import type { CabinPatch } from '../actions/cabin-patch.ts';
import type { Cabin } from '../cabin/cabin.ts';
import type { JointPath } from '../cabin/index.ts';
import type { Judgement } from '../harmony/judgement.ts';
import type { Issue } from '../issue.ts';
import type { JudgedStep } from './judge-in-steps.ts';
import type { JudgementPatch } from './judgement-patch.ts';
import type { Look, LookName, Looks } from './session-look.ts';

/** Where every joint that can be drawn runs on the map, by its id. */
export type JointPaths = ReadonlyMap<string, JointPath>;

/** What the page asks of the session's worker. Edits count from the document the worker holds; a trial leaves that as it is. */
export type SessionRequest =
  | { readonly kind: 'open'; readonly text: string | Pick<Blob, 'text'>; readonly file: string }
  | { readonly kind: 'take'; readonly cabin: Cabin }
  | { readonly kind: 'edit'; readonly patch: CabinPatch }
  | { readonly kind: 'try'; readonly patch: CabinPatch }
  | { readonly kind: 'judge by'; readonly ruleBook: string | object }
  | { readonly kind: 'look'; readonly look: Look }
  | { readonly kind: 'text' };

/** A cabin could be read and will be judged: what its parts look like is known, no joint is judged yet. */
export interface ReadReply {
  readonly kind: 'read';
  /** Absent where the page handed it over. */
  readonly cabin?: Cabin;
  readonly judgement: Judgement;
}

/** Joints that were judged since the last such reply. */
export interface JudgingReply extends JudgedStep {
  readonly kind: 'judging';
  readonly paths: readonly (readonly [joint: string, path: JointPath])[];
}

/** Every joint is judged, and was told of before. */
export interface JudgedReply {
  readonly kind: 'judged';
  /** What the judgement says beside its joints and parts. */
  readonly patch: JudgementPatch;
  /** Warnings and notes of the file. */
  readonly issues: readonly Issue[];
}

/** All the faults that refused the file, the rule book or the edit. */
export interface RefusedReply {
  readonly kind: 'refused';
  readonly issues: readonly Issue[];
}

/** What an edit, or a trial, changes. A path is `undefined` where the joint cannot be drawn any more. */
export interface ChangedReply {
  readonly kind: 'changed';
  readonly patch: JudgementPatch;
  readonly paths: readonly (readonly [joint: string, path: JointPath | undefined])[];
}

/** How much of a judgement is done, 0..1. */
export interface ProgressReply {
  readonly kind: 'progress';
  readonly share: number;
}

/** A judgement by another rule book that was left off, since the document was edited or another one was asked for. */
export interface OvertakenReply {
  readonly kind: 'overtaken';
}

/** What was looked at of the document as it was judged last. */
export interface LookedReply {
  readonly kind: 'looked';
  readonly found: Looks[LookName];
}

/** The document as the text of its file. */
export interface TextReply {
  readonly kind: 'text';
  readonly text: Blob;
}

/** `open` and `take` are answered with `read`, `judging` and `progress` as often as need be and `judged`, or with `refused` alone; `edit` and `try` with `changed`; `judge by` with `progress` while it lasts and then `changed`, `refused` or `overtaken`; `look` with `looked`; `text` with `text`. */
export type SessionReply = ReadReply | JudgingReply | JudgedReply | RefusedReply | ChangedReply | ProgressReply | OvertakenReply | LookedReply | TextReply;

/** Requests carry a number that their replies repeat. */
export interface Numbered<T> {
  readonly number: number;
  readonly content: T;
}
