import type { ChildProcess } from 'node:child_process';
import { spawn } from 'node:child_process';
import type { Readable, Writable } from 'node:stream';

type Reply = { readonly id?: number; readonly method?: string; readonly sessionId?: string; readonly result?: Readonly<Record<string, unknown>>; readonly error?: { readonly message: string } };

/** A Chromium that is spoken to over two pipes in the Chrome DevTools Protocol. Ends with `close()`, whatever it is doing. */
export class BrowserPipe {
  private readonly process: ChildProcess;
  private readonly waiting = new Map<number, { readonly resolve: (result: Readonly<Record<string, unknown>>) => void; readonly reject: (reason: Error) => void }>();
  private readonly listeners = new Set<(reply: Reply) => void>();
  private readonly failed: Promise<never>;
  private last = 0;
  private rest = '';

  constructor(program: string, flags: readonly string[]) {
    this.process = spawn(program, [...flags, '--remote-debugging-pipe', 'about:blank'], { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'], windowsHide: true });
    this.failed = new Promise((_, reject) => {
      this.process.on('error', reject);
      this.process.on('exit', (code) => { reject(new Error(`it ended with ${code ?? 'a signal'}`)); });
      this.process.stdio[3]?.on('error', reject);
    });
    // Whoever waits hears of it; with nobody waiting it is no fault.
    this.failed.catch(() => undefined);
    const answers = this.process.stdio[4] as Readable;
    answers.setEncoding('utf8');
    answers.on('data', (text: string) => { this.hear(text); });
  }

  ask(method: string, params: Readonly<Record<string, unknown>> = {}, sessionId?: string): Promise<Readonly<Record<string, unknown>>> {
    const id = (this.last += 1);
    const answer = new Promise<Readonly<Record<string, unknown>>>((resolve, reject) => { this.waiting.set(id, { resolve, reject }); });
    (this.process.stdio[3] as Writable).write(`${JSON.stringify({ id, method, params, ...(sessionId === undefined ? {} : { sessionId }) })}\0`);
    return Promise.race([answer, this.failed]);
  }

  /** Resolves at the next event of that name. */
  next(method: string, sessionId: string): Promise<void> {
    const event = new Promise<void>((resolve) => {
      const listener = (reply: Reply): void => {
        if (reply.method !== method || reply.sessionId !== sessionId) return;
        this.listeners.delete(listener);
        resolve();
      };
      this.listeners.add(listener);
    });
    return Promise.race([event, this.failed]);
  }

  close(): Promise<void> {
    if (this.process.exitCode !== null || this.process.signalCode !== null || this.process.pid === undefined) return Promise.resolve();
    const ended = new Promise<void>((resolve) => { this.process.once('exit', () => { resolve(); }); });
    this.process.kill('SIGKILL');
    return ended;
  }

  private hear(text: string): void {
    const messages = (this.rest + text).split('\0');
    this.rest = messages.pop() ?? '';
    for (const message of messages) {
      const reply = JSON.parse(message) as Reply;
      const waiting = reply.id === undefined ? undefined : this.waiting.get(reply.id);
      if (reply.id !== undefined) this.waiting.delete(reply.id);
      if (reply.error !== undefined) waiting?.reject(new Error(reply.error.message));
      else waiting?.resolve(reply.result ?? {});
      for (const listener of this.listeners) listener(reply);
    }
  }
}
