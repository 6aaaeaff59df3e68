import type { ReportInput } from '../../report/index.ts';
import type { Outcome } from '../../issue.ts';
import type { Arguments, Io, Verb } from '../verb.ts';
import { hasErrors } from '../../issue.ts';
import { prepareReport, reportCsv, reportHtml, reportJson } from '../../report/index.ts';
import { counted } from '../../report/number-text.ts';
import { publishedValues } from '../../report/published-values.ts';
import { againstOptions, judgeOptions, loadAgainst, loadJudgeInput } from '../load-cabin.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { lastValue, usageIssue } from '../verb.ts';

type Write = (input: ReportInput, args: Arguments, io: Io) => Outcome<string | Uint8Array> | Promise<Outcome<string | Uint8Array>>;

const text = (write: (input: ReportInput) => string): Write => (input) => ({ value: write(input), issues: [] });

const writers: Readonly<Record<string, Write>> = {
  html: text((input) => reportHtml(input)), json: text(reportJson), csv: text(reportCsv),
  pdf: (input, args, io) => io.printPdf(reportHtml(input, { paper: lastValue(args, 'paper') === 'letter' ? 'letter' : 'A4' })),
};

export const report: Verb = {
  name: 'report',
  summary: 'Write the harmony report of a cabin as HTML, PDF, JSON or CSV.',
  operands: [{ name: 'CABIN', about: 'a cabin (.cabin.json), or `-` for the standard input' }],
  options: {
    out: { value: 'FILE', about: 'where to write; the ending decides the format: .html, .pdf, .json or .csv' },
    paper: { value: 'FORMAT', about: 'format of a PDF: a4 (which it is where absent) or letter', choices: ['a4', 'letter'] },
    ...judgeOptions,
    ...againstOptions,
  },
  detail: [
    'HTML is one page that needs no network and no script; a browser prints it on A4 or Letter. PDF is that page printed by a Chromium of this machine: the one that the environment variable CHROMIUM names, else one found. JSON and CSV carry the same numbers in full precision. The same input gives the same bytes (PDF: the same text). The file is replaced only when the whole of it has been written.',
    'With --against or --against-stage the report has a section that compares, joint by joint, judged by the same rule book. Where specimens were exposed to light or heat, a section on ageing grades their change and names the joints that hold when new and clash when aged.',
    'Exit: 0 written (whatever the verdicts are), 2 bad input, or no Chromium for a PDF; then nothing is written.',
  ],
  examples: [
    { command: 'adjoin report shuttle.cabin.json --out out/report.html', about: 'the page for the design review' },
    { command: 'adjoin report shuttle.cabin.json --out out/report.pdf --paper letter', about: 'the same, printed on Letter' },
    { command: 'adjoin report shuttle.cabin.json --out out/report.csv', about: 'every check and light as a row of a table' },
    { command: 'adjoin report series.cabin.json --against tool-parts.cabin.json --out out/report.html', about: 'series parts beside the first parts off the tool' },
  ],
  async run(args, io) {
    const out = lastValue(args, 'out');
    const ending = /\.([A-Za-z0-9]+)$/.exec(out ?? '')?.[1].toLowerCase() ?? '';
    const write = Object.hasOwn(writers, ending) ? writers[ending] : undefined;
    const usage = out === undefined
      ? [usageIssue('missing-option', '--out', undefined, '--out FILE with an ending of .html, .pdf, .json or .csv')]
      : write === undefined
        ? [usageIssue('unknown-format', '--out', out, 'an ending of .html, .pdf, .json or .csv')]
        : [];
    const input = loadJudgeInput(args, io);
    if (input.value === undefined || out === undefined || write === undefined) return refused([...usage, ...input.issues.filter((issue) => issue.severity === 'error')], args.json);
    const { cabin, ruleBook, files, options } = input.value;
    const against = loadAgainst(args, io, cabin);
    if (hasErrors(against.issues)) return refused([...input.issues, ...against.issues], args.json);
    const prepared = await prepareReport(cabin, ruleBook, {
      ...options, files: [...files, ...(against.value?.files ?? [])], validation: publishedValues(), ...(against.value === undefined ? {} : { against: against.value }),
    });
    const { judgement } = prepared;
    if (hasErrors(judgement.issues)) return refused([...input.issues, ...judgement.issues], args.json);
    const content = await write(prepared, args, io);
    if (content.value === undefined) return refused(content.issues, args.json);
    const { summary } = judgement;
    return done(
      args.json ? jsonText({ written: out, summary }) : `Wrote ${out}: ${counted(summary.clashes, 'clash', 'clashes')}, ${summary.accepted} accepted, ${summary.open} open, ${summary.holds} ${summary.holds === 1 ? 'holds' : 'hold'}.\n`,
      { files: [{ path: out, content: content.value }], stderr: issueLines([...input.issues, ...against.issues, ...judgement.issues]) },
    );
  },
};
