import { answerReport } from './answer-report.ts';
import type { ReportReply, ReportRequest } from './report-protocol.ts';
import type { Numbered } from './session-protocol.ts';

addEventListener('message', async ({ data: { number, content } }: MessageEvent<Numbered<ReportRequest>>) => {
  postMessage({ number, content: await answerReport(content) } satisfies Numbered<ReportReply>);
});
