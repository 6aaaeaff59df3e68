import type { Issue } from '../../src/issue.ts';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { builtInRuleBooks } from '../../src/rules/index.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { parsed, run } from './memory-io.ts';

interface CheckJson {
  readonly summary: Record<string, number>;
  readonly joints: readonly { id: string; verdict: string; accepted: boolean; limitUse: number | null; sentence: string; checks: Record<string, unknown>[]; judgedOn: Record<string, unknown>[] }[];
  readonly parts: readonly { id: string; checks: unknown[] }[];
  readonly runs: readonly Record<string, unknown>[];
}

const demo = { 'shuttle.cabin.json': readFileSync(join(import.meta.dirname, '..', '..', 'demo-data', 'shuttle-slate.cabin.json')) };
const small = { 'small.cabin.json': serialiseCabin(smallCabin({ ruleBook: 'ciede2000' })) };

describe('check --json', () => {
  let json: CheckJson;
  let exit: number;
  beforeAll(async () => {
    const result = await run(['check', 'shuttle.cabin.json', '--json'], demo);
    exit = result.exit;
    json = parsed<CheckJson>(result);
  });

  test('has the promised fields', () => {
    expect(Object.keys(json)).toEqual(expect.arrayContaining(['cabin', 'stage', 'asOf', 'decisionRule', 'summary', 'joints', 'parts', 'runs', 'requests', 'issues']));
    expect(Object.keys(json.summary)).toEqual(expect.arrayContaining(['holds', 'open', 'clashes', 'accepted', 'expectedWrongHolds', 'coverage']));
    for (const joint of json.joints) {
      expect(Object.keys(joint)).toEqual(expect.arrayContaining(['id', 'parts', 'kind', 'intent', 'rule', 'verdict', 'limitUse', 'totalProbability', 'coverage', 'sentence', 'judgedOn', 'checks', 'simple']));
      for (const side of joint.judgedOn) expect(Object.keys(side)).toEqual(expect.arrayContaining(['part', 'source', 'specimen', 'spots', 'instrument', 'geometry']));
      for (const check of joint.checks) {
        expect(Object.keys(check)).toEqual(expect.arrayContaining(['check', 'standing', 'verdict', 'value', 'limit', 'limitUse', 'uncertainty', 'withinProbability', 'sentence', 'lights']));
        expect(['holds', 'open', 'clashes', 'not applicable', 'no data']).toContain(check.verdict);
        expect(['required', 'if-measured', 'advisory']).toContain(check.standing);
      }
    }
    for (const runResult of json.runs) expect(Object.keys(runResult)).toEqual(expect.arrayContaining(['parts', 'value', 'limit', 'verdict', 'sentence']));
  });

  test('joints and parts stand in the order of the document', () => {
    const cabin = JSON.parse(new TextDecoder().decode(demo['shuttle.cabin.json'])) as { joints: { id: string }[]; parts: { id: string }[] };
    expect(json.joints.map(({ id }) => id)).toEqual(cabin.joints.map(({ id }) => id));
    expect(json.parts.map(({ id }) => id)).toEqual(cabin.parts.map(({ id }) => id));
  });

  test('the counts are those of the joints, and unaccepted clashes decide the exit code', () => {
    const count = (verdict: string, accepted?: boolean): number => json.joints.filter((joint) => joint.verdict === verdict && (accepted === undefined || joint.accepted === accepted)).length;
    expect(json.summary).toMatchObject({ holds: count('holds'), open: count('open'), clashes: count('clashes', false), accepted: count('clashes', true) });
    expect(exit).toBe(json.summary.clashes > 0 ? 1 : 0);
    expect(json.summary.clashes).toBeGreaterThan(0);
    expect(json.summary.accepted).toBeGreaterThan(0);
  });

  test('printed for a person: worst first, each with its sentence, then the counts', async () => {
    const { stdout, stderr } = await run(['check', 'shuttle.cabin.json'], demo);
    const flat = stdout.replace(/\s+/g, ' ');
    for (const joint of json.joints) expect(flat, joint.id).toContain(joint.sentence.replace(/\s+/g, ' '));
    // What it was judged on, the probability of all checks and the coverage stand beside every verdict.
    expect([...flat.matchAll(/Judged on [^.]+, lot [^.]+; [^.]+\./g)].length).toBeGreaterThanOrEqual(json.joints.length - 12);
    expect(flat).toContain('Judged on Upper dash skin: ');
    expect(flat).toMatch(/borrowed from Switch panel, left/);
    const judged = json.joints.filter(({ checks }) => checks.some(({ verdict, check }) => verdict !== 'not applicable' && check !== 'conditions'));
    expect([...flat.matchAll(/All checks together: (?:[<>] )?\d+ % within; \d of \d with data\./g)]).toHaveLength(judged.length);
    const verdicts = [...stdout.matchAll(/^(clashes, accepted|clashes|open|holds) /gm)].map((match) => match[1]).slice(0, json.joints.length);
    const rank = ['clashes', 'clashes, accepted', 'open', 'holds'];
    expect(verdicts).toEqual([...verdicts].sort((first, second) => rank.indexOf(first) - rank.indexOf(second)));
    expect(flat).toContain(`${json.summary.clashes} joints clash (${json.summary.accepted} more accepted), ${json.summary.open} are open, ${json.summary.holds} hold.`);
    expect(stdout).not.toContain('\u001b');
    expect(stderr).toBe('');
  });

  test('colour only where the terminal has it', async () => {
    const { stdout } = await run(['check', 'shuttle.cabin.json'], demo, { colour: true, columns: 100 });
    expect(stdout).toContain('\u001b[1;31mclashes');
  });
});

describe('options', () => {
  const summary = async (words: readonly string[], files: Record<string, string | Uint8Array> = small) => {
    const result = await run(['check', 'small.cabin.json', '--json', ...words], files);
    return { exit: result.exit, ...parsed<{ summary: { clashes: number; open: number }; ruleBook: string; asOf: string; stage: string; issues: Issue[] }>(result) };
  };

  test('--rules takes a built-in id or a file', async () => {
    for (const book of builtInRuleBooks) expect((await summary(['--rules', book.id])).ruleBook).toContain(book.id);
    const own = JSON.stringify({ ...builtInRuleBooks[0], id: 'ours', name: 'Ours' });
    expect((await summary(['--rules', 'ours.json'], { ...small, 'ours.json': own })).ruleBook).toMatch(/ours/i);
  });

  test('a rule book that is neither is refused, and a faulty one with its place', async () => {
    expect(await summary(['--rules', 'ciede200'])).toMatchObject({ exit: 2, issues: [{ code: 'unknown-rule-book', path: '--rules' }] });
    const faulty = await summary(['--rules', 'ours.json'], { ...small, 'ours.json': '{"format":"adjoin-rules"}' });
    expect(faulty.exit).toBe(2);
    expect(faulty.issues.length).toBeGreaterThan(1);
  });

  test('--as-of must be a day; it sets the day of the judgement', async () => {
    expect((await summary(['--as-of', '2031-05-04'])).asOf).toBe('2031-05-04');
    for (const date of ['2031-02-30', '31-01-01', 'today']) expect(await summary(['--as-of', date])).toMatchObject({ exit: 2, issues: [{ code: 'bad-date', found: date }] });
  });

  test('--stage must be one that a specimen has', async () => {
    expect((await summary(['--stage', 'light-exposed'])).stage).toBe('light-exposed');
    expect(await summary(['--stage', 'light-exposd'])).toMatchObject({ exit: 2, issues: [{ code: 'unknown-stage', hint: 'Did you mean light-exposed?' }] });
  });

  // An open joint alone: two parts of one cabin without readings in common.
  test('--strict answers 1 where something is open and nothing clashes', async () => {
    const base = smallCabin({ ruleBook: 'ciede2000' });
    const bare = serialiseCabin({ ...base, runs: [], joints: [{ id: 'only', parts: ['dash-lower', 'dash-upper'], kind: 'edge' }], parts: base.parts.map((part) => (part.id === 'dash-upper' ? { ...part, sources: part.sources.map((source) => ({ ...source, specimens: source.specimens.map((specimen) => ({ ...specimen, readings: [] })) })) } : part)) });
    const plain = await summary([], { 'small.cabin.json': bare });
    expect(plain).toMatchObject({ exit: 0, summary: { clashes: 0, open: 1 } });
    expect((await summary(['--strict'], { 'small.cabin.json': bare })).exit).toBe(1);
  });

  test('reads the cabin from the standard input, but not both files', async () => {
    const result = await run(['check', '-', '--json'], { '-': small['small.cabin.json'] });
    expect([0, 1]).toContain(result.exit);
    expect((await run(['check', '-', '--rules', '-', '--json'], { '-': small['small.cabin.json'] })).exit).toBe(2);
  });
});

describe('report', () => {
  test.each(['html', 'json', 'csv'])('writes .%s, the same bytes every time, whatever the verdicts', async (ending) => {
    const [first, second] = await Promise.all([1, 2].map(() => run(['report', 'small.cabin.json', '--out', `out/r.${ending}`], small)));
    expect(first).toMatchObject({ exit: 0, stderr: second.stderr });
    expect(first.files).toHaveLength(1);
    expect(first.files[0].path).toBe(`out/r.${ending}`);
    expect(first.files[0].content).toBe(second.files[0].content);
    expect(first.files[0].content.length).toBeGreaterThan(2000);
    expect(first.stdout).toMatch(/^Wrote out\/r\./);
  });

  test('carries the hash of the cabin file and no path', async () => {
    // sha256sum of the bytes, by the tool of the system's library.
    const { createHash } = await import('node:crypto');
    const hash = createHash('sha256').update(small['small.cabin.json']).digest('hex');
    const { files } = await run(['report', '/some/where/small.cabin.json', '--out', 'r.html'], { '/some/where/small.cabin.json': small['small.cabin.json'] });
    expect(files[0].content).toContain(hash);
    expect(files[0].content).toContain('small.cabin.json');
    expect(files[0].content).not.toContain('/some/where');
  });

  test('the numbers of the demo agree between check, the JSON and the page', async () => {
    const [check, html, json] = await Promise.all([
      run(['check', 'shuttle.cabin.json', '--json'], demo), run(['report', 'shuttle.cabin.json', '--out', 'r.html'], demo), run(['report', 'shuttle.cabin.json', '--out', 'r.json'], demo),
    ]);
    const { summary, joints } = parsed<CheckJson>(check);
    const report = JSON.parse(json.files[0].content) as { summary: Record<string, number>; joints: { id: string; result: { limitUse?: number } }[] };
    expect(report.summary).toMatchObject({ clashes: summary.clashes, open: summary.open, holds: summary.holds, accepted: summary.accepted, expectedWrongHolds: summary.expectedWrongHolds });
    for (const joint of joints) {
      expect(report.joints.find(({ id }) => id === joint.id)?.result.limitUse ?? null).toBe(joint.limitUse);
      if (joint.verdict === 'clashes') expect(html.files[0].content).toContain(`<data value="${joint.limitUse}">`);
    }
    expect(html.files[0].content.length).toBeLessThan(5e6);
  });
});

describe('init', () => {
  test('writes a cabin and a book that check takes', async () => {
    const { files, exit } = await run(['init', 'trial/']);
    expect(exit).toBe(0);
    expect(files.map(({ path }) => path)).toEqual(['trial/first-steps.cabin.json', 'trial/house.rules.json']);
    const written = Object.fromEntries(files.map(({ path, content }) => [path, content]));
    const result = await run(['check', files[0].path, '--rules', files[1].path, '--json'], written);
    expect([0, 1]).toContain(result.exit);
    expect(parsed<CheckJson>(result).joints.length).toBeGreaterThan(2);
  });

  test('never overwrites', async () => {
    const result = await run(['init', 'trial', '--json'], { 'trial/house.rules.json': '{}' });
    expect(result).toMatchObject({ exit: 2, files: [] });
    expect(parsed<{ issues: Issue[] }>(result).issues).toMatchObject([{ code: 'already-there', found: 'trial/house.rules.json' }]);
  });
});
