import type { ObserverDegrees } from '../readings/reading.ts';
import type { FieldName } from './column-names.ts';
import { columnNames } from './column-names.ts';
import { readLight, readObserver } from './condition-words.ts';
import type { ReflectanceScale } from './spectra-table.ts';

/** What a column of a table holds. */
export type Column =
  | { readonly kind: 'field'; readonly field: FieldName; readonly factor: number; readonly scale?: ReflectanceScale; readonly view?: View }
  | { readonly kind: 'reflectance'; readonly nm: number; readonly scale?: ReflectanceScale }
  | { readonly kind: 'label'; readonly name: string; /** The unit that was not understood. */ readonly unit?: string };

/** Light and observer that a column of CIELAB values names in its header. */
export interface View {
  readonly light: string;
  readonly observer?: ObserverDegrees;
}

const fieldsByKey = new Map<string, FieldName>(
  Object.entries(columnNames).flatMap(([field, keys]) => keys.map((key): [string, FieldName] => [key, field as FieldName])),
);

/** A header as it is compared: small letters and digits only, deltas as `d`, Greek lambda and the micro sign spelt. */
export function columnKey(text: string): string {
  return text.normalize('NFKC').replaceAll(/[\u0394\u2206\u03b4]/gu, 'd').replaceAll(/\u03bb/gu, 'lambda').toLowerCase().replaceAll(/[^\p{L}\d%]/gu, '');
}

const micrometres: Readonly<Record<string, number>> = { um: 1, μm: 1, µm: 1, micron: 1, microns: 1, nm: 1e-3, mm: 1e3 };
const millimetres: Readonly<Record<string, number>> = { mm: 1, cm: 10, um: 1e-3, μm: 1e-3, µm: 1e-3, m: 1000 };
const degrees: Readonly<Record<string, number>> = { deg: 1, degree: 1, degrees: 1, '°': 1 };

/** Units by field, as the factor to the unit of the document. */
const unitsOf: Partial<Record<FieldName, Readonly<Record<string, number>>>> = {
  spotX: millimetres, spotY: millimetres, aperture: millimetres, salMm: millimetres, rsmMm: millimetres,
  saUm: micrometres, sqUm: micrometres, spUm: micrometres, svUm: micrometres, szUm: micrometres, raUm: micrometres, rzUm: micrometres,
  rotation: degrees, aspecular: degrees, angle: degrees, stdDeg: degrees, h: degrees,
  gloss: { gu: 1 }, gloss20: { gu: 1 }, gloss60: { gu: 1 }, gloss85: { gu: 1 },
  temperature: { c: 1, '°c': 1, degc: 1, celsius: 1 }, wavelength: { nm: 1 }, sdr: { '%': 0.01, percent: 0.01 },
};

const scaleWords: Readonly<Record<string, ReflectanceScale>> = { '%': 'percent', percent: 'percent', 'per cent': 'percent', '1': 'fraction', fraction: 'fraction', '0-1': 'fraction', '0..1': 'fraction' };
const scaleOf = (unit: string): ReflectanceScale | undefined => (Object.hasOwn(scaleWords, unit) ? scaleWords[unit] : undefined);

const reflectanceName = /^(?:r|refl|reflectance|nm|wl|lambda|spectral|spectralnm|spectral(dec|pct)|r%)?(\d{3,4})(?:nm)?(%)?$/u;
const plainWavelength = /^(\d{3,4}(?:\.\d+)?)\s*(?:nm)?$/u;

/**
 * What a header says: a wavelength (`400`, `400 nm`, `R400`, `nm400`, `SPECTRAL_NM_400`, `SPECTRAL_PCT_400`; a `%` declares per
 * cent), a known field with its unit in brackets or behind the name (`Ra (µm)`, `aperture mm`, `L* (D65/10)`), else a label.
 */
export function readColumn(header: string): Column {
  const { name, unit } = splitUnit(header);
  const label = /^label:\s*(\S.*)$/iu.exec(header);
  if (label?.[1] !== undefined) return { kind: 'label', name: oneLine(label[1]) };
  return reflectanceColumn(name, unit) ?? fieldColumn(name, unit) ?? (unit === '' ? undefined : fieldColumn(header, '')) ?? trailingUnit(header) ?? { kind: 'label', name: oneLine(header) };
}

const oneLine = (text: string): string => text.replaceAll(/\s+/gu, ' ').trim();

/** The name, and what stands in brackets at its end. */
function splitUnit(header: string): { name: string; unit: string } {
  const text = header.trim();
  const last = text.at(-1);
  const open = last === ')' ? text.lastIndexOf('(') : last === ']' ? text.lastIndexOf('[') : -1;
  return open < 0 ? { name: text, unit: '' } : { name: text.slice(0, open).trim(), unit: text.slice(open + 1, -1).trim().toLowerCase() };
}

function reflectanceColumn(name: string, unit: string): Column | undefined {
  if (name.length > 40) return undefined;
  const plain = plainWavelength.exec(name);
  const match = plain === null ? reflectanceName.exec(columnKey(name)) : null;
  if (plain === null && match === null && !(name === '' || /^r$/iu.test(name))) return undefined;
  // `R(400)` has its wavelength where others have a unit.
  const inBrackets = plain === null && match === null ? plainWavelength.exec(unit) : null;
  const nm = plain?.[1] ?? match?.[2] ?? (name === '' ? undefined : inBrackets?.[1]);
  if (nm === undefined) return undefined;
  const word = match?.[1];
  const scale = word === 'pct' || match?.[3] !== undefined ? 'percent' : word === 'dec' ? 'fraction' : scaleOf(unit);
  return { kind: 'reflectance', nm: Number(nm), ...(scale === undefined ? {} : { scale }) };
}

function fieldColumn(name: string, unit: string): Column | undefined {
  const key = columnKey(name);
  const field = fieldsByKey.get(key) ?? (fieldsByKey.get(key.replace('%', '')) === 'value' ? 'value' : undefined);
  if (field === undefined) return undefined;
  if (field === 'value') {
    const scale = scaleOf(unit) ?? (key.includes('%') ? 'percent' : undefined);
    return unit !== '' && scale === undefined ? undefined : { kind: 'field', field, factor: 1, ...(scale === undefined ? {} : { scale }) };
  }
  if (unit === '') return { kind: 'field', field, factor: 1 };
  const factors = unitsOf[field];
  if (factors !== undefined && Object.hasOwn(factors, unit)) return { kind: 'field', field, factor: factors[unit] };
  if (field === 'gloss') {
    const angled = fieldsByKey.get(`gloss${unit.replaceAll(/[^\d]/gu, '')}`);
    if (angled !== undefined) return { kind: 'field', field: angled, factor: 1 };
  }
  const view = readLight(unit);
  if (view.light !== undefined && viewedFields.has(field)) {
    return { kind: 'field', field, factor: 1, view: { light: view.light, ...(view.observer === undefined ? {} : { observer: view.observer }) } };
  }
  if (viewedFields.has(field) && readObserver(unit) === undefined) return { kind: 'field', field, factor: 1 };
  return { kind: 'label', name: oneLine(`${name} (${unit})`), unit };
}

const viewedFields: ReadonlySet<FieldName> = new Set(['L', 'a', 'b', 'C', 'h', 'dL', 'da', 'db', 'L1', 'a1', 'b1', 'L2', 'a2', 'b2']);

/** `aperture mm`, `Ra_um`, `L* D65/10`: the unit as the last word. */
function trailingUnit(header: string): Column | undefined {
  const at = Math.max(header.lastIndexOf(' '), header.lastIndexOf('_'));
  if (at <= 0 || header.length > 60) return undefined;
  const column = fieldColumn(header.slice(0, at), header.slice(at + 1).trim().toLowerCase());
  return column?.kind === 'field' && (column.factor !== 1 || column.view !== undefined || isUnit(column.field, header.slice(at + 1))) ? column : undefined;
}

const isUnit = (field: FieldName, text: string): boolean => {
  const factors = unitsOf[field];
  return (factors !== undefined && Object.hasOwn(factors, text.trim().toLowerCase())) || (field === 'value' && scaleOf(text.trim().toLowerCase()) !== undefined);
};
