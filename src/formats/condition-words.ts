import { isCalendarDate } from '../cabin/schema/date.ts';
import { lightNames } from '../colour/lights.ts';
import type { SpecimenKind } from '../cabin/cabin.ts';
import { specimenKinds } from '../cabin/cabin.ts';
import type { ObserverDegrees, UvState } from '../readings/reading.ts';
import { geometries } from '../readings/reading.ts';
import type { FoundGeometry } from './reading-set.ts';

/** Words as they are compared: small letters, without blanks, hyphens and signs of degree. */
const plainWord = (text: string): string => text.normalize('NFKC').toLowerCase().replaceAll(/[\s_°*"'-]|deg(?:rees?)?/gu, '');

const arrangements = { annular: 'a', circumferential: 'c', directional: 'x', uniplanar: 'x', a: 'a', c: 'c', x: 'x' } as const;
const speculars = { i: 'i', sci: 'i', specularincluded: 'i', e: 'e', sce: 'e', specularexcluded: 'e' } as const;

/** Every spelling with a colon or a stroke, the arrangement or specular part behind it or within it. */
const geometryWords: ReadonlyMap<string, FoundGeometry> = new Map([
  ...[':', '/'].flatMap((sign): [string, FoundGeometry][] => [
    [`45${sign}0`, '45:0'], [`0${sign}45`, '0:45'], [`d${sign}8`, 'd:8'], [`8${sign}d`, '8:d'], [`diffuse${sign}8`, 'd:8'], [`8${sign}diffuse`, '8:d'],
    ...Object.entries(arrangements).flatMap(([word, letter]): [string, FoundGeometry][] => [
      [`45${word}${sign}0`, `45${letter}:0`], [`45${sign}0${word}`, `45${letter}:0`], [`0${sign}45${word}`, `0:45${letter}`],
    ]),
    ...Object.entries(speculars).flatMap(([word, letter]): [string, FoundGeometry][] => [[`d${sign}8${word}`, `d${letter}:8`], [`d${letter}${sign}8`, `d${letter}:8`], [`8${sign}d${letter}`, `8:d${letter}`]]),
  ]),
  ['sci', 'di:8'], ['sce', 'de:8'], ['multiangle', 'multi-angle'], ['goniometric', 'multi-angle'],
]);

/** A geometry by the notation of CIE 15 or the older one with a stroke; undefined where the words say none. `unknown` is an answer too. */
export function readGeometry(text: string): FoundGeometry | undefined {
  const exact = geometries.find((name) => name === text.trim().toLowerCase());
  if (exact !== undefined) return exact;
  const word = plainWord(text).replaceAll(/[(),;]/gu, '');
  return geometryWords.get(word);
}

const specularWords: Readonly<Record<string, 'included' | 'excluded'>> = {
  included: 'included', include: 'included', in: 'included', sci: 'included', i: 'included', yes: 'included', specularincluded: 'included',
  excluded: 'excluded', exclude: 'excluded', ex: 'excluded', sce: 'excluded', e: 'excluded', no: 'excluded', specularexcluded: 'excluded',
};

/** Whether the specular part was included. */
export function readSpecular(text: string): 'included' | 'excluded' | undefined {
  const word = plainWord(text);
  return Object.hasOwn(specularWords, word) ? specularWords[word] : undefined;
}

/** A sphere geometry completed by its specular mode; another geometry stays as it is. Undefined where the two contradict. */
export function withSpecular(geometry: FoundGeometry | undefined, specular: 'included' | 'excluded' | undefined): FoundGeometry | undefined {
  if (specular === undefined || geometry === undefined) return geometry;
  const letter = specular === 'included' ? 'i' : 'e';
  switch (geometry) {
    case 'd:8': case 'di:8': case 'de:8': return geometry === 'd:8' || geometry[1] === letter ? (letter === 'i' ? 'di:8' : 'de:8') : undefined;
    case '8:d': case '8:di': case '8:de': return geometry === '8:d' || geometry[3] === letter ? (letter === 'i' ? '8:di' : '8:de') : undefined;
    default: return geometry;
  }
}

const uvWords: Readonly<Record<string, UvState>> = {
  included: 'included', include: 'included', in: 'included', full: 'included', yes: 'included', on: 'included', '100%': 'included', uvincluded: 'included',
  excluded: 'excluded', exclude: 'excluded', cut: 'excluded', no: 'excluded', off: 'excluded', '0%': 'excluded', uvexcluded: 'excluded', uvcut: 'excluded', '400nm': 'excluded', '420nm': 'excluded', '400nmcut': 'excluded', '420nmcut': 'excluded',
  adjusted: 'adjusted', calibrated: 'adjusted', uvadjusted: 'adjusted', uvcalibrated: 'adjusted',
  unknown: 'unknown',
};

export function readUv(text: string): UvState | undefined {
  const word = plainWord(text);
  return Object.hasOwn(uvWords, word) ? uvWords[word] : undefined;
}

const observerWords: Readonly<Record<string, ObserverDegrees>> = {
  2: 2, 10: 10, '2observer': 2, '10observer': 10, cie1931: 2, cie1964: 10, 1931: 2, 1964: 10, '2cie1931': 2, '10cie1964': 10,
};

export function readObserver(text: string): ObserverDegrees | undefined {
  const word = plainWord(text).replaceAll(/[(),;]/gu, '');
  return Object.hasOwn(observerWords, word) ? observerWords[word] : undefined;
}

const lightsByWord = new Map(lightNames.map((name) => [plainWord(name), name]));

/**
 * A light by the name of CIE 015:2018, case and hyphens set aside; the older `F2`, `F7`, `F11` stand for FL2, FL7, FL11.
 * An observer may follow: `D65/10`, `A (2 degree)`.
 */
export function readLight(text: string): { readonly light?: string; readonly observer?: ObserverDegrees } {
  const stated = text.slice(0, 100).trim().replace(/^(?:cie|illuminant|light)\s+/iu, '');
  const pieces = stated.split(/[/,;|(){}[\]]/u).map((piece) => piece.trim()).filter((piece) => piece !== '');
  const [first = '', ...rest] = pieces.length > 1 ? pieces : stated.split(/\s+/u);
  const word = plainWord(first);
  const light = lightsByWord.get(word) ?? lightsByWord.get(word.replace(/^f(?=[\d.]+$)/u, 'fl'));
  if (light === undefined) return {};
  const observer = rest.length === 0 ? undefined : readObserver(rest.join(' '));
  return rest.length > 0 && observer === undefined ? {} : { light, ...(observer === undefined ? {} : { observer }) };
}

const kindWords: Readonly<Record<string, SpecimenKind>> = {
  standard: 'master', target: 'master', reference: 'master', masterplaque: 'master', plate: 'plaque', panel: 'plaque', chip: 'plaque',
  toolpart: 'tool part', offtool: 'tool part', seriespart: 'series part', series: 'series part', production: 'series part', productionpart: 'series part',
  boundarysample: 'boundary sample', limitsample: 'boundary sample', boundary: 'boundary sample',
};

export function readKind(text: string): SpecimenKind | undefined {
  const word = plainWord(text);
  return specimenKinds.find((kind) => plainWord(kind) === word) ?? (Object.hasOwn(kindWords, word) ? kindWords[word] : undefined);
}

const dateAndTime = /^(\d{4}-\d{2}-\d{2})(?:[T ]((?:[01]\d|2[0-3]):[0-5]\d(?::[0-5]\d(?:\.\d{1,9})?)?(?:Z|[+-](?:0\d|1[0-4]):[0-5]\d)?))?$/u;

/** A day or a time of ISO 8601-1 in the document's form; other orders of day, month and year are not guessed. */
export function readDateTime(text: string): string | undefined {
  const match = dateAndTime.exec(text.trim());
  const [, day = '', time] = match ?? [];
  if (!isCalendarDate(day)) return undefined;
  return time === undefined ? day : `${day}T${time}`;
}
