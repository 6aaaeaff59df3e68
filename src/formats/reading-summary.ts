import type { UserLight } from '../cabin/cabin.ts';
import { readColumn } from './column.ts';
import { readDelimited } from './delimited-text.ts';
import type { FoundConditions, FoundData, Question, ReadingRecord, ReadingSet } from './reading-set.ts';

/** How a text lies in its file, as far as a reader follows it. */
export interface TextLayout {
  /** `a row a spectrum`, `a row a wavelength`, `a row a reading`, `tables of fields`, `objects`. */
  readonly layout: string;
  readonly separator?: 'comma' | 'semicolon' | 'tab';
  readonly decimal?: 'point' | 'comma';
  /** Same for files that were written alike: what a remembered mapping is found by. */
  readonly shape: string;
}

/** Readings of a file that belong to one specimen at one stage, by the file's own names. */
export interface FoundSpecimen {
  readonly part?: string;
  readonly source?: string;
  readonly supplier?: string;
  readonly specimen: string;
  readonly stage?: string;
  readonly kind?: ReadingRecord['kind'];
  readonly lot?: string;
  readonly readings: number;
  /** Of what: `spectrum`, `gloss` and so on, each once. */
  readonly quantities: readonly FoundData['quantity'][];
  readonly line?: number;
}

export interface PreviewRow {
  readonly row: number;
  readonly line?: number;
  readonly part: string;
  readonly specimen: string;
  readonly spot: string;
  readonly what: FoundData['quantity'];
  readonly value: string;
}

export interface PreviewSpectrum {
  readonly name: string;
  readonly startNm: number;
  readonly stepNm: number;
  readonly values: readonly number[];
}

/** What a page shows of a set of readings, small whatever the size of the set. */
export interface ReadingSummary {
  readonly readings: number;
  readonly quantities: readonly (readonly [quantity: FoundData['quantity'], count: number])[];
  readonly specimens: readonly FoundSpecimen[];
  /** How many specimens there are beyond those listed. */
  readonly moreSpecimens: number;
  readonly conditions: readonly (FoundConditions & { readonly readings: number })[];
  readonly instruments: readonly string[];
  readonly stages: readonly string[];
  readonly lights: readonly UserLight[];
  readonly questions: readonly Question[];
  readonly preview: readonly PreviewRow[];
  readonly spectra: readonly PreviewSpectrum[];
  /** Whether values of reflectance are fractions or per cent is not known. */
  readonly scaleUndeclared: boolean;
  readonly created?: string;
  /** Rows bear ids of a request sheet. */
  readonly answersRequests: boolean;
}

export const summarySizes = { specimens: 400, preview: 8, spectra: 24 } as const;

const separatorWords = { ',': 'comma', ';': 'semicolon', '\t': 'tab' } as const;
/** Characters of a text that its layout is told from. */
const looked = 60_000;

/** The layout of a text for a reader, told from its beginning. */
export function textLayout(reader: string, text: string, set: Pick<ReadingSet, 'records'>): TextLayout {
  if (reader === 'csv') return sheetLayout(text);
  const quantities = [...new Set(set.records.slice(0, 2000).map(({ data }) => data.quantity))].toSorted();
  const layout = reader === 'iso28178' ? 'tables of fields' : reader === 'tm27' ? 'one spectral distribution' : 'objects';
  return { layout, shape: `${reader} ${quantities.join(' ')}` };
}

function sheetLayout(text: string): TextLayout {
  const start = text.length <= looked ? text : text.slice(0, Math.max(text.lastIndexOf('\n', looked), 1));
  const { value: table } = readDelimited(start);
  if (table === undefined) return { layout: 'a row a reading', shape: 'csv' };
  const columns = table.header.cells.map((cell) => ({ cell, column: readColumn(cell) }));
  const wide = columns.some(({ column }) => column.kind === 'reflectance');
  const long = columns.some(({ column }) => column.kind === 'field' && column.field === 'wavelength');
  const names = columns.filter(({ column }) => column.kind !== 'reflectance').map(({ cell }) => cell.toLowerCase());
  const nm = columns.flatMap(({ column }) => (column.kind === 'reflectance' ? [column.nm] : []));
  return {
    layout: wide ? 'a row a spectrum' : long ? 'a row a wavelength' : 'a row a reading', separator: separatorWords[table.separator],
    decimal: table.decimal === ',' ? 'comma' : 'point',
    shape: `csv ${names.join('|')}${nm.length === 0 ? '' : ` ${nm[0]}-${nm.at(-1)}/${nm.length}`}`,
  };
}

/** What a page shows of a set. */
export function summariseReadings(set: ReadingSet): ReadingSummary {
  const counts = new Map<FoundData['quantity'], number>();
  const conditionCounts = new Array<number>(set.conditions.length).fill(0);
  const stages = new Set<string>();
  const specimens = new Map<string, { first: ReadingRecord; readings: number; quantities: Set<FoundData['quantity']> }>();
  for (const record of set.records) {
    counts.set(record.data.quantity, (counts.get(record.data.quantity) ?? 0) + 1);
    conditionCounts[record.conditions] = (conditionCounts[record.conditions] ?? 0) + 1;
    if (record.stage !== undefined) stages.add(record.stage);
    const key = specimenKey(record);
    const entry = specimens.get(key);
    if (entry === undefined) specimens.set(key, { first: record, readings: 1, quantities: new Set([record.data.quantity]) });
    else {
      entry.readings += 1;
      entry.quantities.add(record.data.quantity);
    }
  }
  const listed = [...specimens.values()].slice(0, summarySizes.specimens);
  return {
    readings: set.records.length,
    quantities: [...counts],
    specimens: listed.map(({ first: { part, source, supplier, specimen, stage, kind, lot, line }, readings, quantities }) => present({
      part, source, supplier, specimen, stage, kind, lot, line, readings, quantities: [...quantities],
    })),
    moreSpecimens: specimens.size - listed.length,
    conditions: set.conditions.map((found, index) => ({ ...found, readings: conditionCounts[index] ?? 0 })),
    instruments: [...new Set(set.conditions.map(({ instrument }) => instrument).filter((name) => name !== undefined))],
    stages: [...stages],
    lights: set.lights,
    questions: set.questions,
    preview: set.records.slice(0, summarySizes.preview).map(previewRow),
    spectra: sampleSpectra(set.records),
    scaleUndeclared: set.records.some(({ data }) => data.quantity === 'spectrum' && data.scaleUndeclared === true),
    ...(set.created === undefined ? {} : { created: set.created }),
    answersRequests: answersRequests(set),
  };
}

/** Whether a column of the file holds what a request sheet asks to be sent back. */
export const answersRequests = ({ records }: Pick<ReadingSet, 'records'>): boolean => records.some(({ labels }) => labels !== undefined && Object.keys(labels).some((name) => name.toLowerCase() === 'request'));

/** Tells apart what is placed apart. */
export const specimenKey = ({ part, source, supplier, specimen, stage }: Pick<ReadingRecord, 'part' | 'source' | 'supplier' | 'specimen' | 'stage'>): string =>
  JSON.stringify([part, source, supplier, specimen, stage]);

const present = <T extends object>(value: T): T => Object.fromEntries(Object.entries(value).filter(([, member]) => member !== undefined)) as T;

const previewRow = ({ row, line, part, source, supplier, specimen, spot, data }: ReadingRecord): PreviewRow => ({
  row, ...(line === undefined ? {} : { line }), part: part ?? source ?? supplier ?? '', specimen, spot: spot?.name ?? '', what: data.quantity, value: valueText(data),
});

/** Up to a few spectra, from all over the file. */
function sampleSpectra(records: readonly ReadingRecord[]): PreviewSpectrum[] {
  const places = records.flatMap(({ data }, index) => (data.quantity === 'spectrum' ? [index] : []));
  const count = Math.min(summarySizes.spectra, places.length);
  return Array.from({ length: count }, (_, i) => {
    const record = records[places[Math.floor((i * places.length) / count)] ?? 0];
    if (record?.data.quantity !== 'spectrum') return undefined;
    const { startNm, stepNm, values } = record.data;
    return { name: record.specimen, startNm, stepNm, values };
  }).filter((spectrum) => spectrum !== undefined);
}

const short = (value: number): string => String(Number(value.toPrecision(4))).replace('-', '\u2212');

/** The values of a reading in a line. */
export function valueText(data: FoundData): string {
  switch (data.quantity) {
    case 'spectrum': {
      const [low, high] = [Math.min(...data.values), Math.max(...data.values)];
      const scale = data.scaleUndeclared === true ? 1 : 100;
      const unit = data.scaleUndeclared === true ? '' : ' %';
      return `${data.startNm} to ${data.startNm + data.stepNm * (data.values.length - 1)} nm by ${data.stepNm}, ${short(low * scale)} to ${short(high * scale)}${unit}`;
    }
    case 'cielab': return `L* ${short(data.lab[0])}, a* ${short(data.lab[1])}, b* ${short(data.lab[2])}${viewText(data)}`;
    case 'difference': return `dL* ${short(data.difference[0])}, da* ${short(data.difference[1])}, db* ${short(data.difference[2])}${data.master === undefined ? '' : ` to ${data.master}`}${viewText(data)}`;
    case 'gloss': return `${short(data.gloss)} GU at ${data.angle}°${data.haze === undefined ? '' : `, haze ${short(data.haze)}`}`;
    case 'texture': return Object.entries(data.parameters).slice(0, 4).map(([name, value]) => `${parameterName(name)} ${short(value as number)}`).join(', ') || 'how it looks';
  }
}

const viewText = ({ light, observer }: { readonly light?: string; readonly observer?: number }): string =>
  (light === undefined ? '' : `, ${light}${observer === undefined ? '' : ` ${observer}°`}`);

/** `saUm` as `Sa` with its unit. */
function parameterName(field: string): string {
  const unit = field.endsWith('Um') ? ' µm' : field.endsWith('Mm') ? ' mm' : field.endsWith('Deg') ? ' °' : '';
  const name = field.replace(/(Um|Mm|Deg)$/u, '');
  return `${name.charAt(0).toUpperCase()}${name.slice(1)}${unit === '' ? '' : ` (${unit.trim()})`}`;
}
