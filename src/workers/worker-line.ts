import { GatheredValue, valuePieces } from './value-pieces.ts';
import type { ValuePiece } from './value-pieces.ts';

/**
 * The page's end of a worker that large things go to and come from in pieces. What is sent arrives whole and in order; what is small goes at once
 * where nothing is on its way, what is large with room for the page between its pieces.
 */
export class WorkerLine<Request, Reply> {
  /** `worker` is this line's alone and is ended with it. A fault of the worker ends nothing by itself. */
  constructor(worker: Worker, heard: (reply: Reply) => void, failed: (reason: Error) => void) {
    this.worker = worker;
    const gathered = new GatheredValue<Reply>();
    worker.addEventListener('message', ({ data }: MessageEvent<ValuePiece>) => {
      const reply = gathered.take(data);
      if (reply !== undefined && !this.ended) heard(reply.whole);
    });
    worker.addEventListener('error', (event) => failed(new Error(event.message || 'The worker could not be started')));
  }

  private readonly worker: Worker;
  private ended = false;
  /** What is on its way or waits for that. */
  private sending: Promise<void> | undefined;

  send(request: Request): void {
    const before = this.sending;
    if (before === undefined) {
      const pieces = valuePieces(request);
      const first = pieces.next();
      if (first.done !== true) this.worker.postMessage(first.value);
      if (first.done === true || first.value.last) return;
      this.follow(this.post(pieces));
    } else this.follow(before.then(() => this.post(valuePieces(request))));
  }

  /** Ends the worker with everything it does. */
  end(): void {
    this.ended = true;
    this.worker.terminate();
  }

  private follow(sending: Promise<void>): void {
    const mine = sending.then(() => { if (this.sending === mine) this.sending = undefined; });
    this.sending = mine;
  }

  private async post(pieces: Iterable<ValuePiece>): Promise<void> {
    for (const piece of pieces) {
      await new Promise((resolve) => setTimeout(resolve));
      if (this.ended) return;
      this.worker.postMessage(piece);
    }
  }
}

/** The worker's end: hears what the page sends, once all of it is there. */
export function hearLine<Request>(heard: (request: Request) => void): void {
  const gathered = new GatheredValue<Request>();
  addEventListener('message', ({ data }: MessageEvent<ValuePiece>) => {
    const request = gathered.take(data);
    if (request !== undefined) heard(request.whole);
  });
}

/** Tells the page something in pieces; each of them is a task of its own there. */
export function tellLine<Reply>(reply: Reply): void {
  for (const piece of valuePieces(reply)) postMessage(piece);
}
