import type { ReportReply, ReportRequest } from './report-protocol.ts';
import type { Numbered } from './session-protocol.ts';

/** The page's end of the worker that writes reports and compares cabins. `end()` stops whatever it does; what was asked is rejected. */
export class ReportBridge {
  private worker: Worker | undefined;
  private readonly waiting = new Map<number, { readonly resolve: (reply: ReportReply) => void; readonly reject: (reason: unknown) => void }>();
  private last = 0;

  ask(content: ReportRequest): Promise<ReportReply> {
    const worker = (this.worker ??= this.start());
    const number = (this.last += 1);
    return new Promise((resolve, reject) => {
      this.waiting.set(number, { resolve, reject });
      worker.postMessage({ number, content } satisfies Numbered<ReportRequest>);
    });
  }

  end(reason: unknown = new DOMException('Cancelled', 'AbortError')): void {
    this.worker?.terminate();
    this.worker = undefined;
    const waiting = [...this.waiting.values()];
    this.waiting.clear();
    for (const { reject } of waiting) reject(reason);
  }

  private start(): Worker {
    const worker = new Worker(new URL('./report.worker.ts', import.meta.url), { type: 'module', name: 'report' });
    worker.addEventListener('message', ({ data: { number, content } }: MessageEvent<Numbered<ReportReply>>) => {
      this.waiting.get(number)?.resolve(content);
      this.waiting.delete(number);
    });
    worker.addEventListener('error', (event) => this.end(new Error(event.message || 'The worker could not be started')));
    return worker;
  }
}
