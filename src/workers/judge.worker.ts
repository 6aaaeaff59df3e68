import type { JudgeReply, JudgeRequest } from './judge-protocol.ts';
import { judgeText } from './judge-text.ts';

const answer = (reply: JudgeReply): void => postMessage(reply);

addEventListener('message', (event: MessageEvent<JudgeRequest>) => {
  answer(judgeText(event.data, answer));
});
