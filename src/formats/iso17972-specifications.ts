import type { ObserverDegrees } from '../readings/reading.ts';
import { readLight, readObserver } from './condition-words.ts';
import { cxfIlluminants } from './iso17972-names.ts';
import { nameText } from './name-text.ts';
import { defined } from './reading-collector.ts';
import type { FoundConditions, FoundGeometry } from './reading-set.ts';
import type { TableFaults } from './table-faults.ts';
import type { XmlElement } from './xml-tree.ts';
import { attributeOf, childOf, childText, childrenOf } from './xml-tree.ts';

/** What a ColorSpecification says of the values that refer to it. */
export interface Specification {
  readonly conditions: FoundConditions;
  readonly light?: string;
  readonly observer?: ObserverDegrees;
  readonly startNm?: number;
  readonly incrementNm?: number;
  readonly bandpassCorrected?: boolean;
}

/** Specifications by their Id; an Id that occurs twice and numbers that are none are faults. */
export function readSpecifications(resources: XmlElement | undefined, faults: TableFaults): Map<string, Specification> {
  const found = new Map<string, Specification>();
  for (const element of childrenOf(childOf(resources, 'ColorSpecificationCollection'), 'ColorSpecification')) {
    const id = attributeOf(element, 'Id')?.value ?? '';
    if (id === '') faults.add('missing-field', element.offset, { expected: 'an Id of the ColorSpecification', found: 'none' });
    else if (found.has(id)) faults.add('duplicate-id', element.offset, { expected: 'an Id that no other ColorSpecification has', found: JSON.stringify(id.slice(0, 60)) });
    else found.set(id, readSpecification(element, faults));
  }
  return found;
}

function readSpecification(element: XmlElement, faults: TableFaults): Specification {
  const tristimulus = childOf(element, 'TristimulusSpec');
  const measurement = childOf(element, 'MeasurementSpec');
  const range = childOf(measurement, 'WavelengthRange');
  const device = childOf(measurement, 'Device');
  const geometry = childOf(measurement, 'GeometryChoice');
  const corrected = childText(measurement, 'BandpassCorrected');
  return defined({
    conditions: defined({
      instrument: nameText([childText(device, 'Manufacturer'), childText(device, 'Model')].filter((word) => word !== undefined).join(' ')),
      serial: nameText(childText(device, 'SerialNumber')),
      geometry: readGeometryChoice(geometry, faults),
      aspecularDeg: aspecularOf(geometry, faults),
      apertureMm: readAperture(childOf(measurement, 'Aperture'), faults),
      backing: nameText(childText(measurement, 'Backing')),
      uv: readUltraviolet(device),
    }),
    light: readIlluminant(tristimulus),
    observer: readObserver(childText(tristimulus, 'Observer') ?? ''),
    startNm: numberAttribute(range, 'StartWL', faults),
    incrementNm: numberAttribute(range, 'Increment', faults),
    bandpassCorrected: corrected === undefined ? undefined : corrected === 'true' || corrected === '1',
  });
}

const numeral = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/u;

/** A number of an attribute; undefined where there is none, with a fault where it is no finite number. */
export function numberAttribute(element: XmlElement | undefined, name: string, faults: TableFaults): number | undefined {
  const attribute = attributeOf(element, name);
  if (attribute === undefined) return undefined;
  const text = attribute.value.trim();
  const value = Number(text);
  if (numeral.test(text) && Number.isFinite(value)) return value;
  faults.add('not-a-number', attribute.offset, { expected: `a number as ${name}`, found: JSON.stringify(text.slice(0, 60)) });
  return undefined;
}

/** The number that an element holds, in a range; a fault where there is none. */
export function numberElement(element: XmlElement, min: number, max: number, faults: TableFaults): number | undefined {
  const text = element.text.trim();
  const value = Number(text);
  if (!numeral.test(text)) faults.add('not-a-number', element.textOffset, { expected: `a number in ${element.name}`, found: JSON.stringify(text.slice(0, 60)) });
  else if (!Number.isFinite(value)) faults.add('not-finite', element.textOffset, { expected: `a finite number in ${element.name}`, found: JSON.stringify(text.slice(0, 60)) });
  else if (value < min || value > max) faults.add(value < 0 && min === 0 ? 'negative' : 'out-of-range', element.textOffset, { expected: `a number from ${min} to ${max} in ${element.name}`, found: text.slice(0, 60) });
  else return value;
  return undefined;
}

/** Sphere, single angle or several angles; the sphere of the standard is d:8 of CIE 15. */
function readGeometryChoice(choice: XmlElement | undefined, faults: TableFaults): FoundGeometry | undefined {
  const sphere = childOf(choice, 'SphereGeometry');
  if (sphere !== undefined) {
    const words = `${sphere.text} ${sphere.children.map((child) => child.name).join(' ')}`;
    return /Specular_Included/u.test(words) ? 'di:8' : /Specular_Excluded/u.test(words) ? 'de:8' : 'd:8';
  }
  const single = childOf(choice, 'SingleAngle');
  if (single !== undefined) return readSingleAngle(single, faults);
  if (childOf(choice, 'MultiAngle') !== undefined) return 'multi-angle';
  return childOf(choice, 'UnknownGeometry') === undefined ? undefined : 'unknown';
}

function readSingleAngle(single: XmlElement, faults: TableFaults): FoundGeometry | undefined {
  const angle = (name: string): number | undefined => {
    const child = childOf(single, name);
    return child === undefined ? undefined : numberElement(child, -90, 90, faults);
  };
  const arrangement = childText(single, 'SingleAngleConfiguration');
  const annular = arrangement === 'Annular';
  const uniplanar = arrangement === 'Uniplanar';
  const light = angle('IlluminationAngle');
  const eye = angle('MeasurementAngle');
  if (light !== undefined && Math.abs(light) === 45 && eye === 0) return annular ? '45a:0' : uniplanar ? '45x:0' : '45:0';
  if (light === 0 && eye !== undefined && Math.abs(eye) === 45) return annular ? '0:45a' : uniplanar ? '0:45x' : '0:45';
  return undefined;
}

function aspecularOf(choice: XmlElement | undefined, faults: TableFaults): number | undefined {
  const angles = childrenOf(childOf(choice, 'MultiAngle'), 'BRDFAngle').flatMap((angle) => childrenOf(angle, 'Aspecular'));
  const [only] = angles;
  return only === undefined || angles.length > 1 ? undefined : numberElement(only, -90, 180, faults);
}

/** A diameter with its unit; a number without one, or a word, is not taken for millimetres. */
function readAperture(element: XmlElement | undefined, faults: TableFaults): number | undefined {
  if (element === undefined) return undefined;
  const text = element.text.trim();
  const number = text.endsWith('mm') ? text.slice(0, -2).trim() : '';
  const value = Number(number);
  if (numeral.test(number) && value > 0 && value <= 1000) return value;
  faults.add('unknown-value', element.textOffset, { severity: 'warning', expected: 'a diameter with its unit, for example 8 mm', found: JSON.stringify(text.slice(0, 60)), hint: 'It is read as not stated.' });
  return undefined;
}

function readUltraviolet(device: XmlElement | undefined): FoundConditions['uv'] {
  const words = `${childText(device, 'DeviceFilter') ?? ''} ${childText(device, 'DeviceIllumination') ?? ''}`;
  return /uv[\s_-]*(?:excluded|cut)/iu.test(words) ? 'excluded' : /uv[\s_-]*included/iu.test(words) ? 'included' : undefined;
}

function readIlluminant(tristimulus: XmlElement | undefined): string | undefined {
  const word = childText(tristimulus, 'Illuminant');
  if (word !== undefined && Object.hasOwn(cxfIlluminants, word)) return cxfIlluminants[word];
  const custom = childOf(tristimulus, 'CustomIlluminant');
  return readLight(attributeOf(custom, 'Name')?.value ?? custom?.text ?? '').light;
}
