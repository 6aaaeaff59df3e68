import type { SurfaceFaults } from './surface-faults.ts';
import { asciiText, numberOf } from './surface-numbers.ts';
import type { SdfHeader } from './surface-sdf.ts';

const fields = {
  numpoints: 'NumPoints', numprofiles: 'NumProfiles', xscale: 'Xscale', yscale: 'Yscale', zscale: 'Zscale',
  compression: 'Compression', datatype: 'DataType', checktype: 'CheckType',
} as const;
type Field = keyof typeof fields;
/** Fields that say nothing of the heights. */
const passed: ReadonlySet<string> = new Set(['manufacid', 'createdate', 'moddate', 'zresolution']);
const required: readonly Field[] = ['numpoints', 'numprofiles', 'xscale', 'yscale', 'zscale'];
const longestHeader = 64 * 1024;
const encoder = (text: string): Uint8Array => Uint8Array.from(text, (character) => character.charCodeAt(0));

export interface SdfHeaderPlace {
  readonly header: SdfHeader | undefined;
  /** Where the data begin, and the line they begin in. */
  readonly dataAt: number;
  readonly line: number;
}

/** The `name = value` lines of an ASCII surface data file up to the line of an asterisk. Types and checks that are not named are 0. */
export function readSdfHeader(bytes: Uint8Array, faults: SurfaceFaults): SdfHeaderPlace {
  const text = asciiText(bytes, 0, Math.min(bytes.length, longestHeader));
  const found = new Map<string, number>();
  let line = 1;
  let at = endOfLine(text, 0);
  for (;;) {
    if (at >= text.length) {
      faults.add('missing-data', { path: 'header', line, found: 'no asterisk behind the header', expected: 'a line with * before the data', hint: 'The file may have been cut short.' });
      return { header: undefined, dataAt: bytes.length, line };
    }
    const end = endOfLine(text, at);
    line += 1;
    const own = text.slice(at, end).trim();
    at = end;
    if (own === '*') break;
    if (own !== '') readField(own, line, found, faults);
  }
  for (const field of required) {
    if (!found.has(field)) faults.add('missing-field', { path: 'header', line: 1, found: `no ${fields[field]}`, expected: `${fields[field]} = a number` });
  }
  const value = (field: Field): number => found.get(field) ?? 0;
  const header: SdfHeader = {
    points: value('numpoints'), profiles: value('numprofiles'), xScale: value('xscale'), yScale: value('yscale'), zScale: value('zscale'),
    compression: value('compression'), dataType: value('datatype'), checkType: value('checktype'),
  };
  return { header: faults.errors() === 0 ? header : undefined, dataAt: at, line: line + 1 };
}

function readField(own: string, line: number, found: Map<string, number>, faults: SurfaceFaults): void {
  const [name = '', ...rest] = own.split('=');
  const key = name.trim().toLowerCase();
  const value = rest.join('=').trim();
  if (passed.has(key)) return;
  if (!Object.hasOwn(fields, key)) {
    faults.add('unknown-field', { severity: 'warning', line, column: 1, found: JSON.stringify(own.slice(0, 60)), expected: 'a field of ISO 25178-71' });
    return;
  }
  if (found.has(key)) faults.add('duplicate-field', { line, column: 1, found: JSON.stringify(own.slice(0, 60)), expected: 'each field once' });
  const bytes = encoder(value);
  const number = numberOf(bytes, 0, bytes.length);
  if (Number.isNaN(number)) faults.add('not-a-number', { line, column: 1, found: JSON.stringify(own.slice(0, 60)), expected: `${fields[key as Field]} = a number` });
  found.set(key, number);
}

function endOfLine(text: string, from: number): number {
  for (let at = from; at < text.length; at += 1) {
    if (text[at] === '\n') return at + 1;
    if (text[at] === '\r') return text[at + 1] === '\n' ? at + 2 : at + 1;
  }
  return text.length;
}
