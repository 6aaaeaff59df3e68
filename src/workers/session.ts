import { patchCabin } from '../actions/cabin-patch.ts';
import type { CabinPatch } from '../actions/cabin-patch.ts';
import type { Cabin, Joint } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { cabinStep } from '../cabin/cabin-step.ts';
import type { CabinStep } from '../cabin/cabin-step.ts';
import { jointPath, parseCabin } from '../cabin/index.ts';
import { serialiseCabin } from '../cabin/serialise-cabin.ts';
import { rejudge } from '../harmony/index.ts';
import type { JudgedCabin } from '../harmony/index.ts';
import { judgeByBook, judgeByBookInSteps } from '../harmony/judge-by-book.ts';
import type { JointResult } from '../harmony/judgement.ts';
import { hasErrors } from '../issue.ts';
import type { Issue } from '../issue.ts';
import { judgeInSteps, judgeParts } from './judge-in-steps.ts';
import { judgementPatch } from './judgement-patch.ts';
import { ruleBookOf } from './rule-book-of.ts';
import { lookAt } from './session-look.ts';
import type { Look } from './session-look.ts';
import type { ChangedReply, JudgingReply, SessionReply, SessionRequest } from './session-protocol.ts';

/** What is answered at once, the text of a file at hand. */
export type SessionQuestion = Exclude<SessionRequest, { readonly kind: 'open' | 'look' | 'judge by' | 'text' }> | { readonly kind: 'open'; readonly text: string; readonly file: string };

type Pace = Parameters<typeof judgeInSteps>[2];

interface Held {
  readonly cabin: Cabin;
  readonly judged: JudgedCabin;
}

/** The open document as the worker holds it: judged once, then only what edits touch. */
export class Session {
  /** `pace` makes for every cabin that is opened, by the number of its joints, what says when to tell of those judged by now. */
  constructor(pace: (joints: number) => Pace = () => () => 'nothing') {
    this.pace = pace;
  }

  private readonly pace: (joints: number) => Pace;
  private held: Held | undefined;

  /** Answers a request; of a cabin that is opened it tells what can be shown before all of it is judged. */
  answer(request: SessionQuestion, tell: (reply: SessionReply) => void): SessionReply {
    switch (request.kind) {
      case 'open': {
        const { value, issues } = parseCabin(request.text, request.file);
        return value === undefined || hasErrors(issues) ? { kind: 'refused', issues } : this.begin(value, issues, tell, request.file);
      }
      case 'take': return this.begin(request.cabin, [], tell);
      case 'edit': {
        const held = this.present;
        const next = this.after(held, request.patch);
        if ('kind' in next) return next;
        this.held = next;
        return changes(held, next);
      }
      case 'try': {
        const held = this.present;
        const next = this.after(held, request.patch);
        return 'kind' in next ? next : changes(held, next);
      }
    }
  }

  /** What would be other by another rule book, the share that is done on the way; the document stays as it is. */
  *judgeBy(ruleBook: string | object): Generator<number, SessionReply, void> {
    const { cabin, judged } = this.present;
    const book = ruleBookOf(ruleBook);
    if (book.value === undefined || hasErrors(book.issues)) return { kind: 'refused', issues: book.issues };
    const other = yield* judgeByBookInSteps(judged, book.value);
    return changes({ cabin, judged }, { cabin, judged: other });
  }

  /** The document as the text of its file. */
  text(): string {
    return serialiseCabin(this.present.cabin);
  }

  /** Looks at the document as it is judged now. */
  async look(look: Look): Promise<SessionReply> {
    return { kind: 'looked', found: await lookAt(this.present.judged, look) };
  }

  private get present(): Held {
    if (this.held === undefined) throw new Error('no document is open');
    return this.held;
  }

  private begin(cabin: Cabin, fileIssues: readonly Issue[], tell: (reply: SessionReply) => void, file?: string): SessionReply {
    const book = ruleBookOf(cabin.ruleBook);
    if (book.value === undefined || hasErrors(book.issues)) {
      return { kind: 'refused', issues: [...fileIssues, ...book.issues.map((issue) => (file === undefined ? issue : { ...issue, file }))] };
    }
    const parts = judgeParts(cabin, book.value);
    const { judgement } = parts;
    tell({ kind: 'read', ...(file === undefined ? {} : { cabin }), judgement });
    const steps = judgeInSteps(cabin, parts, this.pace(cabin.joints.length));
    const told: JointResult[] = [];
    let { summary } = judgement;
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done === true) {
        this.held = { cabin, judged: step.value };
        return { kind: 'judged', patch: judgementPatch({ ...judgement, joints: told, summary }, step.value.judgement), issues: [...fileIssues, ...book.issues] };
      }
      if (typeof step.value === 'number') {
        tell({ kind: 'progress', share: step.value / cabin.joints.length });
        continue;
      }
      const { joints } = step.value;
      tell({ kind: 'judging', ...step.value, paths: pathsOf(cabin, told.length, told.length + joints.length) });
      told.push(...joints);
      ({ summary } = step.value);
    }
  }

  private after({ cabin, judged }: Held, patch: CabinPatch): Held | SessionReply {
    const next = patchCabin(cabin, patch);
    if (next.ruleBook === cabin.ruleBook) return { cabin: next, judged: rejudge(judged, next) };
    const book = ruleBookOf(next.ruleBook);
    if (book.value === undefined || hasErrors(book.issues)) return { kind: 'refused', issues: book.issues };
    return { cabin: next, judged: judgeByBook(rejudge(judged, next), book.value) };
  }
}

function pathsOf(cabin: Cabin, from: number, to: number): JudgingReply['paths'] {
  return cabin.joints.slice(from, to).flatMap((joint) => {
    const path = jointPath(cabin, joint);
    return path === undefined ? [] : [[joint.id, path] as const];
  });
}

function changes(before: Held, after: Held): ChangedReply {
  return { kind: 'changed', patch: judgementPatch(before.judged.judgement, after.judged.judgement), paths: movedPaths(before.cabin, after.cabin) };
}

/** Joints that may run elsewhere than before, and those that are gone. */
function movedPaths(before: Cabin, after: Cabin): ChangedReply['paths'] {
  const step = cabinStep(before, after);
  if (step !== undefined) return pathsAfter(before, after, step);
  const outlines = new Map(before.parts.map((part) => [part.id, part.outline]));
  const moved = new Set(after.parts.filter((part) => !outlines.has(part.id) || outlines.get(part.id) !== part.outline).map(({ id }) => id));
  const known = new Map(before.joints.map((joint) => [joint.id, joint]));
  const drawn = new Set(after.joints.map(({ id }) => id));
  const asBefore = (joint: Joint): boolean => {
    const old = known.get(joint.id);
    return old !== undefined && !joint.parts.some((part) => moved.has(part)) && sameCourse(old, joint);
  };
  return [
    ...before.joints.filter(({ id }) => !drawn.has(id)).map(({ id }) => [id, undefined] as const),
    ...after.joints.filter((joint) => !asBefore(joint)).map((joint) => [joint.id, jointPath(after, joint)] as const),
  ];
}

/** The same where every part and joint kept its place: only the changed joints and those of the parts that moved are looked at. */
function pathsAfter(before: Cabin, after: Cabin, { parts, joints }: CabinStep): ChangedReply['paths'] {
  const { jointsOfParts } = cabinIndex(after);
  const reached = new Set([
    ...joints.filter((place) => !sameCourse(before.joints[place], after.joints[place])),
    ...parts.filter((place) => before.parts[place].outline !== after.parts[place].outline).flatMap((place) => jointsOfParts.get(after.parts[place].id) ?? []),
  ]);
  return [...reached].map((place) => [after.joints[place].id, jointPath(after, after.joints[place])] as const);
}

const sameCourse = (old: Joint, joint: Joint): boolean =>
  old === joint || (old.kind === joint.kind && old.path === joint.path && old.parts[0] === joint.parts[0] && old.parts[1] === joint.parts[1]);
