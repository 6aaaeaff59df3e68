import type { Cabin } from '../cabin/cabin.ts';
import { parseCabin, serialiseCabin } from '../cabin/index.ts';
import { agedStages, ageingOf, compareCabins, compareStages } from '../harmony/compare/index.ts';
import { judgeCabin } from '../harmony/judge.ts';
import { hasErrors } from '../issue.ts';
import type { InputFile } from '../report/index.ts';
import { prepareReport, reportCsv, reportHtml, reportJson } from '../report/index.ts';
import { publishedValues } from '../report/published-values.ts';
import { digestOf } from './digest-of.ts';
import type { ReportReply, ReportRequest } from './report-protocol.ts';
import { ruleBookOf } from './rule-book-of.ts';

/** Every stage that a cabin can be judged at, `new` first. */
export const stagesOf = (cabin: Cabin): readonly string[] => [...new Set(['new', ...(cabin.stage === undefined ? [] : [cabin.stage]), ...agedStages(cabin)])];

/** Writes a report, compares two states or reads a cabin; faults of data are an answer. */
export async function answerReport(request: ReportRequest): Promise<ReportReply> {
  if (request.kind === 'read') {
    const text = await request.text.text();
    const { value, issues } = parseCabin(text, request.file);
    return value === undefined || hasErrors(issues) ? { kind: 'refused', issues } : { kind: 'read', cabin: value, sha256: await digest(text), issues };
  }
  const { cabin, stage } = request;
  const book = ruleBookOf(cabin.ruleBook);
  if (book.value === undefined || hasErrors(book.issues)) return { kind: 'refused', issues: book.issues };
  const judging = stage === undefined ? {} : { stage };
  if (request.kind === 'compare') {
    const { against } = request;
    const judged = judgeCabin(cabin, book.value, judging);
    const other = judgeCabin(against.cabin ?? cabin, book.value, { stage: against.stage ?? judged.judgement.stage });
    const [before, after] = [other, judged].map(({ context, judgement }) => ({ cabin: context.cabin, judgement })) as [Side, Side];
    const judgements = { before: other.judgement, after: judged.judgement };
    if (against.cabin !== undefined) return { kind: 'compared', ...judgements, comparison: compareCabins(before, after) };
    const exposed = agedStages(cabin).includes(judged.judgement.stage) && other.judgement.stage === 'new';
    return { kind: 'compared', ...judgements, comparison: compareStages(other, judged), ...(exposed ? { ageing: ageingOf(other, judged) } : {}) };
  }
  const { against, formats, without = [] } = request;
  // The digest is that of the file as it would be saved now.
  const files: InputFile[] = [
    { role: 'cabin', name: request.file, sha256: await digest(serialiseCabin(cabin)) },
    ...(against?.file === undefined ? [] : [{ role: 'compared cabin' as const, ...against.file }]),
  ];
  const input = await prepareReport(cabin, book.value, { ...judging, files, validation: publishedValues(), ...(against === undefined ? {} : { against }) });
  const writers = { html: () => reportHtml(input, { without }), json: () => reportJson(input), csv: () => reportCsv(input) };
  return { kind: 'written', texts: Object.fromEntries(formats.map((format) => [format, writers[format]()])), stage: input.judgement.stage, stages: stagesOf(cabin) };
}

type Side = { readonly cabin: Cabin; readonly judgement: ReturnType<typeof judgeCabin>['judgement'] };

/** Digests need a secure origin; elsewhere there is none to print. */
const digest = async (text: string): Promise<string> => (await digestOf(new TextEncoder().encode(text))) ?? 'not available here';
