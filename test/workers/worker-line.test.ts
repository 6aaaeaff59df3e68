import { expect, test, vi } from 'vitest';
import type { ValuePiece } from '../../src/workers/value-pieces.ts';
import { GatheredValue, mostInPiece, valuePieces } from '../../src/workers/value-pieces.ts';
import { WorkerLine } from '../../src/workers/worker-line.ts';

/** Stands for a worker that keeps what it is sent. */
class SilentWorker extends EventTarget {
  readonly sent: ValuePiece[] = [];
  ended = false;
  postMessage(piece: ValuePiece): void { this.sent.push(structuredClone(piece)); }
  terminate(): void { this.ended = true; }
  answer(reply: unknown): void { for (const piece of valuePieces(reply)) this.dispatchEvent(new MessageEvent('message', { data: structuredClone(piece) })); }
}

const large = Array.from({ length: 3 * mostInPiece }, (_, place) => place);
const lineTo = (worker: SilentWorker, heard: (reply: unknown) => void = () => undefined): WorkerLine<unknown, unknown> => new WorkerLine(worker as unknown as Worker, heard, () => undefined);
const gatheredIn = ({ sent }: SilentWorker): readonly unknown[] => {
  const coming = new GatheredValue();
  return sent.flatMap((piece) => {
    const done = coming.take(structuredClone(piece));
    return done === undefined ? [] : [done.whole];
  });
};

test('what is small goes at once; what is large goes piece by piece, other tasks in between, and what is sent meanwhile follows whole', async () => {
  const worker = new SilentWorker();
  const line = lineTo(worker);
  line.send('first');
  expect(worker.sent).toHaveLength(1);
  line.send(large);
  expect(worker.sent).toHaveLength(2);
  line.send('after');
  const counts: number[] = [];
  while (gatheredIn(worker).length < 3) {
    counts.push(worker.sent.length);
    await new Promise((resolve) => setTimeout(resolve));
  }
  expect(counts.length).toBeGreaterThanOrEqual(3);
  expect(counts.every((count, place) => place === 0 || count - (counts[place - 1] ?? 0) <= 2)).toBe(true);
  expect(gatheredIn(worker)).toEqual(['first', large, 'after']);
  // Free again: the next small thing waits for nothing.
  await new Promise((resolve) => setTimeout(resolve));
  const before = worker.sent.length;
  line.send('last');
  expect(worker.sent).toHaveLength(before + 1);
});

test('a line that is ended sends nothing more and hears nothing more', async () => {
  const worker = new SilentWorker();
  const heard = vi.fn();
  const line = lineTo(worker, heard);
  worker.answer(large);
  expect(heard).toHaveBeenCalledExactlyOnceWith(large);
  line.send(large);
  const before = worker.sent.length;
  line.end();
  worker.answer('late');
  await new Promise((resolve) => setTimeout(resolve, 30));
  expect(worker.ended).toBe(true);
  expect(worker.sent).toHaveLength(before);
  expect(heard).toHaveBeenCalledTimes(1);
});
