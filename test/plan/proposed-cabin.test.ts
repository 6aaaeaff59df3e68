import { expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { judge } from '../../src/harmony/judge.ts';
import { proposedCabin } from '../../src/plan/proposal/proposed-cabin.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { independentLab } from '../support/independent-colorimetry.ts';
import { smallCabin } from '../support/small-cabin.ts';

const book = builtInRuleBooks[0];
const at = { stage: 'new', observer: 10 } as const;
const cabin = smallCabin();

function meanLab(document: Cabin, id: string): readonly number[] {
  const specimens = document.parts.flatMap((part) => part.sources.flatMap((source) => source.specimens));
  const spectra = specimens.find((specimen) => specimen.id === id)!.readings.filter((reading) => reading.quantity === 'spectrum');
  const { startNm, stepNm, values } = spectra[0]!;
  const mean = values.map((_, band) => spectra.reduce((sum, reading) => sum + reading.values[band]!, 0) / spectra.length);
  return independentLab(mean, { startNm, stepNm, count: values.length }, 'D65', 10);
}

test('the mean of the standing specimen moves in CIELAB under D65 by what was asked for, and no other part is touched', () => {
  const { cabin: tried } = proposedCabin(cabin, 'j1', { shifts: [{ part: 'dash-upper', dL: 1.5, db: -0.7, dGloss: 0.4 }] }, at);
  const [before, after] = [meanLab(cabin, 'du-1'), meanLab(tried, 'du-1')];
  [1.5, 0, -0.7].forEach((asked, axis) => expect(after[axis]! - before[axis]!).toBeCloseTo(asked, 3));
  expect(tried.parts.filter((part, place) => part !== cabin.parts[place]).map(({ id }) => id)).toEqual(['dash-upper']);
  expect(tried.joints).toBe(cabin.joints);
  const gloss = (document: Cabin): readonly number[] =>
    document.parts[0]!.sources[0]!.specimens[0]!.readings.flatMap((reading) => (reading.quantity === 'gloss' ? [reading.gloss] : []));
  gloss(tried).forEach((value, place) => expect(value).toBeCloseTo(gloss(cabin)[place]! + 0.4, 12));
});

test('gloss does not fall below nothing, and a trial of nothing is the cabin itself', () => {
  const { cabin: tried } = proposedCabin(cabin, 'j1', { shifts: [{ part: 'dash-upper', dGloss: -50 }] }, at);
  expect(tried.parts[0]!.sources[0]!.specimens[0]!.readings.flatMap((reading) => (reading.quantity === 'gloss' ? [reading.gloss] : [])).every((value) => value === 0)).toBe(true);
  expect(proposedCabin(cabin, 'j1', {}, at).cabin).toBe(cabin);
  expect(proposedCabin(cabin, 'j1', { shifts: [{ part: 'dash-upper', dL: 0 }] }, at).cabin).toBe(cabin);
});

test('the other hand that borrows the readings changes together with its part', () => {
  expect(proposedCabin(cabin, 'j2', { shifts: [{ part: 'door-left', dL: 1 }] }, at).together).toEqual(['door-right']);
  expect(proposedCabin(cabin, 'j1', { shifts: [{ part: 'dash-upper', dL: 1 }] }, at).together).toEqual([]);
});

test('gap and viewing distance are those of the trial at its joint alone', () => {
  const { cabin: tried } = proposedCabin(cabin, 'j2', { gapMm: 1.5, viewMm: 1200 }, at);
  expect(tried.joints[1]).toEqual({ ...cabin.joints[1], gapMm: 1.5, viewMm: 1200 });
  expect(tried.joints.filter((joint, place) => joint !== cabin.joints[place])).toHaveLength(1);
  expect(tried.parts).toBe(cabin.parts);
});

test('the shift that closes the difference of two sides brings the value of the colour check near to nothing', () => {
  const difference = (document: Cabin): { dL: number; da: number; db: number } =>
    judge(document, book).joints.find(({ id }) => id === 'j2')!.checks.find(({ check }) => check === 'colour')!.lights.find(({ light }) => light === 'D65')!.difference;
  const { dL, da, db } = difference(cabin);
  expect(Math.hypot(dL, da, db)).toBeGreaterThan(0.3);
  const trial = judge(cabin, book).joints.find(({ id }) => id === 'j2')!.trial;
  const left = difference(proposedCabin(cabin, 'j2', { shifts: [{ part: trial, dL: -dL, da: -da, db: -db }] }, at).cabin);
  expect(Math.hypot(left.dL, left.da, left.db)).toBeLessThan(0.01);
});
