import type { CabinPatch } from '../actions/cabin-patch.ts';
import type { Cabin } from '../cabin/cabin.ts';
import { Opening } from './opening.ts';
import type { Opened, OpenedWhole } from './opening.ts';
import type { Look, Looks } from './session-look.ts';
import type { ChangedReply, JudgedReply, JudgingReply, LookedReply, Numbered, OvertakenReply, ProgressReply, ReadReply, RefusedReply, SessionReply, SessionRequest, TextReply } from './session-protocol.ts';
import { WorkerLine } from './worker-line.ts';

type Meanwhile = ReadReply | JudgingReply | ProgressReply;

/** Told of a cabin as it can be shown by now; of the share of its joints that is judged where that alone is news. */
export type Show = (opened: Opened, share?: number) => void;

interface Waiting {
  readonly meanwhile: (reply: Meanwhile) => void;
  readonly resolve: (reply: SessionReply) => void;
  readonly reject: (reason: unknown) => void;
}

const isMeanwhile = (reply: SessionReply): reply is Meanwhile => ['read', 'judging', 'progress'].includes(reply.kind);

/**
 * The page's end of a session: one worker holds the open document and answers in the order of asking, but for judgements by other books. Opening another document
 * replaces it. A running judgement cannot be interrupted, so `end()` ends the worker with everything it holds.
 */
export class SessionBridge {
  private line: WorkerLine<Numbered<SessionRequest>, Numbered<SessionReply>> | undefined;
  private readonly waiting = new Map<number, Waiting>();
  private last = 0;

  /** Reads and judges a file's text; `show` is told of the cabin as soon as its parts can be shown, and again with every lot of joints that is judged. */
  open(text: string | Pick<Blob, 'text'>, file: string, show: Show): Promise<OpenedWhole | RefusedReply> {
    return this.opened({ kind: 'open', text, file }, show);
  }

  /** Judges a document that is in memory: a new or a recovered one. */
  take(cabin: Cabin, show: Show): Promise<OpenedWhole | RefusedReply> {
    return this.opened({ kind: 'take', cabin }, show, cabin);
  }

  /** Goes on with the document as edited. */
  edit(patch: CabinPatch): Promise<ChangedReply | RefusedReply> {
    return this.ask({ kind: 'edit', patch }) as Promise<ChangedReply | RefusedReply>;
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

  /** The document as the worker holds it, as the text of its file. */
  async text(): Promise<Blob> {
    return (await this.ask({ kind: 'text' }) as TextReply).text;
  }

  /** Ends the worker; everything that was asked is rejected with the reason. */
  end(reason: unknown = new DOMException('The session was ended', 'AbortError')): void {
    this.line?.end();
    this.line = undefined;
    const waiting = [...this.waiting.values()];
    this.waiting.clear();
    for (const { reject } of waiting) reject(reason);
  }

  private async opened(content: SessionRequest, show: Show, cabin?: Cabin): Promise<OpenedWhole | RefusedReply> {
    const opening = new Opening(cabin);
    let latest: Opened | undefined;
    const reply = await this.ask(content, (news) => {
      if (news.kind !== 'progress') latest = opening.take(news);
      if (latest !== undefined) show(latest, news.kind === 'progress' ? news.share : undefined);
    });
    return reply.kind === 'refused' ? reply : opening.end(reply as JudgedReply);
  }

  private ask(content: SessionRequest, meanwhile: Waiting['meanwhile'] = () => undefined): Promise<SessionReply> {
    const line = (this.line ??= this.start());
    const number = (this.last += 1);
    return new Promise((resolve, reject) => {
      this.waiting.set(number, { meanwhile, resolve, reject });
      line.send({ number, content });
    });
  }

  private start(): WorkerLine<Numbered<SessionRequest>, Numbered<SessionReply>> {
    return new WorkerLine(new Worker(new URL('./session.worker.ts', import.meta.url), { type: 'module', name: 'session' }), ({ number, content }) => {
      const waiting = this.waiting.get(number);
      if (isMeanwhile(content)) {
        waiting?.meanwhile(content);
        return;
      }
      this.waiting.delete(number);
      waiting?.resolve(content);
    }, (reason) => this.end(reason));
  }
}
