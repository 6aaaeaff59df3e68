import { nearestName } from '../../cabin/schema/nearest-name.ts';
import { partialGeometries } from '../../formats/reading-set.ts';
import type { FoundGeometry, ReadingRecord, ReadingSet } from '../../formats/reading-set.ts';
import type { Issue } from '../../issue.ts';
import { geometryClass } from '../../readings/geometry-class.ts';
import type { Geometry } from '../../readings/reading.ts';
import { readLineId } from './line-id.ts';
import type { RequestLine, RequestSheet } from './request-sheet.ts';

/** Where one record of a returned file belongs. */
export interface MappedRecord {
  /** Index into the records of the set. */
  readonly record: number;
  readonly line: string;
  readonly part: string;
  readonly source: string;
  /** Empty where the line left the specimen open; then the file's own name holds. */
  readonly specimen: string;
}

/** How far a line of the sheet was answered. */
export interface AnsweredLine {
  readonly line: string;
  readonly spotsAsked: number;
  readonly spotsReceived: number;
}

export interface MappedReply {
  readonly mapped: readonly MappedRecord[];
  /** Every line of the sheets, in their order. */
  readonly lines: readonly AnsweredLine[];
  /** Records that belong nowhere (errors) and what differs from what was asked (warnings). Records with an error are not among the mapped. */
  readonly issues: readonly Issue[];
}

const quantities = { spectrum: 'colour', cielab: 'colour', difference: 'colour', gloss: 'gloss', texture: 'texture' } as const;

/**
 * Maps the readings of a returned file onto part, source and specimen by the ids of the lines they answer. The id stands in a column `request`, or in place of
 * the reading's or the specimen's own name. Nothing is guessed: a record without an id, with a mistyped or an unknown one, or
 * of another quantity than was asked is an error and left out; another geometry, angle or specimen is a warning.
 */
export function mapReply(sheets: readonly RequestSheet[], set: Pick<ReadingSet, 'records' | 'conditions' | 'file'>): MappedReply {
  const lines = new Map(sheets.flatMap((sheet) => sheet.lines.map((line) => [line.id, line] as const)));
  const issues: Issue[] = [];
  const mapped: MappedRecord[] = [];
  const spots = new Map<string, Set<string>>();
  set.records.forEach((record, index) => {
    const at = { path: `records[${index}]`, ...(set.file === undefined ? {} : { file: set.file }), ...(record.line === undefined ? {} : { line: record.line }) };
    const line = lineOf(record, lines, (issue) => issues.push({ severity: 'error', ...issue, ...at }));
    if (line === undefined) return;
    const quantity = quantities[record.data.quantity];
    if (quantity !== line.quantity) {
      issues.push({
        code: 'request-quantity', severity: 'error', ...at, found: quantity, expected: `${line.quantity}, as ${line.id} asks`,
        hint: 'Give the row the id of the line that asks for it.',
      });
      return;
    }
    for (const issue of differences(record, line, set)) issues.push({ ...issue, ...at });
    mapped.push({ record: index, line: line.id, part: line.part, source: line.source, specimen: line.specimen });
    spots.set(line.id, (spots.get(line.id) ?? new Set()).add(record.spot?.name ?? `row ${record.row}`));
  });
  const answered = [...lines.values()].map((line): AnsweredLine =>
    ({ line: line.id, spotsAsked: line.newSpots.length, spotsReceived: spots.get(line.id)?.size ?? 0 }));
  for (const { line, spotsAsked, spotsReceived } of answered) {
    if (spotsReceived === 0 || spotsReceived >= spotsAsked) continue;
    issues.push({
      code: 'request-incomplete', severity: 'note', found: `${spotsReceived} spots for ${line}`, expected: `${spotsAsked} spots`, hint: 'The joint may stay open.',
    });
  }
  return { mapped, lines: answered, issues };
}

type Fault = Pick<Issue, 'code' | 'found' | 'expected' | 'hint'>;

function lineOf(record: ReadingRecord, lines: ReadonlyMap<string, RequestLine>, fault: (issue: Fault) => void): RequestLine | undefined {
  const label = Object.entries(record.labels ?? {}).find(([name]) => name.trim().toLowerCase() === 'request')?.[1];
  const texts = [label, record.id, record.specimen].filter((text) => text !== undefined);
  const read = texts.map((text) => ({ text, id: readLineId(text) }));
  const found = read.find(({ id }) => id.kind === 'id');
  if (found?.id.kind === 'id') {
    const line = lines.get(found.id.id);
    if (line === undefined) {
      fault({
        code: 'unknown-request', found: JSON.stringify(found.text), expected: 'the id of a line of this sheet',
        hint: 'It may be of an older sheet: the readings are not wanted any more, or wanted of another specimen.',
      });
    }
    return line;
  }
  const mistyped = read.find(({ id }) => id.kind === 'mistyped') ?? (label === undefined ? undefined : { text: label });
  if (mistyped === undefined) {
    fault({ code: 'request-missing', found: 'no id of a request', expected: 'the id of the line in a column "request"', hint: 'Copy it from the sheet.' });
    return undefined;
  }
  const near = nearestName(mistyped.text.toUpperCase(), lines.keys());
  fault({
    code: 'request-mistyped', found: JSON.stringify(mistyped.text), expected: 'the id of a line, R- and eight characters',
    ...(near === undefined ? {} : { hint: `Did you mean ${near}?` }),
  });
  return undefined;
}

function differences(record: ReadingRecord, line: RequestLine, set: Pick<ReadingSet, 'conditions'>): Issue[] {
  const found: Issue[] = [];
  const geometry = set.conditions[record.conditions]?.geometry;
  if (line.quantity === 'colour' && geometry !== undefined && !meets(geometry, line.geometry)) {
    found.push({
      code: 'request-geometry', severity: 'warning', found: geometry, expected: `${line.geometry}, as ${line.id} asks`,
      hint: 'Readings of another geometry may leave the joint open.',
    });
  }
  if (record.data.quantity === 'gloss' && line.angle !== undefined && record.data.angle !== line.angle) {
    found.push({ code: 'request-angle', severity: 'warning', found: `${record.data.angle}°`, expected: `${line.angle}°, as ${line.id} asks` });
  }
  if (line.specimen !== '' && record.specimen !== line.specimen && record.specimen !== record.id && readLineId(record.specimen).kind === 'other') {
    found.push({
      code: 'request-specimen', severity: 'warning', found: JSON.stringify(record.specimen), expected: JSON.stringify(line.specimen),
      hint: 'The reading goes to the specimen of the line. Take it out if another piece was measured.',
    });
  }
  return found;
}

const isPartial = (geometry: FoundGeometry): boolean => (partialGeometries as readonly string[]).includes(geometry);

/** Whether a geometry as a file states it can be the class that was asked; what the file leaves open is asked of the user later. */
function meets(geometry: FoundGeometry, asked: string): boolean {
  if (isPartial(geometry)) return geometry === '45:0' || geometry === '0:45' ? asked === '45:0' : asked === 'di:8' || asked === 'de:8';
  return geometryClass(geometry as Geometry) === asked;
}
