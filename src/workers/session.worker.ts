import { Session } from './session.ts';
import type { Numbered, SessionReply, SessionRequest } from './session-protocol.ts';

const session = new Session();

addEventListener('message', ({ data: { number, content } }: MessageEvent<Numbered<SessionRequest>>) => {
  const answer = (reply: SessionReply): void => postMessage({ number, content: reply } satisfies Numbered<SessionReply>);
  if (content.kind === 'piece') session.piece(content);
  else if (content.kind !== 'look') answer(session.answer(content, answer));
  // A bug must reach the page as one, not as silence.
  else session.look(content.look).then(answer, (fault: unknown) => setTimeout(() => { throw fault; }));
});
