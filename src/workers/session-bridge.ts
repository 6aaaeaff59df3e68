import type { CabinPatch } from '../actions/cabin-patch.ts';
import type { Cabin } from '../cabin/cabin.ts';
import type { ReadingsPiece } from './import-protocol.ts';
import { inPieces } from './patch-pieces.ts';
import type { Look, Looks } from './session-look.ts';
import type { ChangedReply, JudgedReply, LookedReply, Numbered, OvertakenReply, ProgressReply, ReadReply, RefusedReply, SessionReply, SessionRequest } from './session-protocol.ts';

interface Waiting {
  readonly meanwhile: (reply: ReadReply | ProgressReply) => void;
  readonly resolve: (reply: SessionReply) => void;
  readonly reject: (reason: unknown) => void;
}

const only = (read: (reply: ReadReply) => void): Waiting['meanwhile'] => (reply) => { if (reply.kind === 'read') read(reply); };

/**
 * The page's end of a session: one worker holds the open document and answers in the order of asking, but for judgements by other books. Opening another document
 * replaces it. A running judgement cannot be interrupted, so `end()` ends the worker with everything it holds.
 */
export class SessionBridge {
  private worker: Worker | undefined;
  private readonly waiting = new Map<number, Waiting>();
  private last = 0;

  /** Reads and judges a file's text; `read` is told of the cabin as soon as its parts can be shown. */
  open(text: string, file: string, read: (reply: ReadReply) => void): Promise<JudgedReply | RefusedReply> {
    return this.ask({ kind: 'open', text, file }, only(read)) as Promise<JudgedReply | RefusedReply>;
  }

  /** Judges a document that is in memory: a new or a recovered one. */
  take(cabin: Cabin, read: (reply: ReadReply) => void): Promise<JudgedReply | RefusedReply> {
    return this.ask({ kind: 'take', cabin }, only(read)) as Promise<JudgedReply | RefusedReply>;
  }

  /** Goes on with the document as edited. */
  async edit(patch: CabinPatch): Promise<ChangedReply | RefusedReply> {
    const pieces: ReadingsPiece[] = [];
    const short = inPieces(patch, (piece) => pieces.push(piece));
    if (pieces.length === 0) return this.ask({ kind: 'edit', patch }) as Promise<ChangedReply | RefusedReply>;
    // Handing over hundreds of thousands of readings at once would hold the page for seconds.
    for (const piece of pieces) {
      (this.worker ??= this.start()).postMessage({ number: 0, content: piece } satisfies Numbered<SessionRequest>);
      await new Promise((resolve) => setTimeout(resolve));
    }
    return this.ask({ kind: 'edit', patch: short }) as Promise<ChangedReply | RefusedReply>;
  }

  /** What an edit would change; the document stays as it is. */
  try(patch: CabinPatch): Promise<ChangedReply | RefusedReply> {
    return this.ask({ kind: 'try', patch }) as Promise<ChangedReply | RefusedReply>;
  }

  /** What would be other by another rule book; it is left off where an edit or another book overtakes it. */
  judgeBy(ruleBook: string | object, progress: (share: number) => void = () => undefined): Promise<ChangedReply | RefusedReply | OvertakenReply> {
    return this.ask({ kind: 'judge by', ruleBook }, (reply) => { if (reply.kind === 'progress') progress(reply.share); }) as Promise<ChangedReply | RefusedReply | OvertakenReply>;
  }

  /** What else there is to see of the document as it was judged last. */
  async look<L extends Look>(look: L): Promise<Looks[L['what']]> {
    return (await this.ask({ kind: 'look', look }) as LookedReply).found as Looks[L['what']];
  }

  /** Ends the worker; everything that was asked is rejected with the reason. */
  end(reason: unknown = new DOMException('The session was ended', 'AbortError')): void {
    this.worker?.terminate();
    this.worker = undefined;
    const waiting = [...this.waiting.values()];
    this.waiting.clear();
    for (const { reject } of waiting) reject(reason);
  }

  private ask(content: SessionRequest, meanwhile: Waiting['meanwhile'] = () => undefined): Promise<SessionReply> {
    const worker = (this.worker ??= this.start());
    const number = (this.last += 1);
    return new Promise((resolve, reject) => {
      this.waiting.set(number, { meanwhile, resolve, reject });
      worker.postMessage({ number, content } satisfies Numbered<SessionRequest>);
    });
  }

  private start(): Worker {
    const worker = new Worker(new URL('./session.worker.ts', import.meta.url), { type: 'module', name: 'session' });
    worker.addEventListener('message', ({ data: { number, content } }: MessageEvent<Numbered<SessionReply>>) => {
      const waiting = this.waiting.get(number);
      if (content.kind === 'read' || content.kind === 'progress') {
        waiting?.meanwhile(content);
        return;
      }
      this.waiting.delete(number);
      waiting?.resolve(content);
    });
    worker.addEventListener('error', (event) => this.end(new Error(event.message || 'The worker could not be started')));
    return worker;
  }
}
