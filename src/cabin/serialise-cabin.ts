import type { Cabin } from './cabin.ts';
import { cabinShape } from './shapes/cabin-shape.ts';

/** Longest list or object of scalars that stands on one line; lists of numbers always do. */
const lineLength = 120;

/**
 * The text of a cabin file: keys in the order of the document's shape whatever order they came in, two blanks a level,
 * lists of numbers on one line, a line break at the end. Numbers keep every digit of a double.
 */
export function serialiseCabin(cabin: Cabin): string {
  return `${pretty(cabinShape.arrange(cabin), '')}\n`;
}

function pretty(value: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) return scalar(value);
  const isList = Array.isArray(value);
  const entries = isList ? value.map((item): [string, unknown] => ['', item]) : Object.entries(value).filter(([, member]) => member !== undefined);
  const [open, close] = isList ? ['[', ']'] : ['{', '}'];
  if (entries.length === 0) return open + close;
  const flat = isNumeric(value) || entries.every(([, member]) => typeof member !== 'object' || member === null || isNumeric(member));
  if (flat) {
    const line = open + entries.map(([key, member]) => (isList ? '' : `${JSON.stringify(key)}: `) + oneLine(member)).join(', ') + close;
    if (isNumeric(value) || line.length <= lineLength) return line;
  }
  const inner = `${indent}  `;
  const members = entries.map(([key, member]) => inner + (isList ? '' : `${JSON.stringify(key)}: `) + pretty(member, inner));
  return `${open}\n${members.join(',\n')}\n${indent}${close}`;
}

const isNumeric = (value: unknown): boolean => Array.isArray(value) && value.every((item) => typeof item === 'number');

const oneLine = (value: unknown): string => (Array.isArray(value) ? `[${value.map(scalar).join(', ')}]` : scalar(value));

// JSON.stringify gives undefined for what JSON does not have; minus zero loses its sign there, and keeps it here.
const scalar = (value: unknown): string => (Object.is(value, -0) ? '-0' : JSON.stringify(value) ?? 'null');
