import type { Issue } from '../issue.ts';
import type { PathSegment } from './json-path.ts';
import { pathSegments, pathText } from './json-path.ts';
import { scanJson } from './json-scanner.ts';
import type { TextPosition } from './text-position.ts';
import { textPositions } from './text-position.ts';

/** Longest text that is read, in UTF-16 code units. */
export const maxJsonLength = 64 * 1024 * 1024;
/** Deepest nesting of objects and arrays that is read. */
export const maxJsonDepth = 64;
const maxIssues = 1000;

/** A parsed JSON text that still knows where everything stood. */
export interface LocatedJson {
  /** Undefined where the text is refused. */
  readonly value: unknown;
  readonly issues: readonly Issue[];
  /** Issues with the line and column of the value at their path, or of the nearest one around it; notes keep none. One scan of the text for all of them. */
  locate(issues: readonly Issue[]): Issue[];
}

/**
 * Reads a JSON text (RFC 8259; a byte-order mark is passed over).
 * Refused, each with line and column: what is not JSON, keys that occur twice in one object, the key `__proto__`,
 * nesting deeper than `maxJsonDepth`, texts longer than `maxJsonLength`.
 */
export function parseLocatedJson(text: string, file?: string): LocatedJson {
  const named = file === undefined ? {} : { file };
  if (text.length > maxJsonLength) {
    const issue: Issue = {
      ...named, code: 'file-too-large', severity: 'error', found: `${text.length} characters`, expected: `at most ${maxJsonLength}`,
      hint: 'Split the document, or keep only the readings that are judged.',
    };
    return { value: undefined, issues: [issue], locate: (issues) => [...issues] };
  }
  const position = textPositions(text);
  const sound = parseSound(text);
  if (sound !== undefined) return { value: sound.value, issues: [], locate: (found) => locate(text, found, named) };
  const issues = faultsOf(text, position).map((issue) => ({ ...named, ...issue }));
  const readable = !issues.some((issue) => issue.code !== 'duplicate-key' && issue.code !== 'forbidden-key');
  return {
    value: readable ? JSON.parse(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text) : undefined,
    issues,
    locate: (found) => locate(text, found, named),
  };
}

function locate(text: string, found: readonly Issue[], named: { readonly file?: string }): Issue[] {
  const placeless = (issue: Issue): boolean => issue.line === undefined && issue.severity !== 'note';
  const sought = found.filter(placeless).map((issue) => issue.path ?? '');
  if (sought.length === 0) return found.map((issue) => ({ ...named, ...issue }));
  const places = locatePaths(text, sought);
  const position = textPositions(text);
  return found.map((issue) => {
    const offset = placeless(issue) ? places.get(issue.path ?? '') : undefined;
    return offset === undefined ? { ...named, ...issue } : { ...named, ...issue, ...position(offset) };
  });
}

/**
 * The value of a text without any fault, found the fast way: by the engine's own parser, and as many keys in the value as there are in the
 * text, since a repeated key is lost in parsing. Undefined where anything is amiss, for the slow scan to say what.
 */
function parseSound(text: string): { readonly value: unknown } | undefined {
  let value: unknown;
  try {
    value = JSON.parse(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text);
  } catch {
    return undefined;
  }
  const keys = keysInValue(value, 0);
  return keys >= 0 && keys === keysInText(text) ? { value } : undefined;
}

/** Number of members of all objects in a value; -1 where one of them is forbidden or the nesting is too deep. */
function keysInValue(value: unknown, depth: number): number {
  if (typeof value !== 'object' || value === null) return 0;
  if (depth >= maxJsonDepth) return -1;
  let count = 0;
  if (Array.isArray(value)) {
    for (let index = 0; index < value.length; index += 1) {
      const item: unknown = value[index];
      const inside = typeof item === 'object' ? keysInValue(item, depth + 1) : 0;
      if (inside < 0) return -1;
      count += inside;
    }
    return count;
  }
  for (const key of Object.keys(value)) {
    if (key === '__proto__') return -1;
    const inside = keysInValue((value as Record<string, unknown>)[key], depth + 1);
    if (inside < 0) return -1;
    count += 1 + inside;
  }
  return count;
}

/** Number of string literals followed by a colon in a well-formed text. */
function keysInText(text: string): number {
  let count = 0;
  for (let start = text.indexOf('"'); start >= 0;) {
    let end = text.indexOf('"', start + 1);
    while (isEscaped(text, end)) end = text.indexOf('"', end + 1);
    let next = end + 1;
    while (text.charCodeAt(next) <= 0x20) next += 1;
    if (text.charCodeAt(next) === 0x3a) count += 1;
    start = text.indexOf('"', next);
  }
  return count;
}

/** Whether an odd number of backslashes stands before a place. */
function isEscaped(text: string, at: number): boolean {
  let before = at - 1;
  while (text.charCodeAt(before) === 0x5c) before -= 1;
  return (at - before) % 2 === 0;
}

function faultsOf(text: string, position: (offset: number) => TextPosition): Issue[] {
  const issues: Issue[] = [];
  const path: PathSegment[] = [];
  const keys: (string[] | undefined)[] = [];
  const sets: (Set<string> | undefined)[] = [];
  const report = (issue: Omit<Issue, 'severity'>, offset: number): void => {
    if (issues.length < maxIssues) issues.push({ severity: 'error', ...issue, ...position(offset) });
  };
  if (text.trim() === '') {
    return [{ code: 'empty-file', severity: 'error', found: 'an empty file', expected: 'a JSON document', line: 1, column: 1 }];
  }
  const fault = scanJson(text, {
    key(name, offset) {
      const depth = keys.length - 1;
      path[depth] = name;
      if (name === '__proto__') {
        report({
          code: 'forbidden-key', path: pathText(path), found: '"__proto__"', expected: 'another key', hint: 'Take this member out.',
        }, offset);
      }
      if (isRepeated(name, depth, keys, sets)) {
        report({
          code: 'duplicate-key', path: pathText(path),
          found: `the key ${JSON.stringify(name.slice(0, 100))} again`, expected: 'each key once in an object',
          hint: 'Keep one of the two.',
        }, offset);
      }
    },
    value() {
      const last = path.length - 1;
      const index = path[last];
      if (typeof index === 'number') path[last] = index + 1;
    },
    open(kind, offset) {
      if (keys.length >= maxJsonDepth) {
        report({
          code: 'too-deep', path: pathText(path),
          found: `more than ${maxJsonDepth} levels of brackets`, expected: `at most ${maxJsonDepth}`,
        }, offset);
        return false;
      }
      keys.push(kind === 'object' ? [] : undefined);
      sets.push(undefined);
      path.push(kind === 'object' ? '' : -1);
      return true;
    },
    close() {
      keys.pop();
      sets.pop();
      path.pop();
    },
  });
  if (fault !== undefined) {
    const { offset, ...what } = fault;
    report({ code: 'json-syntax', ...what }, offset);
  }
  return issues;
}

/** Few keys are compared one by one, many by a set: most objects have fewer than a dozen. */
function isRepeated(name: string, depth: number, keys: (string[] | undefined)[], sets: (Set<string> | undefined)[]): boolean {
  const seen = keys[depth];
  if (seen === undefined) return false;
  if (seen.length < 16) {
    if (seen.includes(name)) return true;
    seen.push(name);
    return false;
  }
  const set = sets[depth] ?? new Set(seen);
  sets[depth] = set;
  if (set.has(name)) return true;
  set.add(name);
  return false;
}

interface Wanted {
  readonly paths: string[];
  readonly children: Map<PathSegment, Wanted>;
}

/** Offsets of the values at the paths; a path that leads nowhere gets the offset of the innermost value on its way. */
export function locatePaths(text: string, paths: readonly string[]): Map<string, number> {
  const root: Wanted = { paths: [], children: new Map() };
  const found = new Map<string, number>();
  for (const path of paths) {
    let node = root;
    for (const segment of pathSegments(path)) {
      let child = node.children.get(segment);
      if (child === undefined) {
        child = { paths: [], children: new Map() };
        node.children.set(segment, child);
      }
      node = child;
    }
    node.paths.push(path);
  }
  const markAll = (node: Wanted, offset: number): void => {
    for (const path of node.paths) found.set(path, offset);
    for (const child of node.children.values()) markAll(child, offset);
  };
  const nodes: (Wanted | undefined)[] = [];
  const segments: PathSegment[] = [];
  let current: Wanted | undefined = root;
  scanJson(text, {
    key(name) {
      segments[segments.length - 1] = name;
    },
    value(offset) {
      const last = segments.length - 1;
      if (last >= 0) {
        const segment = segments[last];
        if (typeof segment === 'number') segments[last] = segment + 1;
        current = nodes[last]?.children.get(segments[last] ?? '');
      }
      if (current !== undefined) markAll(current, offset);
    },
    open(kind) {
      nodes.push(current);
      segments.push(kind === 'object' ? '' : -1);
      return true;
    },
    close() {
      nodes.pop();
      segments.pop();
    },
  });
  return found;
}
