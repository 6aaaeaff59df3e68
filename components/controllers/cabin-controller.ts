import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { Judgement } from '../../src/harmony/judgement.ts';
import type { Issue } from '../../src/issue.ts';
import type { JointPaths, ReadReply } from '../../src/workers/judge-protocol.ts';
import { JudgeBridge } from '../../src/workers/judge-bridge.ts';

export interface OpenCabin {
  readonly file: string;
  /** The parts can be shown; the joints are still being judged. */
  readonly judging: boolean;
  readonly cabin: Cabin;
  readonly judgement: Judgement;
  readonly paths: JointPaths;
  /** Warnings and notes of a file that was taken. */
  readonly issues: readonly Issue[];
}

/** A file that was not taken, and why. */
export interface Refusal {
  readonly file: string;
  readonly issues: readonly Issue[];
}

const largestBytes = 256 * 1024 * 1024;

/** The cabin that is open and what is being opened. A refused file leaves what was open as it is. */
export class CabinController implements ReactiveController {
  open: OpenCabin | undefined;
  /** Name of the file being read. */
  loading: string | undefined;
  refusal: Refusal | undefined;

  constructor(host: ReactiveControllerHost) {
    this.host = host;
    host.addController(this);
  }

  private readonly host: ReactiveControllerHost;
  private readonly bridge = new JudgeBridge();
  private work: AbortController | undefined;
  /** The last cabin that was judged to the end: what stays where a newer one fails. */
  private settled: OpenCabin | undefined;

  hostDisconnected(): void {
    this.cancel();
    this.bridge.dispose();
  }

  /** Opens the file of the user; resolves to whether it was taken. */
  openFile(file: File): Promise<boolean> {
    if (file.size > largestBytes) {
      const found = `${Math.round(file.size / 1024 / 1024)} MB`;
      this.refuse({ file: file.name, issues: [{ code: 'file-too-large', severity: 'error', found, expected: 'at most 256 MB' }] });
      return Promise.resolve(false);
    }
    return this.take(file.name, () => file.text());
  }

  /** Opens a cabin beside the page, for example a demo. */
  openAddress(address: string): Promise<boolean> {
    const name = address.split('/').pop() || address;
    return this.take(name, async (signal) => {
      const answer = await fetch(address, { signal });
      if (!answer.ok) throw new Error(`the server answered ${answer.status} for ${address}`);
      return answer.text();
    });
  }

  refuse(refusal: Refusal | undefined): void {
    this.refusal = refusal;
    this.host.requestUpdate();
  }

  cancel(): void {
    this.work?.abort(new DOMException('Cancelled', 'AbortError'));
    this.work = undefined;
    this.loading = undefined;
    this.open = this.settled;
    this.host.requestUpdate();
  }

  private async take(file: string, read: (signal: AbortSignal) => Promise<string>): Promise<boolean> {
    this.cancel();
    const work = new AbortController();
    this.work = work;
    this.loading = file;
    this.refuse(undefined);
    let cabin: Cabin | undefined;
    const shown = (reply: ReadReply): void => {
      if (this.work !== work) return;
      cabin = reply.cabin;
      this.open = { file, judging: true, cabin, judgement: reply.judgement, paths: new Map(), issues: [] };
      this.host.requestUpdate();
    };
    try {
      const reply = await this.bridge.judge({ text: await read(work.signal), file }, shown, work.signal);
      if (this.work !== work) return false;
      if (reply.kind === 'refused') this.refuse({ file, issues: reply.issues });
      else if (cabin !== undefined) {
        this.open = { file, judging: false, cabin, judgement: reply.judgement, paths: reply.paths, issues: reply.issues };
        this.settled = this.open;
      }
      return reply.kind === 'judged';
    } catch (reason) {
      if (this.work === work && !work.signal.aborted) this.refuse({ file, issues: [unreadable(reason)] });
      return false;
    } finally {
      if (this.work === work) {
        this.work = undefined;
        this.loading = undefined;
        this.open = this.settled;
        this.host.requestUpdate();
      }
    }
  }
}

const unreadable = (reason: unknown): Issue => ({
  code: 'not-readable',
  severity: 'error',
  found: reason instanceof Error ? reason.message : String(reason),
  expected: 'a cabin file that can be read',
  hint: 'Check the name and that the file is still there, then open it again.',
});
