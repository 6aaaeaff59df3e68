/** Every code of an issue that reading a table can raise, beside those it shares with documents, with its meaning in one line. */
export const tableIssueCodes = {
  'cell-too-long': 'A cell is longer than is read.',
  'duplicate-column': 'A column name occurs twice.',
  'duplicate-wavelength': 'A wavelength occurs twice.',
  'empty-column-name': 'A column has no name.',
  'extra-cells': 'A row has more cells than the header.',
  'missing-cells': 'A row has fewer cells than the header.',
  'missing-column': 'A column that must be there is not.',
  'missing-value': 'A cell that must be filled is empty.',
  'mixed-decimals': 'A number has another decimal sign than the rows before.',
  'no-rows': 'A table has column names only.',
  'not-a-number': 'A cell that must hold a number does not.',
  'scale-conflict': 'The file declares another scale than was asked for.',
  'scale-doubtful': 'The scale is declared per cent and all values look like fractions (warning).',
  'scale-undeclared': 'Values are above 1.5 and no scale is declared.',
  'text-after-quote': 'Text follows a closing quotation mark.',
  'too-many-columns': 'A table has more columns than are read.',
  'too-many-rows': 'A table has more rows than are read.',
  'unclosed-quote': 'A quotation mark is not closed.',
  'unknown-column': 'A column is not known and not used (warning).',
  'unknown-scale': 'The declared scale is neither percent nor fraction.',
  'wavelengths-irregular': 'Wavelengths are not evenly spaced.',
  'wavelengths-unsorted': 'Wavelengths do not rise.',
} as const;

export type TableIssueCode = keyof typeof tableIssueCodes;
