import { expect, test } from 'vitest';
import * as adjoin from '../src/index.ts';
import { smallCabin } from './support/small-cabin.ts';

test('a cabin goes in by the library and comes out as a verdict and a report', () => {
  const { value: cabin, issues } = adjoin.parseCabin(adjoin.serialiseCabin(smallCabin()));
  expect(issues.filter((issue) => issue.severity === 'error')).toEqual([]);
  if (!cabin) throw new Error('no cabin');
  const judgement = adjoin.judge(cabin, adjoin.builtInRuleBooks[0]);
  expect(judgement.joints).toHaveLength(cabin.joints.length);
  const page = adjoin.reportHtml({ cabin, ruleBook: adjoin.builtInRuleBooks[0], judgement, files: [], validation: adjoin.publishedValues() });
  expect(page).toContain(cabin.name);
});

test('faults come back as issues', () => {
  const { value, issues } = adjoin.parseCabin('{');
  expect(value).toBeUndefined();
  expect(adjoin.hasErrors(issues)).toBe(true);
  expect(adjoin.issueText(issues[0])).toContain('json-syntax');
});

// ISO/CIE 11664-4: the perfect diffuser has L* = 100, a* = b* = 0.
test('colorimetry is part of the face', () => {
  const light = adjoin.lightByName('FL11');
  if (!light) throw new Error('no light');
  const [L, a, b] = adjoin.spectrumToLab({ startNm: 400, stepNm: 10, values: new Array<number>(31).fill(1) }, light, 10);
  expect(L).toBeCloseTo(100, 9);
  expect(Math.hypot(a, b)).toBeLessThan(1e-9);
});
