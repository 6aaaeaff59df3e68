import type { GlossRow } from '../../formats/gloss-table.ts';
import type { Verb } from '../verb.ts';
import { readGlossTable } from '../../formats/gloss-table.ts';
import { fixed } from '../../report/number-text.ts';
import { readInput } from '../read-input.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { textTable } from '../text-table.ts';

export const gloss: Verb = {
  name: 'gloss',
  summary: 'Mean and spread of gloss readings by specimen and angle.',
  operands: [{ name: 'FILE', about: 'table of readings (CSV or TSV), or `-` for the standard input' }],
  options: {},
  detail: [
    'The table has the columns specimen, angle (20, 60 or 85 degrees) and gloss (gloss units of ISO 2813), a row a reading, and if wanted spot, haze and instrument. Readings on one named spot are first averaged: n is the number of spots, not of readings. A reading without a spot is a spot of its own.',
    'The standard deviation is that of the spots about their mean (n - 1); 0 for a single spot.',
    'Exit: 0 done, 2 bad input.',
  ],
  examples: [{ command: 'adjoin gloss gloss.csv', about: 'a row for each specimen and angle' }],
  run(args, io) {
    const input = readInput(args.operands[0], io);
    const table = input.value && readGlossTable(input.value.text, input.value.name);
    const issues = [...input.issues, ...(table?.issues ?? [])];
    if (!table?.value) return refused(issues, args.json);
    const results = summariseGloss(table.value);
    const stderr = issueLines(issues);
    if (args.json) return done(jsonText({ results }), { stderr });
    return done(textTable([
      { title: 'specimen' }, ...['angle', 'mean', 'sd', 'spots', 'haze'].map((title) => ({ title, align: 'right' as const })),
    ], results.map((row) => ({ cells: [row.specimen, `${row.angle}°`, fixed(row.mean, 2), fixed(row.sd, 2), String(row.spots), row.haze === undefined ? '' : fixed(row.haze, 1)] })), io.terminal), { stderr });
  },
};

interface GlossSummary {
  readonly specimen: string;
  readonly angle: number;
  readonly mean: number;
  readonly sd: number;
  readonly spots: number;
  readonly haze?: number;
}

/** Mean and standard deviation over spots, in the order in which specimens and angles first occur. */
export function summariseGloss(rows: readonly GlossRow[]): GlossSummary[] {
  const groups = new Map<string, GlossRow[]>();
  for (const row of rows) {
    const key = JSON.stringify([row.specimen, row.angle]);
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  return [...groups.values()].map((group) => {
    const values = spotMeans(group, (row) => row.gloss);
    const haze = spotMeans(group, (row) => row.haze);
    const centre = mean(values);
    const sd = values.length < 2 ? 0 : Math.sqrt(values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (values.length - 1));
    return { specimen: group[0].specimen, angle: group[0].angle, mean: centre, sd, spots: values.length, ...(haze.length > 0 ? { haze: mean(haze) } : {}) };
  });
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** One value a spot. */
function spotMeans(rows: readonly GlossRow[], quantity: (row: GlossRow) => number | undefined): number[] {
  const spots = new Map<string | number, number[]>();
  rows.forEach((row, index) => {
    const value = quantity(row);
    const spot = row.spot ?? index;
    if (value !== undefined) spots.set(spot, [...(spots.get(spot) ?? []), value]);
  });
  return [...spots.values()].map(mean);
}
