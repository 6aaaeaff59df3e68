import type { Issue } from '../issue.ts';
import type { SurfaceFaults } from './surface-faults.ts';
import type { SurfaceIssueCode } from './surface-issue-codes.ts';
import { gridFits, surfaceLimits } from './surface-limits.ts';
import { decodeText } from './decode-text.ts';
import type { XmlElement } from './xml-tree.ts';
import { readXml } from './xml-tree.ts';

/** Types of coordinates: 16 and 32 bit integers, 32 and 64 bit floating point. */
export type X3pNumber = 'I' | 'L' | 'F' | 'D';

interface Part {
  readonly name: string;
  readonly md5: string | undefined;
}

/** What main.xml says, lengths in metres. */
export interface X3pHeader {
  readonly width: number;
  readonly height: number;
  readonly layers: number;
  readonly spacing: readonly [x: number, y: number];
  readonly zType: X3pNumber;
  readonly zIncrement: number;
  readonly zOffset: number;
  /** Heights in the header itself, as written. */
  readonly list: Float64Array | undefined;
  readonly dataPart: Part | undefined;
  readonly validPart: Part | undefined;
}

/** Prefixed root, children without a prefix: names are compared without namespaces. */
const child = (element: XmlElement | undefined, name: string): XmlElement | undefined => element?.children.find((candidate) => candidate.name === name);
const textOf = (element: XmlElement | undefined, ...path: readonly string[]): string | undefined =>
  path.reduce<XmlElement | undefined>(child, element)?.text.trim() || undefined;

/** Reads main.xml; the faults of all records are listed together. */
export function readX3pHeader(bytes: Uint8Array, file: string | undefined, faults: SurfaceFaults): X3pHeader | undefined {
  const { text, issues } = decodeText(bytes, 'main.xml');
  // Codes of the text and XML readers are their own, so their issues are taken over as they are.
  const takeOver = (all: readonly Issue[]): void => {
    for (const { code, file: _, ...issue } of all) faults.add(code as SurfaceIssueCode, { path: 'main.xml', ...issue });
  };
  takeOver(issues);
  if (text === undefined) return undefined;
  const { root, faults: syntax } = readXml(text, file);
  takeOver(syntax.list());
  if (root === undefined || faults.errors() > 0) return undefined;
  const fault = (code: SurfaceIssueCode, path: string, found: string | undefined, expected: string, hint?: string): void =>
    faults.add(code, { path: `main.xml/${path}`, found: found === undefined ? 'nothing' : JSON.stringify(found.slice(0, 60)), expected, ...(hint === undefined ? {} : { hint }) });
  if (root.name !== 'ISO5436_2') {
    fault('unknown-type', '', root.name, 'the root ISO5436_2');
    return undefined;
  }
  const [axes, record3] = [child(child(root, 'Record1'), 'Axes'), child(root, 'Record3')];
  const feature = textOf(root, 'Record1', 'FeatureType');
  if (feature !== 'SUR' && feature !== 'PRF') fault('not-regular', 'Record1/FeatureType', feature, 'SUR or PRF', 'Point clouds have no grid to measure on.');
  const size = ['SizeX', 'SizeY', 'SizeZ'].map((name) => number(textOf(record3, 'MatrixDimension', name)));
  const [width, height, layers] = [size[0] ?? NaN, size[1] ?? NaN, size[2] ?? 1];
  const fits = gridFits(width, height, faults, 'main.xml/Record3/MatrixDimension');
  if (!Number.isInteger(layers) || layers < 1 || (fits && width * height * layers > surfaceLimits.points)) {
    fault('out-of-range', 'Record3/MatrixDimension/SizeZ', String(layers), 'one layer');
  } else if (layers > 1) {
    faults.add('several-layers', { severity: 'warning', path: 'main.xml/Record3/MatrixDimension/SizeZ', found: `${layers} layers`, expected: 'one', hint: 'Only the first is read.' });
  }
  const spacing = (['CX', 'CY'] as const).map((name) => {
    const type = textOf(axes, name, 'AxisType');
    const increment = number(textOf(axes, name, 'Increment'));
    const single = name === 'CY' && height === 1;
    if (type !== 'I' && !single) fault('not-regular', `Record1/Axes/${name}/AxisType`, type, 'I, an axis of even steps', 'Points with coordinates of their own are not read.');
    else if (!(increment !== undefined && increment > 0 && increment < Infinity) && !single) {
      fault('out-of-range', `Record1/Axes/${name}/Increment`, textOf(axes, name, 'Increment'), 'a length in metres above 0');
    }
    return increment;
  });
  const along = spacing[0] ?? NaN;
  const across = spacing[1] !== undefined && spacing[1] > 0 ? spacing[1] : along;
  const z = zAxis(axes, fault);
  if (child(axes, 'Rotation') !== undefined && !unrotated(child(axes, 'Rotation'))) {
    faults.add('surface-rotated', { severity: 'warning', path: 'main.xml/Record1/Axes/Rotation', found: 'a rotation', expected: 'none', hint: 'Heights are taken as they are written; take the form off.' });
  }
  const link = child(record3, 'DataLink');
  const list = child(record3, 'DataList');
  const part = (name: string, digest: string): Part | undefined => {
    const target = textOf(link, name)?.replaceAll('\\', '/').replace(/^\.?\//u, '');
    return target === undefined ? undefined : { name: target, md5: textOf(link, digest) };
  };
  const dataPart = part('PointDataLink', 'MD5ChecksumPointData');
  if (dataPart === undefined && list === undefined) fault('missing-field', 'Record3', undefined, 'DataLink with PointDataLink, or DataList');
  const heights = list !== undefined && fits ? listed(list, width * height, fault) : undefined;
  return faults.errors() > 0 ? undefined : {
    width, height, layers, spacing: [along, across], ...z, list: heights, dataPart, validPart: list === undefined ? part('ValidPointsLink', 'MD5ChecksumValidPoints') : undefined,
  };
}

type Fault = (code: SurfaceIssueCode, path: string, found: string | undefined, expected: string, hint?: string) => void;

const number = (text: string | undefined): number | undefined => (text === undefined ? undefined : Number(text));
const isNumberType = (text: string | undefined): text is X3pNumber => text === 'I' || text === 'L' || text === 'F' || text === 'D';

function zAxis(axes: XmlElement | undefined, fault: Fault): Pick<X3pHeader, 'zType' | 'zIncrement' | 'zOffset'> {
  const axis = child(axes, 'CZ');
  const [axisType, type] = [textOf(axis, 'AxisType'), textOf(axis, 'DataType')];
  if (axisType !== 'A') fault('unknown-type', 'Record1/Axes/CZ/AxisType', axisType, 'A, absolute heights');
  if (!isNumberType(type)) fault('unknown-type', 'Record1/Axes/CZ/DataType', type, 'I, L, F or D');
  const [increment, offset] = [number(textOf(axis, 'Increment')) ?? 1, number(textOf(axis, 'Offset')) ?? 0];
  if (!(Number.isFinite(increment) && increment !== 0)) fault('out-of-range', 'Record1/Axes/CZ/Increment', textOf(axis, 'Increment'), 'a number other than 0');
  if (!Number.isFinite(offset)) fault('out-of-range', 'Record1/Axes/CZ/Offset', textOf(axis, 'Offset'), 'a number');
  return { zType: isNumberType(type) ? type : 'D', zIncrement: increment, zOffset: offset };
}

function unrotated(rotation: XmlElement | undefined): boolean {
  return [1, 2, 3].every((row) => [1, 2, 3].every((column) => {
    const value = number(textOf(rotation, `r${row}${column}`));
    return value === undefined || Math.abs(value - (row === column ? 1 : 0)) < 1e-9;
  }));
}

/** Heights as Datum elements: the last of the coordinates between semicolons; an empty one is missing. */
function listed(list: XmlElement, count: number, fault: Fault): Float64Array {
  const data = list.children.filter(({ name }) => name === 'Datum');
  if (data.length !== count) fault(data.length < count ? 'missing-data' : 'extra-data', 'Record3/DataList', `${data.length} data`, `${count}`);
  const heights = new Float64Array(count).fill(NaN);
  data.slice(0, count).forEach((datum, index) => {
    const text = datum.text.split(';').at(-1)?.trim() ?? '';
    if (text === '') return;
    const value = Number(text);
    if (Number.isNaN(value) && text.toLowerCase() !== 'nan') fault('not-a-number', `Record3/DataList/Datum[${index}]`, text, 'a number');
    heights[index] = value;
  });
  return heights;
}
