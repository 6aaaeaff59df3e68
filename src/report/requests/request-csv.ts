import { csvCell } from '../../formats/csv-cell.ts';
import type { RequestLine, RequestSheet } from './request-sheet.ts';

const wavelengths = Array.from({ length: 31 }, (_, index) => 400 + 10 * index);
const turned = (rotations: number): readonly (number | undefined)[] =>
  (rotations <= 1 ? [undefined] : Array.from({ length: rotations }, (_, index) => (360 / rotations) * index));

/** Columns that are filled in, with what stands in them already. What was asked stands apart from what was done, so that nothing is claimed for the supplier. */
const columns: readonly { readonly name: string; readonly cell: (line: RequestLine, spot: string, rotation: number | undefined) => string | number | undefined }[] = [
  { name: 'request', cell: ({ id }) => id },
  { name: 'part', cell: ({ part }) => part },
  { name: 'called', cell: ({ partName }) => partName },
  { name: 'source', cell: ({ source }) => source },
  { name: 'specimen', cell: ({ specimen }) => specimen },
  { name: 'lot', cell: ({ lot }) => lot },
  { name: 'asked quantity', cell: ({ quantity, angle }) => (angle === undefined ? quantity : `${quantity} at ${angle}°`) },
  { name: 'asked geometry', cell: ({ geometry, quantity }) => (quantity === 'colour' ? geometry : undefined) },
  { name: 'asked instrument', cell: ({ instrument }) => instrument },
  { name: 'spot', cell: (_line, spot) => spot },
  { name: 'rotation', cell: (_line, _spot, rotation) => rotation },
  { name: 'instrument', cell: () => undefined },
  { name: 'serial', cell: () => undefined },
  { name: 'calibrated on', cell: () => undefined },
  { name: 'geometry', cell: () => undefined },
  { name: 'aperture', cell: () => undefined },
  { name: 'uv', cell: () => undefined },
  { name: 'measured on', cell: () => undefined },
  { name: 'averaged from', cell: () => undefined },
];

/**
 * The sheets as a table to fill in and send back, RFC 4180: a row a spot and rotation, empty columns for a spectrum from 400 to 700 nm and for gloss where they are asked.
 * The first line declares the scale of the reflectances; who gives per cent writes `percent` there. Rows that were not measured are taken out.
 */
export function requestCsv(sheets: readonly RequestSheet[]): string {
  const lines = sheets.flatMap((sheet) => sheet.lines);
  const asks = (quantity: RequestLine['quantity']): boolean => lines.some((line) => line.quantity === quantity);
  const values = [
    ...(asks('gloss') ? ['angle', 'gloss'] : []), ...(asks('texture') ? ['Sa', 'Sal', 'Str'] : []), ...(asks('colour') ? wavelengths.map(String) : []),
  ];
  const rows = lines.flatMap((line) => line.newSpots.flatMap((spot) => turned(line.rotations).map((rotation) => [
    ...columns.map(({ cell }) => cell(line, spot, rotation)),
    ...values.map((name) => (name === 'angle' ? line.angle : undefined)),
  ])));
  const table = [[...columns.map(({ name }) => name), ...values], ...rows].map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('');
  return asks('colour') ? `# scale: fraction\r\n${table}` : table;
}
