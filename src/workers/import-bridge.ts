import { cabinPatch, patchCabin } from '../actions/cabin-patch.ts';
import type { Cabin } from '../cabin/cabin.ts';
import type { RequestSheet } from '../report/requests/request-sheet.ts';
import type { ChosenFile, FoundReply, ImportAnswer, ImportFile, ImportReply, ImportRequest, PlannedReply, RefusedFile, TakenReply } from './import-protocol.ts';
import type { Numbered } from './session-protocol.ts';
import type { ImportSource } from './imported-again.ts';
import { WorkerLine } from './worker-line.ts';

export interface ImportWatch {
  /** Share of the work that is done, 0 to 1. */
  readonly progress?: (share: number) => void;
  readonly signal?: AbortSignal;
}

interface Waiting {
  readonly content: ImportRequest;
  readonly watch: ImportWatch;
  readonly resolve: (answer: ImportAnswer) => void;
  readonly reject: (reason: unknown) => void;
}

export interface TakenImport {
  /** The cabin with all files that were taken. */
  readonly cabin: Cabin;
  readonly files: PlannedReply['files'];
}

/**
 * The page's end of importing: one worker holds what the files hold and plans where it goes. A reader cannot be interrupted, so a file
 * that is cancelled ends the worker; a new one reads the other files again, of which the blobs stay with the bridge.
 */
export class ImportBridge {
  private line: WorkerLine<Numbered<ImportRequest>, Numbered<ImportReply>> | undefined;
  private readonly waiting = new Map<number, Waiting>();
  private readonly files = new Map<string, Blob>();
  private readonly names = new Map<string, string>();
  /** Files that the present worker holds. */
  private readonly held = new Set<string>();
  private present: Cabin | undefined;
  /** The cabin as the worker was last told. */
  private told: Cabin | undefined;
  private last = 0;

  /** Reads a file under a key of the caller's. An aborted signal stops the reading and rejects with its reason. */
  async read(key: string, name: string, blob: Blob, watch: ImportWatch = {}): Promise<FoundReply | RefusedFile> {
    this.files.set(key, blob);
    this.names.set(key, name);
    const answer = await this.readNow(key, watch);
    if (answer.kind === 'refused') this.forget(key);
    return answer;
  }

  /** What would become of the files in that order on that cabin. */
  async plan(cabin: Cabin, files: readonly ChosenFile[], sheets: readonly RequestSheet[] = []): Promise<PlannedReply> {
    await this.ready(cabin, files);
    return this.ask({ kind: 'plan', files, sheets }) as Promise<PlannedReply>;
  }

  /** The cabin with the files; those that are refused are left out whole. */
  async take(cabin: Cabin, files: readonly ChosenFile[], sheets: readonly RequestSheet[] = []): Promise<TakenImport> {
    await this.ready(cabin, files);
    const { patch, files: planned } = await this.ask({ kind: 'take', files, sheets }) as TakenReply;
    // The worker goes on with the cabin it made; nothing of it is sent back.
    this.told = patchCabin(cabin, patch);
    return { cabin: this.told, files: planned };
  }

  /** The files themselves, to be taken over once more. */
  sources(files: readonly ChosenFile[]): ImportSource['files'] {
    return files.flatMap(({ key, choices }) => {
      const blob = this.files.get(key);
      return blob === undefined ? [] : [{ name: this.names.get(key) ?? key, blob, choices }];
    });
  }

  forget(key: string): void {
    this.files.delete(key);
    this.names.delete(key);
    if (this.held.delete(key)) void this.ask({ kind: 'forget', key }).catch(() => undefined);
  }

  /** Ends the worker; everything that was asked is rejected with the reason. */
  end(reason: unknown = new DOMException('The import was ended', 'AbortError')): void {
    const waiting = [...this.waiting.values()];
    this.stop();
    for (const { reject } of waiting) reject(reason);
  }

  private async readNow(key: string, watch: ImportWatch): Promise<FoundReply | RefusedFile> {
    watch.signal?.throwIfAborted();
    const file: ImportFile = { key, name: this.names.get(key) ?? key, blob: this.files.get(key) ?? new Blob() };
    const answer = await this.ask({ kind: 'read', file }, watch) as FoundReply | RefusedFile;
    if (answer.kind === 'found') this.held.add(key);
    return answer;
  }

  /** Tells the worker what it lacks: files that an ended worker had, and what changed in the cabin. */
  private async ready(cabin: Cabin, files: readonly ChosenFile[]): Promise<void> {
    for (const { key } of files) if (!this.held.has(key) && this.files.has(key)) await this.readNow(key, {});
    this.present = cabin;
    const { told } = this;
    if (cabin === told) return;
    this.told = cabin;
    await this.ask(told === undefined ? { kind: 'cabin', cabin } : { kind: 'patch', patch: cabinPatch(told, cabin) });
  }

  private ask(content: ImportRequest, watch: ImportWatch = {}): Promise<ImportAnswer> {
    const line = (this.line ??= this.start());
    const number = (this.last += 1);
    return new Promise((resolve, reject) => {
      watch.signal?.addEventListener('abort', () => this.cancel(number), { once: true });
      this.waiting.set(number, { content, watch, resolve, reject });
      line.send({ number, content });
    });
  }

  private cancel(number: number): void {
    const cancelled = this.waiting.get(number);
    if (cancelled === undefined) return;
    this.waiting.delete(number);
    const others = [...this.waiting.values()];
    this.stop();
    cancelled.reject(cancelled.watch.signal?.reason);
    for (const { content, watch, resolve, reject } of others) this.again(content, watch).then(resolve, reject);
  }

  /** Asks an unanswered request of a new worker, which knows neither cabin nor files. */
  private async again(content: ImportRequest, watch: ImportWatch): Promise<ImportAnswer> {
    if (content.kind === 'read') return this.readNow(content.file.key, watch);
    if (this.present !== undefined) await this.ready(this.present, content.kind === 'plan' || content.kind === 'take' ? content.files : []);
    return content.kind === 'cabin' || content.kind === 'patch' ? { kind: 'done' } : this.ask(content, watch);
  }

  private stop(): void {
    this.line?.end();
    this.line = undefined;
    this.waiting.clear();
    this.held.clear();
    this.told = undefined;
  }

  private start(): WorkerLine<Numbered<ImportRequest>, Numbered<ImportReply>> {
    return new WorkerLine(new Worker(new URL('./import.worker.ts', import.meta.url), { type: 'module', name: 'import' }), ({ number, content }) => {
      const waiting = this.waiting.get(number);
      if (content.kind === 'progress') waiting?.watch.progress?.(content.share);
      else {
        this.waiting.delete(number);
        waiting?.resolve(content);
      }
    }, (reason) => this.end(reason));
  }
}
