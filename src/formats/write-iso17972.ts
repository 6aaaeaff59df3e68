import type { Issue, Outcome } from '../issue.ts';
import { hasErrors } from '../issue.ts';
import { conditionColumns, identityColumns, labelColumns, textureColumns } from './export-columns.ts';
import type { FormatWriter } from './format-writer.ts';
import { heldByTables, numberText, writeIssues } from './format-writer.ts';
import { groupRecords } from './group-records.ts';
import { cxfNamespace, cxfRoot, unknownDate } from './iso17972-names.ts';
import { collectSpecifications } from './iso17972-write-specifications.ts';
import type { SpecificationList } from './iso17972-write-specifications.ts';
import type { FoundCielab, FoundDifference, FoundSpectrum, ReadingRecord, ReadingSet } from './reading-set.ts';
import type { XmlNode } from './xml-text.ts';
import { element, xmlText } from './xml-text.ts';

/**
 * Readings as ISO 17972-1 (the core of CxF3), core elements only: an object a reading, or for all readings of one row under the
 * same conditions, spectra as fractions with every digit of a double. What the core has no element for (part, lot, spot,
 * instrument of a gloss reading) goes into tags by the names of the tables of readings.
 */
export const iso17972Writer: FormatWriter = {
  id: 'iso17972', label: 'ISO 17972-1', extension: '.cxf',
  write(given, options = {}): Outcome<string> {
    const issues: Issue[] = writeIssues(given, 'ISO 17972-1');
    const set = heldByTables(given);
    if (hasErrors(issues)) return { value: undefined, issues };
    const created = dateTime(options.created ?? set.created);
    if (created === undefined && set.records.some(({ measuredAt }) => measuredAt === undefined)) {
      issues.push({ code: 'date-unknown', severity: 'warning', found: 'no day of creation', expected: 'a day, which ISO 17972-1 requires', hint: `${unknownDate} is written.` });
    }
    const specifications = collectSpecifications(set);
    const objects = groupRecords(set.records);
    const ids = masterIds(objects);
    const nodes = objects.map((records, index) => objectNode(records, `o${index + 1}`, { set, specifications, created: created ?? unknownDate, ids }));
    const root = element(cxfRoot, { xmlns: cxfNamespace }, [
      element('FileInformation', {}, [element('Creator', {}, 'Adjoin'), element('CreationDate', {}, created ?? firstDate(set) ?? unknownDate), element('Description', {}, 'Appearance readings')]),
      element('Resources', {}, [element('ObjectCollection', {}, nodes), element('ColorSpecificationCollection', {}, specifications.nodes())]),
    ]);
    return { value: xmlText(root), issues };
  },
};

const firstDate = ({ records }: ReadingSet): string | undefined => dateTime(records.find(({ measuredAt }) => measuredAt !== undefined)?.measuredAt);

/** A day or a time as xs:dateTime. */
function dateTime(text: string | undefined): string | undefined {
  if (text === undefined) return undefined;
  if (text.length === 10) return `${text}T00:00:00Z`;
  return /T\d\d:\d\d(?:Z|[+-]|$)/u.test(text) ? text.replace(/(T\d\d:\d\d)/u, '$1:00') : text;
}

/** Object ids of masters by name, for the references of differences. */
const masterIds = (objects: readonly (readonly ReadingRecord[])[]): ReadonlyMap<string, string> =>
  new Map(objects.flatMap(([first], index): [string, string][] => (first?.kind === 'master' ? [[first.specimen, `o${index + 1}`]] : [])).toReversed());

interface ObjectContext {
  readonly set: ReadingSet;
  readonly specifications: SpecificationList;
  readonly created: string;
  readonly ids: ReadonlyMap<string, string>;
}

function objectNode(records: readonly ReadingRecord[], id: string, { set, specifications, created, ids }: ObjectContext): XmlNode {
  const [first] = records;
  const measured = dateTime(first.measuredAt);
  const values = records.flatMap((record) => (record.data.quantity === 'spectrum' || record.data.quantity === 'cielab' ? [valueNode(record.data, specifications.idOf(record), measured)] : []));
  const differences = records.flatMap((record) => (record.data.quantity === 'difference' ? [differenceNode(record.data, specifications.idOf(record), ids)] : []));
  const physical = records.flatMap((record) => physicalNodes(record));
  const tags = tagNodes(records, set);
  return element('Object', { ObjectType: first.kind === 'master' ? 'Standard' : 'Trial', Name: first.specimen, Id: id }, [
    element('CreationDate', {}, measured ?? created),
    ...(values.length === 0 ? [] : [element('ColorValues', {}, values)]),
    ...(differences.length === 0 ? [] : [element('ColorDifferenceValues', {}, differences)]),
    ...(tags.length === 0 ? [] : [element('TagCollection', { Name: 'Reading' }, tags)]),
    ...(physical.length === 0 ? [] : [element('PhysicalAttributes', {}, physical)]),
  ]);
}

function valueNode(data: FoundSpectrum | FoundCielab, specification: string, measured: string | undefined): XmlNode {
  if (data.quantity === 'cielab') {
    return element('ColorCIELab', { ColorSpecification: specification }, ['L', 'A', 'B'].map((name, index) => element(name, {}, numberText(data.lab[index] ?? 0))));
  }
  const date: Record<string, string> = measured === undefined ? {} : { MeasureDate: measured };
  return element('ReflectanceSpectrum', { ...date, StartWL: numberText(data.startNm), ColorSpecification: specification }, data.values.map(numberText).join(' '));
}

function differenceNode(data: FoundDifference, specification: string, ids: ReadonlyMap<string, string>): XmlNode {
  const reference: Record<string, string> = data.master === undefined ? {} : { StandardRef: ids.get(data.master) ?? data.master };
  return element('DeltaCIELab', { ...reference, ColorSpecification: specification }, ['dL', 'dA', 'dB'].map((name, index) => element(name, {}, numberText(data.difference[index] ?? 0))));
}

function physicalNodes(record: ReadingRecord): XmlNode[] {
  const { data } = record;
  if (data.quantity === 'gloss') {
    return [
      element('Gloss', { Method: `ISO 2813, ${data.angle} degrees` }, numberText(data.gloss)),
      ...(data.haze === undefined ? [] : [element('CustomAttributeValue', { Label: 'haze', Method: 'ISO 13803' }, numberText(data.haze))]),
    ];
  }
  if (data.quantity !== 'texture') return [];
  return textureColumns.flatMap(({ header, cell }) => {
    const value = cell(record, {});
    const method = header.startsWith('R') ? 'ISO 21920-2' : header.startsWith('V') ? 'VDI 3400' : 'ISO 25178-2';
    return typeof value === 'number' ? [element('CustomAttributeValue', { Label: header, Method: method }, numberText(value))] : [];
  });
}

/** Conditions that a MeasurementSpec of the core cannot hold exactly. */
const beyondSpecification = new Set(['calibrated on', 'uv', 'temperature (C)', 'geometry', 'aspecular (deg)']);

function tagNodes(records: readonly ReadingRecord[], { conditions }: ReadingSet): XmlNode[] {
  const [first] = records;
  const found = conditions[first.conditions] ?? {};
  const unspecified = records.some(({ data }) => data.quantity === 'gloss' || data.quantity === 'texture');
  const direction = records.flatMap(({ data }) => (data.quantity === 'gloss' && data.direction !== undefined ? [data.direction] : []))[0];
  const columns = [
    { header: 'id', cell: ({ id }: ReadingRecord) => id }, ...identityColumns,
    ...conditionColumns.filter(({ header }) => unspecified || beyondSpecification.has(header)), { header: 'direction', cell: () => direction }, ...labelColumns([first]),
  ];
  return columns.flatMap(({ header, cell }) => {
    const value = cell(first, found);
    return value === undefined || value === '' ? [] : [element('Tag', { Name: header, Value: typeof value === 'number' ? numberText(value) : value })];
  });
}
