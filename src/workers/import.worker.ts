import { provideMathjs } from '../rules/mathjs-parser.ts';
import { digestOf } from './digest-of.ts';
import type { ImportReply, ImportRequest } from './import-protocol.ts';
import { ImportSession } from './import-session.ts';
import type { Numbered } from './session-protocol.ts';

provideMathjs();

/** Share between two reports of progress. */
const step = 0.01;
const session = new ImportSession();
/** Requests are answered one after the other, in the order of asking. */
let last: Promise<unknown> = Promise.resolve();

addEventListener('message', ({ data: { number, content } }: MessageEvent<Numbered<ImportRequest>>) => {
  const answer = (reply: ImportReply): void => postMessage({ number, content: reply } satisfies Numbered<ImportReply>);
  let told = 0;
  last = last.then(async () => {
    answer(await session.answer(content, (news) => {
      if (news.kind === 'piece') answer(news);
      else if (news.share >= told + step) {
        told = news.share;
        answer(news);
      }
    }, digestOf));
  }).catch((fault: unknown) => {
    // A bug of a reader must reach the page as one, not as silence.
    setTimeout(() => { throw fault; });
  });
});
