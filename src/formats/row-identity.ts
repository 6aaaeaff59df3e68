import type { NumberRange } from '../cabin/schema/number.ts';
import { rangeText } from '../cabin/schema/number.ts';
import { maxNameLength } from '../cabin/schema/text.ts';
import type { Spot } from '../readings/reading.ts';
import type { FieldName } from './column-names.ts';
import { readDateTime, readGeometry, readKind, readSpecular, readUv, withSpecular } from './condition-words.ts';
import type { DelimitedRow } from './delimited-text.ts';
import { defined } from './reading-collector.ts';
import type { FoundConditions, ReadingRecord } from './reading-set.ts';
import { readNumber } from './table-cells.ts';
import type { TableFaults } from './table-faults.ts';
import type { Cell, FieldCells, TableSource } from './table-source.ts';

/** Where a row belongs and how it was measured: all of a record but its values. */
export type RowIdentity = Omit<ReadingRecord, 'conditions' | 'data' | 'row' | 'line' | 'labels'>;

/** Reads the cells of rows, each word and number of the file checked once. */
export interface RowReader {
  identity(row: DelimitedRow): RowIdentity | undefined;
  conditions(row: DelimitedRow): FoundConditions;
  text(row: DelimitedRow, field: FieldName): string | undefined;
  number(row: DelimitedRow, field: FieldName, range: NumberRange): number | undefined;
  /** A word that is understood; one that is not is told once and counts as not stated. */
  word<T>(row: DelimitedRow, field: FieldName, read: (text: string) => T | undefined, expected: string): T | undefined;
}

/** Places, spans and angles as the document takes them. */
const ranges = {
  place: { min: -100_000, max: 100_000, unit: 'mm' }, rotation: { min: -360, max: 360, unit: 'degrees' }, averaged: { min: 1, max: 10_000, whole: true },
  aperture: { above: 0, max: 1000, unit: 'mm' }, aspecular: { min: -90, max: 180, unit: 'degrees' }, temperature: { min: -60, max: 200, unit: '°C' },
} as const satisfies Readonly<Record<string, NumberRange>>;

// Comment lines and keywords are not seen by the check of cells.
const hidden = /[\p{Cc}\p{Cs}\u2028-\u202e\u2066-\u2069]/u;

export function rowReader({ table }: Pick<TableSource, 'table'>, cells: FieldCells, faults: TableFaults): RowReader {
  const told = new Set<string>();
  let named = 0;

  const nameOf = ({ text, offset }: Cell): string => {
    const name = text.replaceAll(/\s+/gu, ' ').trim();
    const match = hidden.exec(name);
    if (match !== null) {
      const code = (match[0].codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
      faults.add('control-character', offset, { expected: 'text that can be seen', found: `the character U+${code}` });
    }
    if (name.length <= maxNameLength) return name;
    faults.add('text-too-long', offset, { expected: `at most ${maxNameLength} characters`, found: `${name.length} characters` });
    return name.slice(0, maxNameLength).trim();
  };

  const text = (row: DelimitedRow, field: FieldName): string | undefined => {
    const cell = cells.cell(row, field);
    return cell === undefined ? undefined : nameOf(cell);
  };

  const number = (row: DelimitedRow, field: FieldName, range: NumberRange): number | undefined => {
    const cell = cells.cell(row, field);
    if (cell === undefined) return undefined;
    const value = readNumber(table, { cells: [cell.text], offsets: [cell.offset] }, 0, {}, faults);
    if (value === undefined) return undefined;
    const scaled = value * (cells.column(field)?.factor ?? 1);
    const { min = -Infinity, max = Infinity, above = -Infinity, whole } = range;
    if (scaled >= min && scaled > above && scaled <= max && (whole !== true || Number.isInteger(scaled))) return scaled;
    faults.add(scaled < 0 && (range.min === 0 || range.above === 0) ? 'negative' : 'out-of-range', cell.offset, { expected: rangeText(range), found: JSON.stringify(cell.text.slice(0, 60)) });
    return undefined;
  };

  const word = <T>(row: DelimitedRow, field: FieldName, read: (text: string) => T | undefined, expected: string): T | undefined => {
    const cell = cells.cell(row, field);
    if (cell === undefined) return undefined;
    const value = read(cell.text);
    const key = `${field} ${cell.text}`;
    if (value === undefined && !told.has(key) && told.size < 1000) {
      told.add(key);
      faults.add('unknown-value', cell.offset, { severity: 'warning', expected, found: JSON.stringify(cell.text.slice(0, 60)), hint: 'It is read as not stated.' });
    }
    return value;
  };

  const spot = (row: DelimitedRow): Spot | undefined => {
    const name = text(row, 'spot');
    const xMm = number(row, 'spotX', ranges.place);
    const yMm = number(row, 'spotY', ranges.place);
    if (name === undefined && (xMm === undefined || yMm === undefined)) return undefined;
    return defined({ name: name ?? `${xMm}/${yMm} mm`, xMm, yMm });
  };

  return {
    text, number, word,
    identity(row) {
      const id = text(row, 'id');
      const part = text(row, 'part');
      const lot = text(row, 'lot');
      const stated = text(row, 'specimen') ?? id;
      if (stated === undefined && part === undefined) {
        faults.add('missing-value', row.offsets[0] ?? 0, { expected: 'the name of a specimen', found: 'an empty cell' });
        return undefined;
      }
      const specimen = stated ?? [part, lot].filter((word) => word !== undefined).join(' ');
      if (stated === undefined && named === 0) {
        named += 1;
        faults.add('specimen-named', row.offsets[0] ?? 0, { severity: 'note', expected: 'the name of a specimen', found: 'a part only', hint: `It is called ${JSON.stringify(specimen.slice(0, 60))}, and the others likewise.` });
      }
      return defined({
        id, part, lot, specimen,
        source: text(row, 'source'),
        supplier: text(row, 'supplier'),
        kind: word(row, 'kind', readKind, 'plaque, tool part, series part, master or boundary sample'),
        stage: text(row, 'stage'),
        spot: spot(row),
        colour: text(row, 'namedColour'),
        rotationDeg: number(row, 'rotation', ranges.rotation),
        averagedFrom: number(row, 'averagedFrom', ranges.averaged),
        measuredAt: word(row, 'measuredAt', readDateTime, 'a day as YYYY-MM-DD, or with the time as YYYY-MM-DDThh:mm'),
      });
    },
    conditions(row) {
      const stated = word(row, 'geometry', readGeometry, 'a geometry of CIE 15: 45a:0, 45c:0, 45x:0, di:8, de:8, multi-angle, ...');
      const specular = word(row, 'specular', readSpecular, 'included or excluded');
      const geometry = withSpecular(stated, specular);
      if (stated !== undefined && geometry === undefined) {
        const cell = cells.cell(row, 'specular');
        faults.add('conditions-contradict', cell?.offset ?? 0, { expected: `a specular mode that goes with ${stated}`, found: JSON.stringify(cell?.text.slice(0, 60)) });
      }
      return defined({
        instrument: text(row, 'instrument'),
        serial: text(row, 'serial'),
        calibratedOn: word(row, 'calibratedOn', readDateTime, 'a day as YYYY-MM-DD')?.slice(0, 10),
        geometry,
        apertureMm: number(row, 'aperture', ranges.aperture),
        uv: word(row, 'uv', readUv, 'included, excluded or adjusted'),
        aspecularDeg: number(row, 'aspecular', ranges.aspecular),
        backing: text(row, 'backing'),
        temperatureC: number(row, 'temperature', ranges.temperature),
      });
    },
  };
}
