import type { Verb } from '../verb.ts';
import { readBytes, writerById, writers } from '../../formats/index.ts';
import { isCalendarDate } from '../../cabin/schema/date.ts';
import { hasErrors } from '../../issue.ts';
import { counted } from '../../report/number-text.ts';
import { scaleOf, scaleOption } from '../colour-options.ts';
import { inputName } from '../read-input.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { lastValue, usageIssue } from '../verb.ts';

export const convert: Verb = {
  name: 'convert',
  summary: 'Write the readings of a file in another open format.',
  operands: [{ name: 'IN', about: 'readings in any known format, or a cabin; `-` for the standard input' }],
  options: {
    to: { value: 'FORMAT', about: 'format to write', choices: writers.map(({ id }) => id) },
    out: { value: 'FILE', about: 'where to write; printed where absent' },
    scale: scaleOption,
    created: { value: 'DATE', about: 'day of writing (YYYY-MM-DD) for formats that state one; no clock is read' },
  },
  detail: [
    'The format of IN is found by its content: tables (CSV or TSV) of spectra, CIELAB values, differences, gloss and texture; ISO 28178 text; ISO 17972-1 XML; IES TM-27 spectral data; JSON of this product, a cabin included.',
    'Spectra keep every digit of a double. Per cent is read only where the file or --scale says so; of an exchange file whose fields state no scale, --scale must. What the format to write cannot hold is told on stderr. The same input gives the same bytes.',
    'Exit: 0 written, 2 bad input; then nothing is written.',
  ],
  examples: [
    { command: 'adjoin convert plaques.txt --to csv --out plaques.csv', about: 'ISO 28178 to a table' },
    { command: 'adjoin convert plaques.csv --to iso17972 --created 2031-03-01 --out plaques.cxf', about: 'a table to ISO 17972-1' },
  ],
  run(args, io) {
    const to = lastValue(args, 'to');
    const out = lastValue(args, 'out');
    const created = lastValue(args, 'created');
    const writer = writerById(to ?? '');
    const usage = [
      ...(to === undefined ? [usageIssue('missing-option', '--to', undefined, `--to ${writers.map(({ id }) => id).join('|')}`)] : []),
      ...(args.json && out === undefined ? [usageIssue('missing-option', '--out', undefined, '--out FILE, since --json prints what was done')] : []),
      ...(created !== undefined && !isCalendarDate(created) ? [usageIssue('bad-date', '--created', created, 'a day of the calendar as YYYY-MM-DD')] : []),
    ];
    const [path] = args.operands;
    const bytes = io.read(path);
    const file = inputName(path);
    const read = bytes.value === undefined
      ? bytes
      : readBytes(bytes.value, { file, sha256: io.sha256(bytes.value) }, { scale: scaleOf(args), undeclaredScale: 'fraction' });
    const found = [...usage, ...read.issues];
    const set = bytes.value === undefined ? undefined : read.value;
    if (writer === undefined || set === undefined || !('records' in set) || hasErrors(found)) return refused(found, args.json);
    const written = writer.write(set, created === undefined ? {} : { created });
    const issues = [...found, ...written.issues];
    if (written.value === undefined) return refused(issues, args.json);
    const stderr = issueLines(issues);
    if (out === undefined) return done(written.value, { stderr });
    const counts = { readings: set.records.length, lights: set.lights.length };
    return done(
      args.json ? jsonText({ written: out, from: set.reader, to: writer.id, ...counts, issues }) : `Wrote ${out}: ${counted(counts.readings, 'reading', 'readings')} as ${writer.label}.\n`,
      { files: [{ path: out, content: written.value }], stderr },
    );
  },
};
