import { highestGloss } from '../cabin/shapes/reading-shape.ts';
import { highestReflectance, percentHint } from '../cabin/shapes/reflectances.ts';
import { wavelengthFault } from '../cabin/shapes/wavelengths.ts';
import { lchToLab } from '../colour/cielab.ts';
import type { Lab } from '../quantities.ts';
import type { GlossAngle } from '../readings/reading.ts';
import type { FoundCielab, FoundDifference, FoundGloss, FoundSpectrum } from './reading-set.ts';
import { nameText } from './name-text.ts';
import { defined } from './reading-collector.ts';
import type { Specification } from './iso17972-specifications.ts';
import { numberAttribute, numberElement } from './iso17972-specifications.ts';
import type { TableFaults } from './table-faults.ts';
import type { XmlElement } from './xml-tree.ts';
import { attributeOf, childOf } from './xml-tree.ts';

/** The specification that a value refers to. */
export function specificationOf(element: XmlElement, specifications: ReadonlyMap<string, Specification>, faults: TableFaults): Specification | undefined {
  const attribute = attributeOf(element, 'ColorSpecification');
  const found = specifications.get(attribute?.value ?? '');
  if (found === undefined) {
    faults.add('unknown-specification', attribute?.offset ?? element.offset, {
      expected: 'the Id of a ColorSpecification of the file', found: attribute === undefined ? 'no ColorSpecification' : JSON.stringify(attribute.value.slice(0, 60)),
    });
  }
  return found;
}

/** A ReflectanceSpectrum: fractions, 1 for the perfect diffuser; values above 1.5 are refused, not taken for per cent. */
export function readSpectrum(element: XmlElement, specification: Specification, faults: TableFaults): FoundSpectrum | undefined {
  const startNm = numberAttribute(element, 'StartWL', faults) ?? specification.startNm;
  const stepNm = specification.incrementNm;
  const values = readValues(element, faults);
  if (startNm === undefined || stepNm === undefined) {
    faults.add('wavelengths-missing', element.offset, { expected: 'StartWL, and an Increment in the WavelengthRange of the ColorSpecification', found: startNm === undefined ? 'no StartWL' : 'no Increment' });
    return undefined;
  }
  if (values === undefined) return undefined;
  const fault = wavelengthFault(startNm, stepNm, values.length);
  if (fault !== undefined) {
    faults.add(fault.code, element.offset, fault);
    return undefined;
  }
  return defined<FoundSpectrum>({ quantity: 'spectrum', startNm, stepNm, values, bandpassCorrected: specification.bandpassCorrected });
}

const numeral = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?$/u;
const mostValues = 1000;

function readValues(element: XmlElement, faults: TableFaults): number[] | undefined {
  const { text, textOffset } = element;
  const values: number[] = [];
  let over: { at: number; word: string; count: number } | undefined;
  for (const match of text.matchAll(/\S+/gu)) {
    const word = match[0];
    const at = textOffset + match.index;
    const value = numeral.test(word) ? Number(word) : Number.NaN;
    const code = Number.isNaN(value) ? 'not-a-number' : Number.isFinite(value) ? value < 0 ? 'negative' : undefined : 'not-finite';
    if (code !== undefined) {
      faults.add(code, at, { expected: 'reflectance factors, 1 for the perfect reflecting diffuser', found: JSON.stringify(word.slice(0, 60)) });
      return undefined;
    }
    if (value > highestReflectance) over = { at: over?.at ?? at, word: over?.word ?? word, count: (over?.count ?? 0) + 1 };
    if (values.push(value) > mostValues) {
      faults.add('too-many', at, { expected: `at most ${mostValues} values`, found: 'more' });
      return undefined;
    }
  }
  if (over === undefined) return values;
  faults.add('reflectance-percent', over.at, {
    expected: `reflectance factors from 0 to ${highestReflectance}`, found: `${over.word.slice(0, 60)}${over.count === 1 ? '' : ` and ${over.count - 1} more in this spectrum`}`, hint: percentHint,
  });
  return undefined;
}

function triple(element: XmlElement, names: readonly [string, string, string], ranges: readonly (readonly [number, number])[], faults: TableFaults): Lab | undefined {
  const numbers = names.map((name, index) => {
    const child = childOf(element, name);
    if (child !== undefined) return numberElement(child, ranges[index]?.[0] ?? -Infinity, ranges[index]?.[1] ?? Infinity, faults);
    faults.add('missing-field', element.offset, { expected: `${name} in ${element.name}`, found: 'none' });
    return undefined;
  });
  const [p, q, r] = numbers;
  return p === undefined || q === undefined || r === undefined ? undefined : [p, q, r];
}

/** ColorCIELab or ColorCIELCh. */
export function readCielab(element: XmlElement, { light, observer }: Specification, faults: TableFaults): FoundCielab | undefined {
  const polar = element.name === 'ColorCIELCh';
  const values = polar
    ? triple(element, ['L', 'C', 'H'], [[0, 120], [0, 300], [-360, 720]], faults)
    : triple(element, ['L', 'A', 'B'], [[0, 120], [-200, 200], [-200, 200]], faults);
  return values && defined<FoundCielab>({ quantity: 'cielab', lab: polar ? lchToLab(values) : values, light, observer });
}

/** DeltaCIELab: trial minus the object that StandardRef names. */
export function readDifference(element: XmlElement, { light, observer }: Specification, names: ReadonlyMap<string, string>, faults: TableFaults): FoundDifference | undefined {
  const span = [-200, 200] as const;
  const difference = triple(element, ['dL', 'dA', 'dB'], [span, span, span], faults);
  const reference = attributeOf(element, 'StandardRef')?.value.trim() ?? '';
  return difference && defined<FoundDifference>({ quantity: 'difference', difference, light, observer, master: names.get(reference) ?? nameText(reference) });
}

/** Gloss with its angle in the Method; without one it is left out with a warning, since 20, 60 and 85 degrees differ widely. */
export function readGloss(element: XmlElement, faults: TableFaults): FoundGloss | undefined {
  const method = attributeOf(element, 'Method')?.value.slice(0, 200) ?? '';
  const angles = [...new Set([...method.matchAll(/(?<![\d.])(?:20|60|85)(?![\d.]\d|\d)/gu)].map((match) => Number(match[0])))];
  const gloss = numberElement(element, 0, highestGloss, faults);
  if (angles.length !== 1) {
    faults.add('gloss-angle-unknown', element.offset, { severity: 'warning', expected: 'an angle of 20, 60 or 85 degrees in the Method', found: JSON.stringify(method.slice(0, 60)), hint: 'This gloss value is left out.' });
    return undefined;
  }
  // The pattern finds these three only.
  return gloss === undefined ? undefined : { quantity: 'gloss', angle: angles[0] as GlossAngle, gloss };
}
