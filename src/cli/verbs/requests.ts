import type { RequestSheet } from '../../report/requests/index.ts';
import type { Terminal, Verb } from '../verb.ts';
import { nearestName } from '../../cabin/schema/nearest-name.ts';
import { judge } from '../../harmony/index.ts';
import { hasErrors } from '../../issue.ts';
import { counted, fixed } from '../../report/number-text.ts';
import { requestCsv, requestHtml, requestSheets } from '../../report/requests/index.ts';
import { judgeOptions, loadJudgeInput } from '../load-cabin.ts';
import { printable } from '../printable.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { styled } from '../style.ts';
import { textTable } from '../text-table.ts';
import { lastValue, usageIssue } from '../verb.ts';

const writers: Readonly<Record<string, (sheets: readonly RequestSheet[]) => string>> = { html: requestHtml, csv: requestCsv };

export const requests: Verb = {
  name: 'requests',
  summary: 'Ask suppliers for the readings that would decide the open joints.',
  operands: [{ name: 'CABIN', about: 'a cabin (.cabin.json), or `-` for the standard input' }],
  options: {
    ...judgeOptions,
    supplier: { value: 'NAME', about: 'id or name of one supplier; all that something is asked of where absent' },
    out: { value: 'FILE', about: 'where to write the sheet: .html to print or send, .csv to be filled in and sent back' },
  },
  detail: [
    'Judges the cabin and lists, for every supplier, which specimen to measure on how many spots, on which instrument and in which geometry, and which joint that would decide, the most telling first. Every line has an id; the returned table is brought to its place by it.',
    'Exit: 0 done (also where nothing is asked for), 2 bad input; then nothing is written.',
  ],
  examples: [
    { command: 'adjoin requests shuttle.cabin.json', about: 'what is asked of whom' },
    { command: 'adjoin requests shuttle.cabin.json --supplier "Haddesk Hides" --out out/haddesk.html', about: 'the sheet for one supplier' },
    { command: 'adjoin requests shuttle.cabin.json --supplier haddesk --out out/haddesk.csv', about: 'the table for the supplier to fill in' },
  ],
  run(args, io) {
    const out = lastValue(args, 'out');
    const ending = /\.([A-Za-z0-9]+)$/.exec(out ?? '')?.[1].toLowerCase() ?? '';
    const write = Object.hasOwn(writers, ending) ? writers[ending] : undefined;
    const usage = out !== undefined && write === undefined ? [usageIssue('unknown-format', '--out', out, 'an ending of .html or .csv')] : [];
    const input = loadJudgeInput(args, io);
    if (input.value === undefined || usage.length > 0) return refused([...usage, ...input.issues.filter((issue) => issue.severity === 'error')], args.json);
    const { cabin, ruleBook, options } = input.value;
    const wanted = lastValue(args, 'supplier');
    const supplier = cabin.suppliers.find(({ id, name }) => id === wanted || name === wanted);
    if (wanted !== undefined && supplier === undefined) {
      const names = cabin.suppliers.flatMap(({ id, name }) => [id, name]);
      const near = nearestName(wanted, names);
      return refused([usageIssue('unknown-supplier', '--supplier', wanted, `one of ${cabin.suppliers.map(({ id }) => id).join(', ')}`, near === undefined ? undefined : `Did you mean ${near}?`)], args.json);
    }
    const judgement = judge(cabin, ruleBook, options);
    if (hasErrors(judgement.issues)) return refused([...input.issues, ...judgement.issues], args.json);
    const sheets = requestSheets(cabin, judgement, ruleBook).filter((sheet) => supplier === undefined || sheet.supplier.id === supplier.id);
    const files = out === undefined || write === undefined ? [] : [{ path: out, content: write(sheets) }];
    const stderr = issueLines([...input.issues, ...judgement.issues]);
    if (args.json) return done(jsonText({ ...(out === undefined ? {} : { written: out }), sheets }), { files, stderr: issueLines(input.issues) });
    return done(out === undefined ? sheetText(sheets, io.terminal) : `Wrote ${out}: ${summary(sheets)}\n`, { files, stderr });
  },
};

const summary = (sheets: readonly RequestSheet[]): string => (sheets.length === 0 ? 'no reading is asked for.'
  : `${counted(sheets.reduce((sum, { lines }) => sum + lines.length, 0), 'line')} for ${counted(sheets.length, 'supplier')}.`);

function sheetText(sheets: readonly RequestSheet[], terminal: Terminal): string {
  if (sheets.length === 0) return 'No reading is asked for: no joint is open that readings could decide.\n';
  return sheets.map(({ supplier, lines }) => `${styled(printable(supplier.name), 'strong', terminal)}\n${textTable([
    { title: 'request' }, { title: 'part' }, { title: 'specimen' }, { title: 'reading' }, { title: 'new spots', align: 'right' }, { title: 'instrument' }, { title: 'expected', align: 'right' },
  ], lines.map((line) => ({
    cells: [line.id, line.partName, line.specimen, line.quantity === 'gloss' ? `gloss ${line.geometry}` : `${line.quantity} ${line.geometry}`, String(line.newSpots.length), line.instrument, fixed(line.expected, 2)],
    below: line.decides.map(({ neighbour, check, reason }) => `${check} against ${neighbour}: ${reason}`).join('; '),
  })), terminal)}`).join('\n');
}
