import { highestGloss } from '../cabin/shapes/reading-shape.ts';
import type { ArealParameters, GlossAngle } from '../readings/reading.ts';
import type { FieldName } from './column-names.ts';
import { textureFields } from './column-names.ts';
import type { DelimitedRow } from './delimited-text.ts';
import { defined } from './reading-collector.ts';
import type { FoundGloss, FoundTexture } from './reading-set.ts';
import type { RowReader } from './row-identity.ts';
import type { TableFaults } from './table-faults.ts';
import type { FieldCells } from './table-source.ts';

const angled: readonly (readonly [FieldName, GlossAngle])[] = [['gloss20', 20], ['gloss60', 60], ['gloss85', 85]];
const glossRange = { min: 0, max: highestGloss, unit: 'GU' } as const;

const directions: Readonly<Record<string, 'along' | 'across'>> = { along: 'along', parallel: 'along', across: 'across', perpendicular: 'across' };
const readDirection = (text: string): 'along' | 'across' | undefined => {
  const word = text.toLowerCase();
  return Object.hasOwn(directions, word) ? directions[word] : undefined;
};

/** The gloss readings of a row: `gloss` with its `angle`, or a column for each angle. Haze goes with the one that is there, of several with 20 degrees. */
export function rowGloss(row: DelimitedRow, cells: FieldCells, read: RowReader, faults: TableFaults): FoundGloss[] {
  const found: { angle: GlossAngle; gloss: number }[] = [];
  const plain = read.number(row, 'gloss', glossRange);
  if (plain !== undefined) {
    const angle = glossAngle(row, cells, read, faults);
    if (angle !== undefined) found.push({ angle, gloss: plain });
  }
  for (const [field, angle] of angled) {
    const gloss = read.number(row, field, glossRange);
    if (gloss !== undefined) found.push({ angle, gloss });
  }
  if (found.length === 0) return [];
  const { direction, haze } = rowGlossDetail(row, read);
  const withHaze = found.length === 1 ? found[0].angle : 20;
  return found.map(({ angle, gloss }) => defined({ quantity: 'gloss', angle, gloss, haze: angle === withHaze ? haze : undefined, direction }));
}

/** Haze and direction, which go with the gloss of a row. */
export const rowGlossDetail = (row: DelimitedRow, read: RowReader): Pick<FoundGloss, 'haze' | 'direction'> => defined({
  haze: read.number(row, 'haze', { min: 0, max: highestGloss }),
  direction: read.word(row, 'direction', readDirection, 'along or across'),
});

function glossAngle(row: DelimitedRow, cells: FieldCells, read: RowReader, faults: TableFaults): GlossAngle | undefined {
  const cell = cells.cell(row, 'angle');
  if (cell === undefined) {
    faults.add('missing-value', cells.cell(row, 'gloss')?.offset ?? 0, { expected: 'the angle of the gloss, 20, 60 or 85 degrees', found: 'none', hint: 'Add a column "angle", or name the column by its angle: gloss 60.' });
    return undefined;
  }
  const value = read.number(row, 'angle', {});
  if (value === 20 || value === 60 || value === 85) return value;
  if (value !== undefined) faults.add('unknown-gloss-angle', cell.offset, { expected: '20, 60 or 85 degrees (ISO 2813)', found: String(value) });
  return undefined;
}

const lengths = { min: 0, max: 10_000, unit: 'µm' } as const;
const parameterRanges: Readonly<Record<(typeof textureFields)[number], { readonly min?: number; readonly max?: number; readonly above?: number; readonly unit?: string }>> = {
  saUm: lengths, sqUm: lengths, spUm: lengths, svUm: lengths, szUm: lengths, raUm: lengths, rzUm: lengths,
  ssk: { min: -1000, max: 1000 }, sku: { min: 0, max: 1e6 }, salMm: { above: 0, max: 1000, unit: 'mm' }, rsmMm: { above: 0, max: 1000, unit: 'mm' },
  str: { min: 0, max: 1 }, stdDeg: { min: -180, max: 180, unit: 'degrees' }, sdq: { min: 0, max: 1000 }, sdr: { min: 0, max: 1e6 }, vdiClass: { min: 0, max: 45 },
};

/** The areal and profile parameters of a row, in the units of the document; undefined where none is filled. */
export function rowTexture(row: DelimitedRow, read: RowReader): FoundTexture | undefined {
  const found = textureFields.flatMap((field): [keyof ArealParameters, number][] => {
    const value = read.number(row, field, parameterRanges[field]);
    return value === undefined ? [] : [[field, value]];
  });
  return found.length === 0 ? undefined : { quantity: 'texture', parameters: Object.fromEntries(found) };
}
