import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseLocatedJson } from '../../src/cabin/located-json.ts';
import { pathText } from '../../src/cabin/json-path.ts';
import { parseCabin } from '../../src/cabin/parse-cabin.ts';
import { restoreCabin } from '../../src/cabin/restore-cabin.ts';
import { serialiseCabin } from '../../src/cabin/serialise-cabin.ts';
import { jointPath } from '../../src/cabin/joint-path.ts';
import { partGraph } from '../../src/cabin/part-graph.ts';
import { standingOf } from '../../src/cabin/standing.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { faultyBase } from '../cabin/faulty/base.ts';

type Container = Record<string | number, unknown>;

/** Every object and list of a value, itself first. */
function containers(value: unknown): Container[] {
  if (typeof value !== 'object' || value === null) return [];
  return [value as Container, ...Object.values(value).flatMap(containers)];
}

const base = JSON.stringify(faultyBase());
const count = containers(JSON.parse(base)).length;

const hostile = fc.oneof(
  fc.constantFrom<unknown>(null, undefined, Number.NaN, Infinity, -Infinity, -0, 1e308, -1, 0.5, 1e-320, '', ' ', 'x', '__proto__', 'constructor', '\0', '\ud800', '2031-02-30', [], {}, [[]], true, 'dash-lower', 'door-left'),
  fc.constantFrom<() => unknown>(() => 1n, () => Symbol('s'), () => () => 1, () => new Date(Number.NaN), () => new Map(), () => Object.assign([], { length: 100_000 }), () => new Float64Array(3), () => JSON.parse('{"__proto__": {"id": 1}}') as unknown).map((make) => make()),
  fc.double(), fc.string({ unit: 'binary' }), fc.jsonValue(),
  fc.constant('y'.repeat(20_000)),
);

/** Replaces, takes out, doubles or renames nodes picked at random all over the document. */
const mutation = fc.record({
  container: fc.nat(count - 1), member: fc.nat(1000),
  kind: fc.constantFrom('replace', 'delete', 'double', 'rename', 'swap'), value: hostile,
});
type Mutation = typeof mutation extends fc.Arbitrary<infer T> ? T : never;

function apply(root: unknown, { container, member, kind, value }: Mutation): void {
  const all = containers(root);
  const target = all[container % all.length];
  if (target === undefined) return;
  const keys = Object.keys(target);
  const key = keys[member % Math.max(1, keys.length)] ?? 'new';
  if (kind === 'replace') target[key] = value;
  else if (kind === 'delete') delete target[key];
  else if (kind === 'rename') target[`${key}x`] = target[key];
  else if (kind === 'swap') {
    const other = keys[(member + 1) % Math.max(1, keys.length)] ?? key;
    [target[key], target[other]] = [target[other], target[key]];
  } else if (Array.isArray(target)) target.push(target[Number(key)]);
  else target[key] = [target[key], target[key]];
}

/** Whether every number is finite; the walk ends because restored values are trees. */
const isFiniteThroughout = (value: unknown): boolean =>
  (typeof value === 'number' ? Number.isFinite(value) : typeof value !== 'object' || value === null || Object.values(value).every(isFiniteThroughout));

const sound = (cabin: Cabin): void => {
  expect(isFiniteThroughout(cabin)).toBe(true);
  // What took the door must carry the rest.
  const graph = partGraph(cabin);
  graph.zoneSets(() => true);
  for (const part of cabin.parts) standingOf(cabin, part, cabin.stage ?? 'new');
  for (const joint of cabin.joints) expect(isFiniteThroughout(jointPath(cabin, joint))).toBe(true);
};

describe('a cabin with random changes', () => {
  it('is restored whole or refused with an error, never with numbers that are not finite', () => {
    let taken = 0;
    let refused = 0;
    fc.assert(fc.property(fc.array(mutation, { minLength: 1, maxLength: 6 }), (mutations) => {
      const root: unknown = JSON.parse(base);
      for (const change of mutations) apply(root, change);
      const { value, issues } = restoreCabin(root);
      expect(value === undefined).toBe(issues.some((issue) => issue.severity === 'error'));
      if (value === undefined) refused += 1;
      else {
        taken += 1;
        sound(value);
        const again = parseCabin(serialiseCabin(value));
        expect(JSON.stringify(again.value)).toBe(JSON.stringify(value));
      }
    }), { numRuns: 500, seed: 20310301 });
    // Both ways out are really taken.
    expect(taken).toBeGreaterThan(10);
    expect(refused).toBeGreaterThan(150);
    expect(({} as { id?: unknown }).id).toBeUndefined();
  }, 60_000);

  it('is read as text with the same outcome, and every fault has its line', () => {
    const edit = fc.record({ at: fc.nat(base.length - 1), remove: fc.nat(6), insert: fc.constantFrom('', '"', '{', '}', '[', ']', ',', ':', '0', '-', '.', 'e9', '1e999', 'null', '\\', '\n', '\0', 'é') });
    fc.assert(fc.property(fc.array(edit, { minLength: 1, maxLength: 3 }), (edits) => {
      const text = edits.reduce((old, { at, remove, insert }) => old.slice(0, at) + insert + old.slice(at + remove), base);
      const { value, issues } = parseCabin(text, 'c.json');
      expect(value === undefined).toBe(issues.some((issue) => issue.severity === 'error'));
      for (const issue of issues) if (issue.severity !== 'note') expect(issue.line).toBeGreaterThanOrEqual(1);
      if (value !== undefined) sound(value);
    }), { numRuns: 1000, seed: 20310302 });
  }, 60_000);
});

/** The scanner has no recursion, the oracle has. */
describe('parseLocatedJson', () => {
  it('takes exactly what JSON.parse takes, key and depth rules aside', () => {
    const snippet = fc.constantFrom('{', '}', '[', ']', ',', ':', '"', '"a"', '"b\\n"', '\\', '1', '-', '-0', '1.5', '1e5', '.', '01', 'true', 'nul', 'null', ' ', '\n', '\t', '\u00a0', '\u0001', '{"a":1}', '[1,2]', '\\u12', '"\\u1234"');
    const nearly = fc.jsonValue().chain((value) => {
      const text = JSON.stringify(value);
      return fc.tuple(fc.nat(text.length), fc.nat(2), fc.oneof(fc.constant(''), snippet)).map(([at, remove, insert]) => text.slice(0, at) + insert + text.slice(at + remove));
    });
    let good = 0;
    fc.assert(fc.property(fc.oneof(fc.array(snippet, { maxLength: 9 }).map((all) => all.join('')), nearly, fc.json()), (text) => {
      let parsed: { value: unknown } | undefined;
      try {
        parsed = { value: JSON.parse(text) as unknown };
      } catch {
        parsed = undefined;
      }
      const { value, issues } = parseLocatedJson(text);
      const own = issues.filter(({ code }) => code === 'json-syntax' || code === 'empty-file');
      expect(own.length === 0, text).toBe(parsed !== undefined);
      if (parsed !== undefined) {
        good += 1;
        expect(value).toEqual(parsed.value);
      }
    }), { numRuns: 5000, seed: 20310303 });
    expect(good).toBeGreaterThan(1000);
  }, 60_000);

  it('places every path where its value stands in the text', () => {
    const key = fc.string({ unit: 'grapheme', maxLength: 6 }).filter((text) => text !== '__proto__');
    const tree = fc.letrec<{ value: unknown }>((tie) => ({
      value: fc.oneof({ maxDepth: 4 }, fc.integer(), fc.string({ maxLength: 5 }), fc.boolean(), fc.constant(null), fc.array(tie('value'), { maxLength: 4 }), fc.dictionary(key, tie('value'), { maxKeys: 4 })),
    })).value;
    fc.assert(fc.property(tree, fc.constantFrom(0, 1, 2, '\t'), fc.constantFrom('\n', '\r\n', '\r'), (value, indent, lineBreak) => {
      const text = JSON.stringify(value, null, indent).replaceAll('\n', lineBreak);
      const paths: { path: string; node: unknown }[] = [];
      const walk = (node: unknown, segments: (string | number)[]): void => {
        paths.push({ path: pathText(segments), node });
        if (Array.isArray(node)) node.forEach((item, index) => walk(item, [...segments, index]));
        else if (typeof node === 'object' && node !== null) for (const [name, item] of Object.entries(node)) walk(item, [...segments, name]);
      };
      walk(value, []);
      const lines = text.split(lineBreak);
      const placed = parseLocatedJson(text).locate(paths.map(({ path }) => ({ code: 'x', severity: 'error', path })));
      placed.forEach(({ line = 0, column = 0 }, index) => {
        // Independent of the scanner: from that place on, the text begins with the value as JSON.stringify writes it.
        const rest = [(lines[line - 1] ?? '').slice(column - 1), ...lines.slice(line)].join('\n');
        const written = JSON.stringify(paths[index]?.node);
        expect(rest.replaceAll(/\s/gu, '').startsWith(written.replaceAll(/\s/gu, ''))).toBe(true);
      });
    }), { numRuns: 500, seed: 20310304 });
  }, 60_000);
});
