import type { PublishedCheck } from '../../colour/index.ts';
import type { Verb } from '../verb.ts';
import { publishedValues } from '../../report/published-values.ts';
import { software } from '../../report/software.ts';
import { done, jsonText } from '../results.ts';
import { textTable } from '../text-table.ts';

export const verify: Verb = {
  name: 'verify',
  summary: 'Recompute every check value and print a validation record.',
  operands: [],
  options: { failed: { about: 'list only the values that fail' } },
  detail: [
    'Every known value that this program can compute is computed anew and set against its source. The kind says what stands behind it: a published table (a standard, a handbook or a paper prints it), a worked example (a publication or a library of general purpose works it through), or derived (another program, or a hand, made it from the published equations). The record names the formula, the source, the kind, the input, what was expected, what came out and how far apart they are. A value fails where the deviation is larger than half a unit of the last digit printed, or than the tolerance the source states.',
    'Exit: 0 when all values are within tolerance, 1 when one is not.',
  ],
  examples: [
    { command: 'adjoin verify', about: 'the record, one line a value' },
    { command: 'adjoin verify --json', about: 'the same in full precision' },
  ],
  run(args, io) {
    const results = publishedValues();
    const ok = results.filter((row) => row.ok).length;
    const exit = ok === results.length && ok > 0 ? 0 : 1;
    if (args.json) return done(jsonText({ summary: { checked: results.length, ok }, results }), { exit });
    const rows = args.switches.has('failed') ? results.filter((row) => !row.ok) : results;
    const table = textTable([
      { title: 'formula', most: 34 }, { title: 'source', most: 52 }, { title: 'kind' }, { title: 'input', most: 48 }, { title: 'expected', align: 'right' },
      { title: 'got', align: 'right' }, { title: 'deviation', align: 'right' }, { title: 'tolerance', align: 'right' }, { title: '' },
    ], rows.map((row) => ({ cells: cells(row), emphasis: row.ok ? undefined : 'alarm' as const })), io.terminal);
    return done(`${rows.length ? `${table}\n` : ''}${software.name} ${software.version}: ${ok} of ${results.length} check values within tolerance.\n`, { exit });
  },
};

const cells = (row: PublishedCheck): string[] => [
  row.formula, row.source, row.kind, row.input, String(row.expected), printed(row.got, row.tolerance), row.deviation.toExponential(1), row.tolerance.toExponential(1), row.ok ? 'ok' : 'FAILS',
];

/** The value with two digits more than the tolerance resolves. */
function printed(value: number, tolerance: number): string {
  const decimals = Math.min(12, Math.max(0, 2 - Math.floor(Math.log10(tolerance || 1e-12))));
  return value.toFixed(decimals);
}
