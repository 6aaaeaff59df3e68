import type { NumberedReportRequest, ReportMessage, ReportReply, ReportRequest } from './report-protocol.ts';
import type { Numbered } from './session-protocol.ts';
import { ToldCabins } from './told-cabins.ts';
import { WorkerLine } from './worker-line.ts';

interface Waiting {
  readonly resolve: (reply: ReportReply) => void;
  readonly reject: (reason: unknown) => void;
}

/** The page's end of the worker that writes reports and compares cabins, which knows again the cabins that it was given last. */
export class ReportBridge {
  private line: WorkerLine<ReportMessage, Numbered<ReportReply>> | undefined;
  /** What the worker holds. */
  private told = new ToldCabins();
  private readonly waiting = new Map<number, Waiting>();
  private last = 0;

  async ask(request: ReportRequest): Promise<ReportReply> {
    const line = (this.line ??= this.start());
    const { told } = this;
    if (request.kind === 'read') {
      const number = told.reserve();
      const reply = await this.answered(line, { ...request, number });
      if (reply.kind === 'read') told.known(reply.cabin, number);
      return reply;
    }
    const other = request.against?.cabin;
    const numbers = told.tell([request.cabin, ...(other === undefined ? [] : [other])], (news) => line.send(news));
    return this.answered(line, withNumbers(request, numbers));
  }

  /** Leaves off what is being done, which is rejected with the reason. A worker that is idle stays, with all it knows. */
  stop(reason?: unknown): void {
    if (this.waiting.size > 0) this.end(reason);
  }

  /** Ends the worker; everything that was asked is rejected with the reason. */
  end(reason: unknown = new DOMException('Cancelled', 'AbortError')): void {
    this.line?.end();
    this.line = undefined;
    this.told = new ToldCabins();
    const waiting = [...this.waiting.values()];
    this.waiting.clear();
    for (const { reject } of waiting) reject(reason);
  }

  private answered(line: NonNullable<ReportBridge['line']>, request: NumberedReportRequest): Promise<ReportReply> {
    const number = (this.last += 1);
    return new Promise((resolve, reject) => {
      this.waiting.set(number, { resolve, reject });
      line.send({ kind: 'ask', number, request });
    });
  }

  private start(): WorkerLine<ReportMessage, Numbered<ReportReply>> {
    return new WorkerLine(new Worker(new URL('./report.worker.ts', import.meta.url), { type: 'module', name: 'report' }), ({ number, content }) => {
      this.waiting.get(number)?.resolve(content);
      this.waiting.delete(number);
    }, (reason) => this.end(reason));
  }
}

function withNumbers({ cabin: _cabin, against, ...rest }: Exclude<ReportRequest, { readonly kind: 'read' }>, [cabin, other]: readonly number[]): NumberedReportRequest {
  const { cabin: _other, ...state } = against ?? {};
  return { ...rest, cabin, ...(against === undefined ? {} : { against: { ...state, ...(other === undefined ? {} : { cabin: other }) } }) } as NumberedReportRequest;
}
