import { provideMathjs } from '../rules/mathjs-parser.ts';
import { answerReport } from './answer-report.ts';
import type { ReportReply, ReportRequest } from './report-protocol.ts';
import type { Numbered } from './session-protocol.ts';

provideMathjs();

addEventListener('message', async ({ data: { number, content } }: MessageEvent<Numbered<ReportRequest>>) => {
  postMessage({ number, content: await answerReport(content) } satisfies Numbered<ReportReply>);
});
