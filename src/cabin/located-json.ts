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
  const issues = faultsOf(text, position).map((issue) => ({ ...named, ...issue }));
  const readable = !issues.some((issue) => issue.code !== 'duplicate-key' && issue.code !== 'forbidden-key');
  return {
    value: readable ? JSON.parse(text.charCodeAt(0) === 0xfeff ? text.slice(1) : text) : undefined,
    issues,
    locate: (found) => {
      const placeless = (issue: Issue): boolean => issue.line === undefined && issue.severity !== 'note';
      const places = locatePaths(text, found.filter(placeless).map((issue) => issue.path ?? ''));
      return found.map((issue) => {
        const offset = placeless(issue) ? places.get(issue.path ?? '') : undefined;
        return offset === undefined ? { ...named, ...issue } : { ...named, ...issue, ...position(offset) };
      });
    },
  };
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
