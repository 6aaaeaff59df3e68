import { numberText } from './format-writer.ts';
import { cxfIlluminants } from './iso17972-names.ts';
import type { FoundConditions, FoundGeometry, ReadingRecord, ReadingSet } from './reading-set.ts';
import type { XmlNode } from './xml-text.ts';
import { element } from './xml-text.ts';

export interface SpecificationList {
  /** Id of the specification that a colour reading refers to. */
  idOf(record: ReadingRecord): string;
  /** The specifications that were asked for, in that order. */
  nodes(): XmlNode[];
}

/** One ColorSpecification for each set of conditions, wavelengths, light and observer. */
export function collectSpecifications({ conditions }: ReadingSet): SpecificationList {
  const ids = new Map<string, { id: string; node: XmlNode }>();
  return {
    idOf(record) {
      const { data } = record;
      const key = JSON.stringify([
        record.conditions,
        data.quantity === 'spectrum' ? [data.startNm, data.stepNm, data.bandpassCorrected] : data.quantity === 'cielab' || data.quantity === 'difference' ? [data.light, data.observer, null, null] : [],
      ]);
      const known = ids.get(key);
      if (known !== undefined) return known.id;
      const id = `cs${ids.size + 1}`;
      ids.set(key, { id, node: specificationNode(id, record, conditions[record.conditions] ?? {}) });
      return id;
    },
    nodes: () => [...ids.values()].map(({ node }) => node),
  };
}

function specificationNode(id: string, { data }: ReadingRecord, found: FoundConditions): XmlNode {
  const viewed = data.quantity === 'cielab' || data.quantity === 'difference' ? data : undefined;
  const tristimulus = viewed === undefined || (viewed.light === undefined && viewed.observer === undefined) ? [] : [element('TristimulusSpec', {}, [
    ...(viewed.light === undefined ? [] : [illuminantNode(viewed.light)]),
    ...(viewed.observer === undefined ? [] : [element('Observer', {}, `${viewed.observer}_Degree`)]),
    element('Method', {}, 'unknown'),
  ])];
  return element('ColorSpecification', { Id: id }, [...tristimulus, element('MeasurementSpec', {}, [
    element('MeasurementType', {}, data.quantity === 'spectrum' ? 'Spectrum_Reflectance' : 'Colorimetric_Reflectance'),
    ...geometryNodes(found.geometry, found.aspecularDeg),
    ...(data.quantity === 'spectrum' ? [element('WavelengthRange', { StartWL: numberText(data.startNm), Increment: numberText(data.stepNm) })] : []),
    ...(found.apertureMm === undefined ? [] : [element('Aperture', {}, `${numberText(found.apertureMm)} mm`)]),
    ...(found.backing === undefined ? [] : [element('Backing', {}, found.backing)]),
    ...(data.quantity === 'spectrum' && data.bandpassCorrected !== undefined ? [element('BandpassCorrected', {}, String(data.bandpassCorrected))] : []),
    ...deviceNodes(found),
  ])]);
}

function illuminantNode(light: string): XmlNode {
  const listed = Object.entries(cxfIlluminants).find(([, name]) => name === light)?.[0];
  return listed === undefined ? element('CustomIlluminant', { Name: light }) : element('Illuminant', {}, listed);
}

function deviceNodes({ instrument, serial }: FoundConditions): XmlNode[] {
  const parts = [...(instrument === undefined ? [] : [element('Model', {}, instrument)]), ...(serial === undefined ? [] : [element('SerialNumber', {}, serial)])];
  return parts.length === 0 ? [] : [element('Device', {}, parts)];
}

function geometryNodes(geometry: FoundGeometry | undefined, aspecularDeg: number | undefined): XmlNode[] {
  const choice = geometryNode(geometry, aspecularDeg);
  return choice === undefined ? [] : [element('GeometryChoice', {}, [choice])];
}

/** The nearest geometry of the standard's list; a tag beside it has the exact name of CIE 15. */
function geometryNode(geometry: FoundGeometry | undefined, aspecularDeg: number | undefined): XmlNode | undefined {
  switch (geometry) {
    case undefined: return undefined;
    case 'di:8': case '8:di': return element('SphereGeometry', {}, 'Specular_Included');
    case 'de:8': case '8:de': return element('SphereGeometry', {}, 'Specular_Excluded');
    case 'd:8': case '8:d': return element('SphereGeometry', {}, 'Diffuse');
    case 'multi-angle': return element('MultiAngle', {}, [element('BRDFAngle', {}, aspecularDeg === undefined ? [] : [element('Aspecular', {}, numberText(aspecularDeg))])]);
    case 'unknown': return element('UnknownGeometry', {});
    default: {
      const fromAbove = geometry.startsWith('0');
      const arrangement = geometry.includes('x') ? 'Uniplanar' : geometry === '45:0' || geometry === '0:45' ? undefined : 'Annular';
      return element('SingleAngle', {}, [
        ...(arrangement === undefined ? [] : [element('SingleAngleConfiguration', {}, arrangement)]),
        element('IlluminationAngle', {}, fromAbove ? '0' : '45'), element('MeasurementAngle', {}, fromAbove ? '45' : '0'),
      ]);
    }
  }
}
