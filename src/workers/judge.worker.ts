import type { JudgeRequest } from './judge-protocol.ts';
import { judgeText } from './judge-text.ts';

addEventListener('message', (event: MessageEvent<JudgeRequest>) => {
  postMessage(judgeText(event.data));
});
