import { describe, expect, it } from 'vitest';
import { restoreCabin } from '../../src/cabin/restore-cabin.ts';
import { parseCabin } from '../../src/cabin/parse-cabin.ts';
import { cabinIssueCodes } from '../../src/cabin/issue-codes.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { changeNode, withNode } from '../support/edit-json.ts';

const base = (): unknown => JSON.parse(JSON.stringify(smallCabin()));
const issuesAfter = (path: string, value: unknown) => restoreCabin(withNode(base(), path, value));

describe('restoreCabin', () => {
  it('takes a valid cabin as it is', () => {
    expect(restoreCabin(base())).toEqual({ value: smallCabin(), issues: [] });
  });

  it('copies: what it was given may change later without a trace', () => {
    const given = base() as { parts: { name: string }[] };
    const { value } = restoreCabin(given);
    if (given.parts[0] !== undefined) given.parts[0].name = 'other';
    expect(value?.parts[0]?.name).toBe('Dash upper');
  });

  it('fills in what a file may leave out', () => {
    const bare = { format: 'adjoin-cabin', version: 1, id: 'c', name: 'C', asOf: '2031-03-01', suppliers: [{ id: 's', name: 'S' }], zones: [{ id: 'z', name: 'Z' }], parts: [{ id: 'p', name: 'P', zone: 'z', sources: [{ id: 'a', supplier: 's', material: 'moulded' }] }] };
    expect(restoreCabin(bare)).toEqual({
      value: {
        ...bare, instruments: [], conditions: [], joints: [],
        parts: [{ ...bare.parts[0], sources: [{ id: 'a', supplier: 's', material: 'moulded', surface: 'solid', status: 'candidate', specimens: [] }] }],
      },
      issues: [],
    });
  });

  it('keeps an unknown field and names the known one it resembles', () => {
    const { value, issues } = issuesAfter('parts[0].visiblity', 0.5);
    expect(issues).toEqual([expect.objectContaining({ code: 'unknown-field', severity: 'warning', path: 'parts[0].visiblity' })]);
    expect(value?.parts[0]).toHaveProperty('visiblity', 0.5);
    const without = restoreCabin(withNode(withNode(base(), 'parts[0].visibility', undefined), 'parts[0].visiblity', 0.5));
    expect(without.issues[0]?.hint).toContain('"visibility"');
  });

  it('reads null as left out where a field may be left out, and says so', () => {
    const { value, issues } = issuesAfter('parts[0].revision', null);
    expect(issues).toEqual([expect.objectContaining({ code: 'null-field', severity: 'warning', path: 'parts[0].revision' })]);
    expect(value?.parts[0]).not.toHaveProperty('revision');
  });

  it('keeps the warnings of a cabin that it takes', () => {
    const cases: [string, unknown, string][] = [
      ['parts[0].outline', [[0, 0], [10, 10], [10, 0], [0, 10]], 'outline-crosses-itself'],
      ['parts[0].outline', [[0, 0], [10, 10], [20, 20]], 'outline-without-area'],
      ['parts[4].module', undefined, 'module-of-one'],
      ['parts[4].sources[0].supplier', 'ferrow', 'module-without-supplier'],
      ['conditions[0].geometry', undefined, 'no-geometry'],
      ['conditions[1].instrument', 'glossmeter-a', 'instrument-kind'],
      ['joints[1].visualRecords[0].light', 'booth lamp 3', 'light-not-listed'],
      ['joints[1].decisions[0].date', '2031-03-02', 'later-than-as-of'],
    ];
    for (const [path, value, code] of cases) {
      const outcome = issuesAfter(path, value);
      expect(outcome.issues.map((issue) => `${issue.severity} ${issue.code}`), path).toContain(`warning ${code}`);
      expect(outcome.value, path).toBeDefined();
    }
    expect(restoreCabin({ ...smallCabin(), parts: [], joints: [], runs: [] }).issues).toEqual([expect.objectContaining({ code: 'nothing-to-judge' })]);
  });

  it('takes a thread of two points and refuses a face of two', () => {
    const line = changeNode(base(), 'parts[5]', (part) => ({ ...(part as object), outline: [[0, 0], [9, 9]] }));
    expect(restoreCabin(line).issues[0]).toMatchObject({ code: 'outline-too-short' });
    expect(restoreCabin(withNode(line, 'parts[5].sources[0].material', 'thread')).issues).toEqual([]);
  });

  it('takes a light of the cabin for readings and decisions', () => {
    expect(issuesAfter('joints[1].decisions[0].light', 'cabin-ambient').issues).toEqual([]);
  });

  it('lists at most a thousand issues and counts the rest', () => {
    const parts = Array.from({ length: 2000 }, (_, index) => ({ id: `p${index}`, name: 'P', zone: 'nowhere', sources: [{ id: 'a', supplier: 'quill', material: 'moulded' }] }));
    const { value, issues } = restoreCabin({ ...smallCabin(), parts, joints: [], runs: [] });
    expect(value).toBeUndefined();
    expect(issues).toHaveLength(1001);
    expect(issues.at(-1)).toMatchObject({ code: 'more-issues', severity: 'note', found: '1000 more issues, 1000 of them errors' });
  });

  it('refuses shared covariances that contradict each other or name their own instrument', () => {
    const shared = [0.001, 0, 0, 0, 0.001, 0, 0, 0, 0.001];
    expect(issuesAfter('instruments[1].agreement.shared', { 'spectro-a': shared }).issues).toEqual([
      expect.objectContaining({ code: 'shared-unequal', path: 'instruments[0].agreement.shared["spectro-b"]' }),
    ]);
    expect(issuesAfter('instruments[1].agreement.shared', { 'spectro-b': shared }).issues).toContainEqual(
      expect.objectContaining({ code: 'shared-with-itself', path: 'instruments[1].agreement.shared["spectro-b"]' }),
    );
  });

  it('refuses a master given as a difference to itself, and a ring of two masters', () => {
    const difference = { quantity: 'difference', spot: { name: 's' }, conditions: 'colour-a', difference: [0, 0, 0], light: 'D65', observer: 10, master: 'm-slate' };
    expect(issuesAfter('masters[0].readings[0]', difference).issues).toEqual([expect.objectContaining({ code: 'difference-to-itself', path: 'masters[0].readings[0].master' })]);
    expect(issuesAfter('masters[0].parentMaster', 'm-cloth').issues.map(({ code, path }) => `${code} ${path ?? ''}`)).toEqual(['master-cycle masters[0].parentMaster', 'master-cycle masters[1].parentMaster']);
  });

  it('says of a newer version only that', () => {
    expect(restoreCabin({ format: 'adjoin-cabin', version: 2, all: 'else' }).issues).toEqual([expect.objectContaining({ code: 'newer-version', path: 'version' })]);
  });

  it.each([[undefined], [null], [4], ['cabin'], [[]], [new Date(0)], [new Map()], [() => 1], [Symbol('s')], [10n]])('refuses %s', (value) => {
    expect(restoreCabin(value)).toMatchObject({ value: undefined, issues: [{ code: 'wrong-type', severity: 'error' }] });
  });

  it('refuses what JSON cannot hold inside a member that it does not know', () => {
    const ring: Record<string, unknown> = {};
    ring['self'] = ring;
    expect(restoreCabin({ ...smallCabin(), extra: ring }).issues.map((issue) => issue.code)).toContain('too-deep');
    expect(restoreCabin({ ...smallCabin(), extra: [Number.NaN] }).issues).toContainEqual(expect.objectContaining({ code: 'not-finite', path: 'extra[0]' }));
    expect(restoreCabin({ ...smallCabin(), extra: 1n }).issues).toContainEqual(expect.objectContaining({ code: 'wrong-type', path: 'extra' }));
  });

  it('keeps a rule book that the document carries', () => {
    const ruleBook = { id: 'own', rules: [{ limit: '0.8 * 2' }] };
    expect(restoreCabin({ ...smallCabin(), ruleBook }).value?.ruleBook).toEqual(ruleBook);
  });
});

describe('issue codes', () => {
  it('are kebab-case words with a meaning in one line', () => {
    for (const [code, meaning] of Object.entries(cabinIssueCodes)) {
      expect(code).toMatch(/^[a-z\d]+(-[a-z\d]+)*$/u);
      expect(meaning).toMatch(/^[A-Z].*\.$/u);
    }
  });
});

describe('parseCabin', () => {
  it('gives file, line and column with the path', () => {
    const text = '{\n"format": "adjoin-cabin", "version": 1, "id": "c", "name": "C", "asOf": "2031-02-30",\n"parts": [\n  {"id": "p"}\n]}';
    const { value, issues } = parseCabin(text, 'c.json');
    expect(value).toBeUndefined();
    // Places counted by hand; a field that is missing stands at the object that misses it.
    expect(issues).toEqual([
      expect.objectContaining({ code: 'bad-date', path: 'asOf', file: 'c.json', line: 2, column: 73 }),
      expect.objectContaining({ code: 'missing-field', path: 'parts[0].name', line: 4, column: 3 }),
      expect.objectContaining({ code: 'missing-field', path: 'parts[0].zone', line: 4, column: 3 }),
      expect.objectContaining({ code: 'missing-field', path: 'parts[0].sources', line: 4, column: 3 }),
    ]);
  });
});
