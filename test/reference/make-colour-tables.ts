/**
 * Makes the tables of `src/colour/tables` and `src/colour/published` from the CSV files beside this script.
 * Run from the top of the tree: `node --import tsx test/reference/make-colour-tables.ts`.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { ReferenceTable } from '../support/reference-table.ts';
import { recordsOf, referenceTable } from '../support/reference-table.ts';

const madeBy = '// Made by test/reference/make-colour-tables.ts; do not edit.\n';
const thanks = 'Transcribed by way of colour-science 0.4.6 (BSD-3-Clause, Copyright 2013 Colour Developers).';

/** Words laid out in lines of at most 130 characters. */
function wrapped(words: readonly string[], indent: string): string {
  const lines: string[] = [];
  let line = indent;
  for (const word of words) {
    if (line.length + word.length > 128) {
      lines.push(line.trimEnd());
      line = indent;
    }
    line += `${word} `;
  }
  return [...lines, line.trimEnd()].join('\n');
}

/** The shortest text of the same number: `0.5000` becomes `.5`, `12.0` becomes `12`. */
const short = (cell: string): string => String(Number(cell)).replace(/^(-?)0\./, '$1.');

const columnOf = (table: ReferenceTable, name: string): string[] => table.rows.map((row) => short(row[table.columns.indexOf(name)] ?? ''));

function tabulated(table: ReferenceTable, column: string): string {
  const wavelengths = table.rows.map((row) => Number(row[0]));
  const [start = 0, second = 0] = wavelengths;
  return `tabulated(${start}, ${second - start}, \`\n${wrapped(columnOf(table, column), '    ')}\n  \`)`;
}

const importTabulated = "import { tabulated } from './tabulated.ts';\n";

function spectraFile(name: string, docstring: string, table: ReferenceTable, columns: readonly string[]): string {
  const entries = columns.map((column) => `  '${column}': ${tabulated(table, column)},\n`).join('');
  return `${madeBy}${importTabulated}\n/**\n * ${docstring}\n * ${thanks}\n */\nexport const ${name} = {\n${entries}} as const;\n`;
}

function printedWeights(table: ReferenceTable): string {
  const groups = new Map<string, Record<string, string>[]>();
  for (const row of recordsOf(table)) {
    const key = `${row['illuminant']} ${row['observer_deg']} ${row['step_nm']}`;
    groups.set(key, [...(groups.get(key) ?? []), row]);
  }
  const entries = [...groups.values()].map((rows) => {
    const first = rows[0] ?? {};
    const axes = [['x', 'Wx'], ['y', 'Wy'], ['z', 'Wz']].map(([axis = '', column = '']) =>
      `    ${axis}: tabulated(${first['wavelength']}, ${first['step_nm']}, \`\n${wrapped(rows.map((row) => short(row[column] ?? '')), '      ')}\n    \`),\n`);
    return `  {\n    light: '${first['illuminant']}', observer: ${first['observer_deg']},\n${axes.join('')}  },\n`;
  });
  return `${madeBy}${importTabulated.replace('./', '../tables/')}
/**
 * Tristimulus weighting factors as printed in ASTM E308-15, 3 decimals, whole range of the printed tables.
 * ${thanks}
 */
export const printedWeights = [\n${entries.join('')}] as const;\n`;
}

function whitePoints(whites: ReferenceTable, chromaticities: ReferenceTable): string {
  const sources: Record<string, string> = { 'CIE015-2018': 'CIE 015:2018', 'ASTM-E308': 'ASTM E308, from memory' };
  const whiteRows = recordsOf(whites).filter((row) => sources[row['source'] ?? ''] !== undefined).map((row) =>
    `  { light: '${row['illuminant']}', observer: ${row['observer_deg']}, source: '${sources[row['source'] ?? '']}', ` +
    `xyz: [${[row['X'], row['Y'], row['Z']].map((cell) => Number(cell)).join(', ')}] },\n`);
  const chromaticityRows = recordsOf(chromaticities).map((row) =>
    `  { light: '${row['illuminant']}', observer: ${row['observer_deg']}, xy: [${Number(row['x'])}, ${Number(row['y'])}], ` +
    `decimals: ${(row['x'] ?? '').length - 2} },\n`);
  return `${madeBy}
/**
 * White points as printed: CIE 015:2018, 2 decimals; ASTM E308 10 nm tables, 3 decimals, from memory.
 * ${thanks}
 */
export const printedWhitePoints = [\n${whiteRows.join('')}] as const;

/**
 * Chromaticity coordinates after CIE 15:2004 and CIE 015:2018; those of FL2, FL7 and FL11 at 10 deg by linear interpolation of the lamps.
 * ${thanks}
 */
export const printedChromaticities = [\n${chromaticityRows.join('')}] as const;\n`;
}

/** Every made file by its path under `src/colour`. */
export function colourTables(): Record<string, string> {
  const lamps = referenceTable('cie-015/cie-illuminants-lamps-5nm.csv');
  const daylight = referenceTable('cie-015/cie-illuminants-5nm.csv');
  return {
    'tables/standard-observers.ts': spectraFile('standardObservers',
      'CIE 1931 (2 deg) and CIE 1964 (10 deg) colour-matching functions, 1 nm. ISO/CIE 11664-1:2019; CIE 015:2018.',
      referenceTable('cie-11664-1/cie-observers-1nm.csv'), ['x2', 'y2', 'z2', 'x10', 'y10', 'z10']),
    'tables/daylight-illuminants.ts': spectraFile('daylightIlluminants',
      'CIE illuminants D50 and D65, relative power, 5 nm. ISO/CIE 11664-2:2022; CIE 015:2018.', daylight, ['D50', 'D65']),
    'tables/illuminant-c.ts': spectraFile('illuminantC', 'CIE illuminant C, relative power, 5 nm. CIE 15:2004.', daylight, ['C']),
    'tables/indoor-daylight.ts': spectraFile('indoorDaylight',
      'CIE indoor daylight ID50 and ID65, relative power, 5 nm. CIE 184:2009; CIE 015:2018.',
      referenceTable('cie-184/cie-indoor-daylight-5nm.csv'), ['ID50', 'ID65']),
    'tables/fluorescent-lamps.ts': spectraFile('fluorescentLamps',
      'CIE fluorescent lamps, relative power, 5 nm. CIE 15:2004; CIE 015:2018.', lamps, ['FL2', 'FL7', 'FL11', 'FL3.15']),
    'tables/led-lamps.ts': spectraFile('ledLamps', 'CIE LED illuminants, relative power, 5 nm. CIE 015:2018.', lamps,
      lamps.columns.filter((column) => column.startsWith('LED'))),
    'published/e308-weights.ts': printedWeights(referenceTable('astm-e308/astm-e308-weights-published.csv')),
    'published/white-points.ts': whitePoints(referenceTable('cie-015/white-points.csv'), referenceTable('cie-015/chromaticities.csv')),
  };
}

if (process.argv[1] === import.meta.filename) {
  for (const [path, text] of Object.entries(colourTables())) {
    writeFileSync(join(import.meta.dirname, '..', '..', 'src', 'colour', path), text);
  }
}
