/** What the program finds in the demo cabins: every planted trouble, and nothing else. */
import { describe, expect, it } from 'vitest';
import type { Planted } from '../../demo-data/generator/plan/planted.ts';
import { judge } from '../../src/harmony/index.ts';
import type { Judgement } from '../../src/harmony/judgement.ts';
import { ruleBookById } from '../../src/rules/index.ts';
import { cabinNames, demoCabin, demoText } from './demo-cabins.ts';

const planted = JSON.parse(demoText('planted.json')) as readonly Planted[];
const book = ruleBookById('ciede2000');
if (!book) throw new Error('the default rule book is missing');

/** A joint is its own subject; the checks of parts and joints that did not hold. */
const troublesOf = (judgement: Judgement): string[] =>
  [
    ...judgement.joints.filter((joint) => joint.verdict !== 'holds').map((joint) => `${joint.verdict} ${joint.id}`),
    ...judgement.parts.flatMap((part) =>
      part.checks
        .filter((check) => check.verdict === 'clashes' || check.verdict === 'open')
        .map((check) => `${check.verdict} ${part.id} ${check.check}`),
    ),
  ].toSorted();

const expectedOf = (rows: readonly Planted[]): string[] =>
  rows.map((row) => (row.joint === undefined ? `${row.verdict} ${row.part} ${row.check}` : `${row.jointVerdict} ${row.joint}`)).toSorted();

describe.each(cabinNames)('%s', { timeout: 120_000 }, (name) => {
  const rows = planted.filter((row) => row.cabin === name);
  const judgement = judge(demoCabin(name), book);

  it('has the planted troubles and no others', () => {
    expect(troublesOf(judgement)).toEqual(expectedOf(rows));
  });

  it.each(rows.filter((row) => row.joint !== undefined))('finds $id on the joint', (row) => {
    const joint = judgement.joints.find((candidate) => candidate.id === row.joint);
    expect(joint?.verdict).toBe(row.jointVerdict);
    const check = joint?.checks.find((candidate) => candidate.check === row.check);
    expect(check?.verdict).toBe(row.verdict);
    if (row.light !== undefined) expect(check?.light).toBe(row.light);
    if (row.cause !== undefined) expect(check?.cause).toBe(row.cause);
    if (row.cause === 'too few spots') expect(check?.spotsNeeded).toBeLessThanOrEqual(50);
    if (row.cause === 'instruments disagree') expect(check?.spotsNeeded).toBeUndefined();
    expect(joint?.accepted).toBe(row.accepted ?? false);
    const others = joint?.checks.filter(
      (candidate) => candidate.check !== row.check && candidate.standing !== 'advisory' && candidate.check !== 'conditions',
    );
    expect(others?.filter((candidate) => candidate.verdict === 'clashes' || candidate.verdict === 'open')).toEqual([]);
  });

  it.each(rows.filter((row) => row.part !== undefined))('finds $id on the part', (row) => {
    const checks = judgement.parts
      .find((part) => part.id === row.part)
      ?.checks.filter((check) => check.check === row.check && check.verdict === row.verdict);
    expect(checks).toHaveLength(1);
    if (row.light !== undefined) expect(checks?.[0].light).toBe(row.light);
  });

  it('holds elsewhere with a joint probability of 0.95 at the least', () => {
    for (const joint of judgement.joints)
      if (joint.verdict === 'holds') expect(joint.totalProbability, joint.id).toBeGreaterThanOrEqual(0.95);
  });

  it('has no run that drifts', () => {
    expect(judgement.runs.filter((run) => run.verdict !== 'holds')).toEqual([]);
  });

  it('raises no fault', () => {
    expect(judgement.issues.filter((issue) => issue.severity === 'error')).toEqual([]);
  });
});

describe('the records of shuttle-slate', { timeout: 120_000 }, () => {
  const judgement = judge(demoCabin('shuttle-slate'), book);
  const checkOf = (joint: string, check: string) =>
    judgement.joints.find((candidate) => candidate.id === joint)?.checks.find((candidate) => candidate.check === check);

  it('accept the gloss of the sill, and neither the expired nor the worse one', () => {
    expect(checkOf('map-pocket-left--sill-left', 'gloss')?.accepted).toBe(true);
    expect(checkOf('console-frame--console-lid', 'near-miss')?.decisionVoid).toMatch(/expired/u);
    expect(checkOf('mid-dash-right--glovebox-lid', 'colour')?.decisionVoid).toMatch(/agreed at 1\.60/u);
    expect(judgement.summary).toMatchObject({ clashes: 4, accepted: 1, open: 5, holds: 83 });
  });

  it('agree with the booth but for three joints', () => {
    expect(judgement.summary.visual.joints).toBeGreaterThanOrEqual(15);
    expect([...judgement.summary.visual.differ].toSorted()).toEqual([
      'headliner--b-pillar-left',
      'knee-panel--column-shroud',
      'seat-back-right--seat-cushion-right',
    ]);
  });
});
