import { digestOf } from './digest-of.ts';
import { measureSurfaceFileSteps, readingShare } from './measure-surface-file.ts';
import type { SurfaceReply, SurfaceRequest } from './surface-protocol.ts';

/** Share between two reports of progress. */
const step = 0.01;

addEventListener('message', async ({ data }: MessageEvent<SurfaceRequest>) => {
  const answer = (reply: SurfaceReply, transfer: Transferable[] = []): void => postMessage(reply, { transfer });
  // Before the bytes are read, so that no other copy of them is held then.
  const sha256 = await digestOf(data.bytes);
  answer({ kind: 'progress', doing: 'reading', share: 0 });
  const steps = measureSurfaceFileSteps(data);
  let told = 0;
  for (;;) {
    const { done, value } = steps.next();
    if (done) {
      if (value.kind === 'measured') answer({ ...value, ...(sha256 === undefined ? {} : { sha256 }) }, value.heights === undefined ? [] : [value.heights.values.buffer as ArrayBuffer]);
      else answer(value);
      return;
    }
    if (value >= told + step) {
      told = value;
      answer({ kind: 'progress', doing: value < readingShare ? 'reading' : 'measuring', share: value });
    }
  }
});
