import { provideMathjs } from '../rules/mathjs-parser.ts';
import { answerReport } from './answer-report.ts';
import type { NumberedReportRequest, ReportMessage, ReportReply, ReportRequest } from './report-protocol.ts';
import type { Numbered } from './session-protocol.ts';
import { HeldCabins } from './told-cabins.ts';
import { hearLine, tellLine } from './worker-line.ts';

provideMathjs();

const held = new HeldCabins();

function withCabins(request: NumberedReportRequest): ReportRequest {
  if (request.kind === 'read') return request;
  const { cabin, against, ...rest } = request;
  const state = against === undefined ? {} : { against: { ...against, ...(against.cabin === undefined ? {} : { cabin: held.of(against.cabin) }) } };
  return { ...rest, cabin: held.of(cabin), ...state } as ReportRequest;
}

async function answer(number: number, request: NumberedReportRequest): Promise<void> {
  const content = await answerReport(withCabins(request));
  if (request.kind === 'read' && content.kind === 'read') held.take({ kind: 'cabin', number: request.number, cabin: content.cabin });
  tellLine<Numbered<ReportReply>>({ number, content });
}

hearLine<ReportMessage>((message) => {
  if (message.kind !== 'ask') held.take(message);
  // A bug must reach the page as one, not as silence.
  else answer(message.number, message.request).catch((fault: unknown) => setTimeout(() => { throw fault; }));
});
