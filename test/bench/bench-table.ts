import type { BenchLine, Spread } from './bench-line.ts';

const figure = (value: number): string => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));

const withSpread = ({ median, low, high }: Spread, unit: string): string =>
  `${figure(median)}${low === high ? '' : ` (${figure(low)} to ${figure(high)})`}${unit === '' ? '' : ` ${unit}`}`;

/** The lines as a table in Markdown; medians with quartiles. */
export function benchTable(lines: readonly BenchLine[]): string {
  const rows = lines.map(({ name, unit, own, beside, ratio, growth, wanted, checksum }) => [
    name, withSpread(own, unit), beside === undefined ? '' : `${beside.name}: ${withSpread(beside.figure, unit)}`,
    ratio === undefined ? '' : figure(ratio), growth === undefined ? '' : figure(growth), wanted ?? '', checksum,
  ]);
  return ['| what | here | beside | ratio | growth | wanted | checksum |', '|---|---|---|---|---|---|---|', ...rows.map((row) => `| ${row.join(' | ')} |`)].join('\n');
}

/** The lines as they go into a JSON document: values are medians. */
export const benchResults = (lines: readonly BenchLine[]): readonly object[] => lines.map(({ name, unit, own, beside, ...rest }) => ({
  name, value: own.median, unit, quartiles: [own.low, own.high],
  ...(beside === undefined ? {} : { peer: beside.name, peerValue: beside.figure.median, peerQuartiles: [beside.figure.low, beside.figure.high] }), ...rest,
}));
