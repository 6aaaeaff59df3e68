import { Session } from './session.ts';
import type { Numbered, SessionReply, SessionRequest } from './session-protocol.ts';

const session = new Session();

addEventListener('message', ({ data: { number, content } }: MessageEvent<Numbered<SessionRequest>>) => {
  const answer = (reply: SessionReply): void => postMessage({ number, content: reply } satisfies Numbered<SessionReply>);
  answer(session.answer(content, answer));
});
