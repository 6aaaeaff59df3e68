import type { UserLight } from '../cabin/cabin.ts';
import { lightShape } from '../cabin/shapes/register-shapes.ts';
import { collectFaults } from '../cabin/schema/faults.ts';
import type { Outcome } from '../issue.ts';
import { readDateTime, readGeometry } from './condition-words.ts';
import type { FormatInput, FormatReader, ReadOptions } from './format-reader.ts';
import { numberAttribute, numberElement } from './iso17972-specifications.ts';
import { nameText } from './name-text.ts';
import { collectReadings, defined } from './reading-collector.ts';
import type { ReadingCollector } from './reading-collector.ts';
import type { ReadingSet } from './reading-set.ts';
import { scaleInUse, tellOver } from './reflectance-scale.ts';
import { sniffRoot } from './sniff-root.ts';
import type { TableFaults } from './table-faults.ts';
import { wavelengthGrid } from './wavelength-grid.ts';
import type { XmlDocument, XmlElement } from './xml-tree.ts';
import { attributeOf, childOf, childText, childrenOf, readXml } from './xml-tree.ts';

export const tm27Namespaces: readonly string[] = ['http://www.ies.org/iestm2714', 'iestm2714'];
const root27 = 'IESTM2714';

/**
 * IES TM-27-14 spectral data: radiant quantities as lights, reflectance as a reading of a specimen (its scale is asked, since the
 * format leaves it open). Powers at uneven wavelengths are brought to even steps of 1 nm along straight lines, and a note says so.
 */
export const tm27Reader: FormatReader = {
  id: 'tm27', label: 'IES TM-27 spectral data (XML)', extensions: ['.spdx', '.xml'],
  sniff: (text) => (sniffRoot(text) === root27 ? 1 : 0),
  read(input: FormatInput, options: ReadOptions = {}): Outcome<ReadingSet> {
    const document = readXml(input.text, input.file);
    const { root, faults } = document;
    if (root === undefined) return { value: undefined, issues: faults.list() };
    const collector = collectReadings();
    const header = childOf(root, 'Header');
    if (root.name !== root27) faults.add('unknown-format', root.offset, { expected: root27, found: JSON.stringify(root.name.slice(0, 60)) });
    else if (!tm27Namespaces.includes(root.namespace)) {
      faults.add('namespace-missing', root.offset, { severity: 'warning', expected: `the namespace ${tm27Namespaces[0]}`, found: JSON.stringify(root.namespace.slice(0, 100)) });
    }
    const distribution = childOf(root, 'SpectralDistribution');
    if (distribution === undefined) faults.add('missing-field', root.offset, { expected: 'a SpectralDistribution', found: 'none' });
    else readDistribution(distribution, header, document, options, collector);
    const created = readDateTime(childText(header, 'DocumentCreationDate') ?? '');
    const set = collector.finish({ reader: 'tm27', file: input.file, sha256: input.sha256, created });
    return { value: faults.errors() > 0 ? undefined : set, issues: faults.list() };
  },
};

const radiant: ReadonlySet<string> = new Set(['flux', 'intensity', 'irradiance', 'radiance', 'exitance', 'relative', 'other']);
const reflecting: ReadonlySet<string> = new Set(['reflectance', 'r-factor']);

interface Point {
  readonly nm: number;
  readonly value: number;
  readonly offset: number;
}

function readDistribution(distribution: XmlElement, header: XmlElement | undefined, { faults, position }: XmlDocument, options: ReadOptions, collector: ReadingCollector): void {
  const quantityElement = childOf(distribution, 'SpectralQuantity');
  const quantity = quantityElement?.text.trim().toLowerCase() ?? '';
  const points = readPoints(distribution, faults);
  const name = nameText(childText(header, 'Description')) ?? nameText(childText(header, 'CatalogNumber'));
  if (name === undefined) faults.add('missing-field', header?.offset ?? distribution.offset, { expected: 'a Description in the Header', found: 'none' });
  if (points === undefined || name === undefined) return;
  if (radiant.has(quantity)) {
    const light = lightOf(points, name, distribution, faults);
    if (light !== undefined) collector.addLight(light);
  } else if (reflecting.has(quantity)) {
    const grid = wavelengthGrid(points, faults);
    const scale = scaleInUse([], { ...options, undeclaredScale: 'ask' }, faults);
    tellOver(points.filter(({ value }) => value > scale.top).map(({ value, offset }) => ({ text: String(value), offset })), scale, faults);
    if (grid === undefined) return;
    const conditions = collector.conditions(defined({
      instrument: nameText(childText(header, 'MeasurementEquipment')), geometry: readGeometry(childText(distribution, 'ReflectionGeometry') ?? ''),
    }));
    const corrected = childText(distribution, 'BandwidthCorrected');
    collector.add({
      specimen: name, conditions, row: 1, line: position(distribution.offset).line,
      data: defined({
        quantity: 'spectrum', ...grid, values: points.map(({ value }) => value / scale.divisor), scaleUndeclared: scale.undeclared ? true as const : undefined,
        bandpassCorrected: corrected === undefined ? undefined : corrected === 'true' || corrected === '1',
      }),
    });
  } else {
    faults.add('unknown-value', quantityElement?.textOffset ?? distribution.offset, {
      expected: `a SpectralQuantity of light (${[...radiant].join(', ')}) or of reflection (reflectance, R-factor)`, found: JSON.stringify(quantity.slice(0, 60)),
    });
  }
}

function readPoints(distribution: XmlElement, faults: TableFaults): readonly Point[] | undefined {
  const before = faults.errors();
  const elements = childrenOf(distribution, 'SpectralData');
  if (elements.length > 10_000) {
    faults.add('too-many', distribution.offset, { expected: 'at most 10000 values', found: String(elements.length) });
    return undefined;
  }
  const points = elements.map((element): Point => {
    const nm = numberAttribute(element, 'wavelength', faults);
    if (nm === undefined && attributeOf(element, 'wavelength') === undefined) faults.add('missing-field', element.offset, { expected: 'a wavelength of the SpectralData', found: 'none' });
    return { nm: nm ?? 0, value: numberElement(element, 0, 1e12, faults) ?? 0, offset: element.offset };
  });
  const fault = points.find(({ nm }, index) => index > 0 && nm <= (points[index - 1]?.nm ?? 0));
  if (fault !== undefined && faults.errors() === before) {
    const same = points.filter(({ nm }) => nm === fault.nm).length > 1;
    faults.add(same ? 'duplicate-wavelength' : 'wavelengths-unsorted', fault.offset, { expected: 'wavelengths that rise', found: `${fault.nm} nm` });
  }
  if (points.length < 2) faults.add('wavelengths-missing', distribution.offset, { expected: 'SpectralData at several wavelengths', found: `${points.length} wavelengths` });
  return faults.errors() === before ? points : undefined;
}

/** The light at even steps, checked as the document checks its lights. */
function lightOf(points: readonly Point[], name: string, distribution: XmlElement, faults: TableFaults): UserLight | undefined {
  const [first, second] = points;
  const last = points.at(-1);
  if (first === undefined || second === undefined || last === undefined) return undefined;
  const step = second.nm - first.nm;
  const even = points.every(({ nm }, index) => Math.abs(nm - (first.nm + index * step)) <= 1e-9 * nm);
  if (!even) {
    faults.add('light-interpolated', distribution.offset, { severity: 'note', expected: 'evenly spaced wavelengths', found: 'uneven ones', hint: 'The light is brought to steps of 1 nm along straight lines.' });
  }
  const light: UserLight = { id: name, name, ...(even ? { startNm: first.nm, stepNm: step, values: points.map(({ value }) => value) } : everyNanometre(points, first.nm, last.nm)) };
  const checks = collectFaults();
  lightShape.read(light, checks);
  for (const { code, severity, expected, found, hint } of checks.list()) faults.add(code, distribution.offset, defined({ severity, expected, found, hint }));
  return light;
}

function everyNanometre(points: readonly Point[], firstNm: number, lastNm: number): Pick<UserLight, 'startNm' | 'stepNm' | 'values'> {
  const startNm = Math.ceil(firstNm);
  const count = Math.max(0, Math.min(Math.floor(lastNm), startNm + 5000) - startNm + 1);
  let at = 0;
  const values = Array.from({ length: count }, (_, index) => {
    const nm = startNm + index;
    while (at + 2 < points.length && points[at + 1].nm < nm) at += 1;
    const [left, right] = [points[at], points[at + 1]];
    return left.value + ((nm - left.nm) / (right.nm - left.nm)) * (right.value - left.value);
  });
  return { startNm, stepNm: 1, values };
}

