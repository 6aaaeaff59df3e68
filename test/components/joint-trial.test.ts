import type { ReactiveControllerHost } from 'lit';
import { expect, test } from 'vitest';
import { JointTrial } from '../../components/controllers/joint-trial.ts';
import type { Trial } from '../../src/plan/proposal/proposed-cabin.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { judge } from '../../src/harmony/judge.ts';
import type { Judgement } from '../../src/harmony/judgement.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { isNothing, shiftOf, trialText, withShift } from '../../components/model/trial-text.ts';

const host: ReactiveControllerHost = { addController: () => {}, removeController: () => {}, requestUpdate: () => {}, updateComplete: Promise.resolve(true) };
const cabin = smallCabin();
const judgement = judge(cabin, builtInRuleBooks[0]);
const gaps = (asked: readonly Cabin[]): readonly (number | undefined)[] => asked.map((one) => one.joints[1]?.gapMm);

/** A judge that answers when told to. */
function slowJudge() {
  const asked: Cabin[] = [];
  const answers: ((judgement: Judgement | undefined) => void)[] = [];
  return { asked, answers, tryOut: (one: Cabin) => { asked.push(one); return new Promise<Judgement | undefined>((resolve) => { answers.push(resolve); }); } };
}

test('while one trial is judged only the latest of those that follow is kept', async () => {
  const trial = new JointTrial(host);
  const by = slowJudge();
  for (const gapMm of [1, 2, 3, 4]) trial.set({ gapMm }, 'j2', cabin, judgement, by);
  expect(gaps(by.asked)).toEqual([1]);
  by.answers[0]?.(judgement);
  await new Promise((resolve) => setTimeout(resolve));
  expect(gaps(by.asked)).toEqual([1, 4]);
  expect(trial.trial).toEqual({ gapMm: 4 });
  by.answers[1]?.(judgement);
  await new Promise((resolve) => setTimeout(resolve));
  expect(trial.judgement).toBe(judgement);
});

test('a trial that is given up while it is judged stays given up, and one that cannot be judged leaves nothing behind', async () => {
  const trial = new JointTrial(host);
  const by = slowJudge();
  trial.set({ gapMm: 1 }, 'j2', cabin, judgement, by);
  trial.set({}, 'j2', cabin, judgement, by);
  by.answers[0]?.(judgement);
  await new Promise((resolve) => setTimeout(resolve));
  expect(trial.judgement).toBeUndefined();
  trial.set({ gapMm: 2 }, 'j2', cabin, judgement, { tryOut: () => Promise.reject(new DOMException('ended', 'AbortError')) });
  await new Promise((resolve) => setTimeout(resolve));
  expect(isNothing(trial.trial)).toBe(true);
});

test('shifts are set one number at a time, and a number of 0 is none', () => {
  let trial: Trial = withShift({}, 'door-left', 'dL', -0.6);
  trial = withShift(trial, 'door-left', 'dGloss', 0.3);
  trial = withShift({ ...trial, gapMm: 2.5 }, 'dash-lower', 'db', 0.25);
  expect(shiftOf(trial, 'door-left')).toEqual({ part: 'door-left', dL: -0.6, dGloss: 0.3 });
  expect(trialText(cabin, trial)).toBe('Door left: dL* \u22120.60, dGloss +0.3 GU; Dash lower: db* +0.25; gap 2.5 mm');
  for (const [part, field] of [['door-left', 'dL'], ['door-left', 'dGloss'], ['dash-lower', 'db']] as const) trial = withShift(trial, part, field, 0);
  expect(trial).toEqual({ gapMm: 2.5 });
  expect(isNothing(trial)).toBe(false);
  expect(isNothing({})).toBe(true);
});
