import type { DifferenceFormula } from '../../colour/index.ts';
import type { DifferenceRow } from '../../formats/difference-table.ts';
import type { Matrix3 } from '../../quantities.ts';
import type { Verb } from '../verb.ts';
import { components, difference as differenceOf, formulaLabel } from '../../colour/index.ts';
import { readDifferenceTable } from '../../formats/difference-table.ts';
import { differenceDistribution } from '../../readings/index.ts';
import { fixed, signed } from '../../report/number-text.ts';
import { readInput } from '../read-input.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { textTable } from '../text-table.ts';
import { lastValue } from '../verb.ts';

/** Columns of the result, each a formula with its factors. */
const columns = {
  cie76: { name: 'cie76' },
  cie94: { name: 'cie94' },
  cie94Textile: { name: 'cie94Textile' },
  cmc21: { name: 'cmc', l: 2, c: 1 },
  cmc11: { name: 'cmc', l: 1, c: 1 },
  ciede2000: { name: 'ciede2000' },
  ciede2000kL2: { name: 'ciede2000', kL: 2 },
  din99o: { name: 'din99o' },
  cam02ucs: { name: 'cam02ucs' },
  cam16ucs: { name: 'cam16ucs' },
} as const satisfies Record<string, DifferenceFormula>;
type ColumnName = keyof typeof columns;
const names = Object.keys(columns) as ColumnName[];

const nothing: Matrix3 = [0, 0, 0, 0, 0, 0, 0, 0, 0];

export const difference: Verb = {
  name: 'difference',
  summary: 'Colour differences of pairs by every formula, with their distribution where covariances are given.',
  operands: [{ name: 'FILE', about: 'table of pairs (CSV or TSV), or `-` for the standard input' }],
  options: { formula: { value: 'NAME', about: 'formula of the distribution, ciede2000 where absent', choices: names } },
  detail: [
    'The table has the columns id, L1, a1, b1 (standard) and L2, a2, b2 (trial), CIELAB. Signed components are trial minus standard.',
    'Columns c1LL, c1La, c1Lb, c1aa, c1ab, c1bb and c2... give the covariance of each side in CIELAB units squared. They add mean, standard deviation and the 5th, 50th and 95th percentile of the difference by the formula chosen; with a column limit also the probability of being within it.',
    'Appearance models see the pair on the white of D65 and the 10 degree observer, adapting luminance 64 cd/m2, background 20, average surround.',
    'Exit: 0 done, 2 bad input.',
  ],
  examples: [
    { command: 'adjoin difference pairs.csv', about: 'a table of all formulas' },
    { command: 'adjoin difference pairs.csv --formula cmc21 --json', about: 'with the distribution by CMC(2:1), in full precision' },
  ],
  run(args, io) {
    const input = readInput(args.operands[0], io);
    const table = input.value && readDifferenceTable(input.value.text, input.value.name);
    const issues = [...input.issues, ...(table?.issues ?? [])];
    if (!table?.value) return refused(issues, args.json);
    const chosen = names.find((name) => name === lastValue(args, 'formula')) ?? 'ciede2000';
    const results = table.value.map((row) => ({
      id: row.id,
      ...Object.fromEntries(names.map((name) => [name, differenceOf(columns[name], row.standard, row.trial)])) as Record<ColumnName, number>,
      ...components(row.standard, row.trial),
      ...distribution(row, columns[chosen]),
    }));
    const stderr = issueLines(issues);
    if (args.json) return done(jsonText({ results }), { stderr });
    const right = (title: string) => ({ title, align: 'right' as const });
    const spread = results.some((row) => row.mean !== undefined);
    const headings = ['ΔE*ab', 'CIE94', 'CIE94 tex', 'CMC(2:1)', 'CMC(1:1)', 'ΔE00', 'ΔE00 kL2', 'DIN99o', 'CAM02', 'CAM16'];
    const text = textTable([{ title: 'id' }, ...[...headings, 'ΔL*', 'Δa*', 'Δb*', 'ΔC*', 'ΔH*'].map(right)], results.map((row) => ({
      cells: [row.id, ...names.map((name) => fixed(row[name], 2)), ...[row.dL, row.da, row.db, row.dC, row.dH].map((value) => signed(value, 2))],
    })), io.terminal);
    const distributions = spread ? `\nDistribution of ${formulaLabel(columns[chosen])}\n${textTable([{ title: 'id' }, ...['mean', 'sd', 'p5', 'p50', 'p95', 'within'].map(right)],
      results.map((row) => ({ cells: [row.id, ...[row.mean, row.sd, row.p5, row.p50, row.p95].map((value) => fixed(value, 3)), fixed(row.withinProbability, 3)] })), io.terminal)}` : '';
    return done(text + distributions, { stderr });
  },
};

interface Spread {
  readonly mean?: number;
  readonly sd?: number;
  readonly p5?: number;
  readonly p50?: number;
  readonly p95?: number;
  readonly withinProbability?: number;
}

/** The distribution of a row's difference; empty where no side has a covariance. A side without one is exact. */
function distribution(row: DifferenceRow, formula: DifferenceFormula): Spread {
  if (row.standardCovariance === undefined && row.trialCovariance === undefined) return {};
  const { mean, sd, p5, p50, p95, withinProbability } = differenceDistribution({
    formula, standard: row.standard, trial: row.trial, limit: row.limit,
    standardCovariance: row.standardCovariance ?? nothing, trialCovariance: row.trialCovariance ?? nothing,
  });
  return { mean, sd, p5, p50, p95, ...(withinProbability === undefined ? {} : { withinProbability }) };
}
