import { provideMathjs } from '../rules/mathjs-parser.ts';
import { digestOf } from './digest-of.ts';
import type { ImportReply, ImportRequest } from './import-protocol.ts';
import { ImportSession } from './import-session.ts';
import type { Numbered } from './session-protocol.ts';
import { hearLine, tellLine } from './worker-line.ts';

provideMathjs();

/** Share between two reports of progress. */
const step = 0.01;
const session = new ImportSession();
/** Requests are answered one after the other, in the order of asking. */
let last: Promise<unknown> = Promise.resolve();

hearLine<Numbered<ImportRequest>>(({ number, content }) => {
  const answer = (reply: ImportReply): void => tellLine<Numbered<ImportReply>>({ number, content: reply });
  let told = 0;
  last = last.then(async () => {
    answer(await session.answer(content, (news) => {
      if (news.share < told + step) return;
      told = news.share;
      answer(news);
    }, digestOf));
  }).catch((fault: unknown) => {
    // A bug of a reader must reach the page as one, not as silence.
    setTimeout(() => { throw fault; });
  });
});
