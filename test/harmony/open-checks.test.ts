/** Why checks in one dimension are open, what would decide them, and what is asked for. Every expected number is worked from the normal law here. */
import { describe, expect, test } from 'vitest';
import type { Cabin, Specimen } from '../../src/cabin/cabin.ts';
import { judge } from '../../src/harmony/judge.ts';
import type { CheckResult, Judgement, MeasurementRequest } from '../../src/harmony/judgement.ts';
import type { Reading } from '../../src/readings/reading.ts';
import { defaultBook } from '../../src/rules/default-book.ts';
import type { RuleBook } from '../../src/rules/rule-book.ts';
import { glosses, instrumentList, spectra, spectrumOf, twoPartCabin } from '../support/two-part-cabin.ts';

/** Phi by Simpson's rule from 0; z of 0.95 from a table of the normal law. */
function phi(z: number): number {
  const steps = 2000;
  let sum = 0;
  for (let i = 0; i <= steps; i += 1) sum += (i === 0 || i === steps ? 1 : i % 2 === 1 ? 4 : 2) * Math.exp(-0.5 * ((z * i) / steps) ** 2);
  return 0.5 + (sum * z) / steps / 3 / Math.sqrt(2 * Math.PI);
}
const z95 = 1.6448536;

/** Chance that a value about `value` lands in `limit` by enough or beyond it by enough, once its variance has fallen from `now` to `then`; the far limit is out of reach. */
const chanceOf = (value: number, limit: number, now: number, then: number): number => {
  const [moves, u] = [Math.sqrt(now - then), Math.sqrt(then)];
  return phi((limit - z95 * u - value) / moves) + 1 - phi((limit + z95 * u - value) / moves);
};

const checkOf = (judgement: Judgement, name: CheckResult['check']): CheckResult => {
  const found = judgement.joints[0].checks.find(({ check }) => check === name);
  if (found === undefined) throw new Error(`no ${name}`);
  return found;
};
const requestsOf = (judgement: Judgement, check: CheckResult['check']): readonly MeasurementRequest[] => judgement.requests.filter((request) => request.check === check);
const withInstruments = (cabin: Cabin, id: string, agreement: object): Cabin =>
  ({ ...cabin, instruments: instrumentList.map((one) => (one.id === id ? { ...one, agreement: { date: '2026-01-02', tiles: 5, ...agreement } } : one)) });

describe('texture', () => {
  // Sd of one reading 0.05 of the logarithm, worth eight readings against the three there, which are alike: pooled variance 8 x 0.0025 / 10.
  const pooled = 0.002;
  const limit = Math.log(1.25);
  const cabin = (ratio: number, spots = 3, conditions = 'areal') => twoPartCabin(
    { grain: 'pebble', sa: 10, textureSpots: spots }, { grain: 'pebble', sa: 10 * ratio, textureSpots: spots, textureConditions: conditions },
  );

  test('is open for too few spots, asks for as many as decide, with the chance, and holds once they are there', () => {
    const judgement = judge(cabin(1.2), defaultBook);
    const needed = Math.ceil(2 * pooled * (z95 / (limit - Math.log(1.2))) ** 2);
    expect(checkOf(judgement, 'texture')).toMatchObject({ verdict: 'open', cause: 'too few spots', spotsNeeded: needed, criterion: 'Sa ratio' });
    expect(checkOf(judgement, 'texture').sentence).toContain(`too few spots were measured; ${needed} spots a side would decide`);
    expect(needed).toBe(7);
    const requests = requestsOf(judgement, 'texture');
    expect(requests.map(({ part, quantity, spots, have, instrument, geometry, joint }) => ({ part, quantity, spots, have, instrument, geometry, joint }))).toEqual(
      ['a', 'b'].map((part) => ({ part, quantity: 'texture', spots: 7, have: 3, instrument: 'Profiler', geometry: 'areal', joint: 'a-b' })),
    );
    for (const { chance } of requests) expect(Math.abs((chance ?? 0) - chanceOf(Math.log(1.2), limit, 2 * pooled / 3, 2 * pooled / 7))).toBeLessThan(0.02);
    expect(checkOf(judge(cabin(1.2, 7), defaultBook), 'texture').verdict).toBe('holds');
  });

  test('of two profilers asks for one, with the chance that the value then decides', () => {
    const judgement = judge(cabin(1.2, 30, 'areal-two'), defaultBook);
    expect(checkOf(judgement, 'texture').cause).toBe('instruments disagree');
    const [request, ...others] = requestsOf(judgement, 'texture');
    expect(others).toEqual([]);
    expect(request).toMatchObject({ part: 'b', instrument: 'Profiler', spots: 30 });
    // Pooled over 30 alike spots: 8 x 0.0025 / 37 over 30, both sides; two profilers of sd 0.05 go.
    const left = 2 * (0.02 / 37) / 30;
    expect(Math.abs((request.chance ?? 0) - chanceOf(Math.log(1.2), limit, left + 2 * 0.0025, left))).toBeLessThan(0.03);
  });

  test('on the limit is said to be, and nothing is asked for', () => {
    const judgement = judge(cabin(1.25, 30), defaultBook);
    expect(checkOf(judgement, 'texture').cause).toBe('on the limit');
    expect(requestsOf(judgement, 'texture')).toEqual([]);
  });

  test('that scatters beyond any number of spots is said to', () => {
    const scattered = Array.from({ length: 50 }, (_, spot): Reading => ({
      quantity: 'texture', spot: { name: `t${spot}` }, conditions: 'areal', parameters: { saUm: 10 * Math.exp(spot % 2 === 0 ? 0.7 : -0.7), salMm: 0.4 }, measuredAt: '2026-02-01',
    }));
    const side = { grain: 'pebble', readings: [...spectra(spectrumOf(() => 0.06)), ...scattered] };
    const texture = checkOf(judge(twoPartCabin(side, side), defaultBook), 'texture');
    expect(texture).toMatchObject({ verdict: 'open', cause: 'spread of the part' });
    expect(texture.spotsNeeded).toBeUndefined();
  });

  test('without areal parameters on a side where the book requires them asks for these', () => {
    const book: RuleBook = { ...defaultBook, standing: { ...defaultBook.standing, texture: 'required' } };
    const judgement = judge(twoPartCabin({ grain: 'pebble', sa: 10 }, { grain: 'pebble' }), book);
    expect(requestsOf(judgement, 'texture')).toMatchObject([{ part: 'b', instrument: 'areal profiler', have: 0, reason: 'there are no areal parameters' }]);
  });
});

describe('gloss of two instruments', () => {
  test('asks for one of them, and says how likely that decides', () => {
    const judgement = judge(twoPartCabin({ gloss60: 2 }, { gloss60: 2.4, glossConditions: 'gloss-two' }), defaultBook);
    expect(checkOf(judgement, 'gloss').cause).toBe('instruments disagree');
    const [request, ...others] = requestsOf(judgement, 'gloss');
    expect(others).toEqual([]);
    expect(request).toMatchObject({ part: 'b', instrument: 'Glossmeter', geometry: '60°', quantity: 'gloss' });
    // Sd of a reading 0.1, five alike spots a side; two glossmeters of sd 0.15 go.
    const left = (2 * (8 * 0.01)) / 12 / 5;
    expect(Math.abs((request.chance ?? 0) - chanceOf(0.4, 0.5, left + 2 * 0.0225, left))).toBeLessThan(0.02);
  });

  test('of one glossmeter between unlike surfaces asks for nothing that would not help', () => {
    // Half of one glossmeter's deviation stays between unlike families, whatever the session.
    const judgement = judge(twoPartCabin({ gloss60: 2, glossSpots: 50 }, { gloss60: 2.45, glossSpots: 50, material: 'soft-skin' }), defaultBook);
    expect(checkOf(judgement, 'gloss').cause).toBe('instruments disagree');
    expect(requestsOf(judgement, 'gloss')).toEqual([]);
  });
});

describe('colour of two instruments', () => {
  test('asks for one of them, with a chance that counts how far the value may move', () => {
    // One dimension: L* alone by CIE76 under D65; the limit 0.7, the value 0.55.
    const near = spectrumOf(() => ((66 + 0.55) / 116) ** 3);
    const book: RuleBook = {
      ...defaultBook, formula: 'cie76', lights: defaultBook.lights.filter(({ light }) => light === 'D65'),
      assumed: { ...defaultBook.assumed, agreementSd: [0.3, 1e-4, 1e-4] },
      materials: defaultBook.materials.map((row) => ({ ...row, readingSd: [0.15, 1e-4, 1e-4] as const })),
    };
    const judgement = judge(twoPartCabin({ curve: spectrumOf(() => (66 / 116) ** 3), spots: 20 }, { curve: near, spots: 20, conditions: 'annular-two' }), book);
    expect(checkOf(judgement, 'colour').cause).toBe('instruments disagree');
    const [request] = requestsOf(judgement, 'colour');
    expect(request).toMatchObject({ part: 'b', instrument: 'Spectrophotometer one', geometry: '45:0', spots: 20 });
    const left = (2 * (8 * 0.0225)) / 27 / 20;
    expect(Math.abs((request.chance ?? 0) - chanceOf(0.55, 0.7, left + 2 * 0.09, left))).toBeLessThan(0.08);
  });
});

describe('a cap', () => {
  const zone = { zone: 'upper-dash', curve: spectrumOf(() => 0.03) };
  const capped = (gloss60: number, glossSpots: number, agreement?: object): Judgement => {
    const cabin = twoPartCabin({ ...zone, gloss60, glossSpots }, {}, { intent: { colour: 'free', gloss: 'free' } });
    return judge(agreement === undefined ? cabin : withInstruments(cabin, 'meter', agreement), defaultBook);
  };
  const capOf = ({ parts }: Judgement): CheckResult | undefined => parts[0].checks.find(({ subject }) => subject === 'upper-dash-gloss');

  test('is open for too few spots of the part, with the number, the request and its chance', () => {
    // Sd of a reading 0.1 over n spots, the glossmeter's sd 0.01, and 0.1 GU to the cap of 2.
    const judgement = capped(1.9, 1, { glossSd: 0.01 });
    const needed = Math.ceil(0.01 / ((0.1 / z95) ** 2 - 0.0001));
    expect(needed).toBe(3);
    expect(capOf(judgement)).toMatchObject({ verdict: 'open', cause: 'too few spots', spotsNeeded: 3, spotsOn: 'part' });
    expect(capOf(judgement)?.sentence).toContain('3 spots of the part would decide');
    const [request] = requestsOf(judgement, 'cap');
    expect(request).toMatchObject({ part: 'a', subject: 'upper-dash-gloss', quantity: 'gloss', geometry: '60°', have: 1, spots: 3, instrument: 'Glossmeter' });
    expect(request.joint).toBeUndefined();
    expect(request.chance).toBeCloseTo(chanceOf(1.9, 2, 0.0101, 0.01 / 3 + 0.0001), 2);
    expect(capOf(capped(1.9, 3, { glossSd: 0.01 }))?.verdict).toBe('holds');
  });

  test('is open for its instrument where that may be off by more than is left', () => {
    const judgement = capped(1.9, 30);
    expect(capOf(judgement)).toMatchObject({ verdict: 'open', cause: 'instruments disagree' });
    expect(capOf(judgement)?.sentence).toContain('the instrument may be off by more than is left');
    expect(requestsOf(judgement, 'cap')).toMatchObject([{ instrument: 'any with an agreement set', chance: undefined }]);
  });

  test('is on its limit where the value is', () => {
    expect(capOf(capped(2, 10, { glossSd: 1e-6 }))).toMatchObject({ verdict: 'open', cause: 'on the limit' });
  });

  test('asks for a reading where there is none', () => {
    const judgement = judge(twoPartCabin({ ...zone, gloss60: null }, {}, { intent: { colour: 'free', gloss: 'free' } }), defaultBook);
    expect(requestsOf(judgement, 'cap')).toMatchObject([{ part: 'a', subject: 'upper-dash-gloss', quantity: 'gloss', geometry: '60°', have: 0, chance: undefined }]);
  });
});

describe('against the master', () => {
  const grey = spectrumOf(() => 0.06);
  const master = (glossSpots: number, colourSpots = 20): Specimen => ({ id: 'm', kind: 'master', issue: 'C', readings: [...spectra(grey, colourSpots), ...glosses(2, glossSpots)] });
  const held = (masterGlossSpots: number, partSpots: number): Judgement => judge(twoPartCabin(
    { curve: grey, gloss60: 2.4, glossSpots: partSpots, target: { master: 'm' } }, {}, { intent: { colour: 'free', gloss: 'free' } }, { masters: [master(masterGlossSpots)] },
  ), defaultBook);
  const glossOf = ({ parts }: Judgement): CheckResult | undefined => parts[0].checks.find(({ check, subject }) => check === 'master' && subject === 'gloss');

  test('gloss is open for spots of the part alone where the master has enough', () => {
    // 0.1 GU to the limit of 0.5. The master's 20 alike spots: 8 x 0.01 / 27 / 20; the part's single one 0.01.
    const ofMaster = (8 * 0.01) / 27 / 20;
    const needed = Math.ceil(0.01 / ((0.1 / z95) ** 2 - ofMaster));
    const judgement = held(20, 1);
    expect(glossOf(judgement)).toMatchObject({ verdict: 'open', cause: 'too few spots', spotsNeeded: needed, spotsOn: 'part' });
    expect(glossOf(judgement)?.sentence).toContain('from its master m, issue C at 60°');
    const [request] = requestsOf(judgement, 'master');
    expect(request).toMatchObject({ part: 'a', subject: 'gloss', quantity: 'gloss', have: 1, spots: needed, instrument: 'Glossmeter' });
    expect(request.chance).toBeCloseTo(chanceOf(0.4, 0.5, 0.01 + ofMaster, 0.01 / needed + ofMaster), 2);
  });

  test('gloss is open for spots of both where the master has too few itself', () => {
    const needed = Math.ceil(0.02 / (0.1 / z95) ** 2);
    const judgement = held(1, 1);
    expect(glossOf(judgement)).toMatchObject({ verdict: 'open', cause: 'too few spots', spotsNeeded: needed, spotsOn: 'part and master' });
    expect(glossOf(judgement)?.sentence).toContain(`${needed} spots of the part and of its master would decide`);
    expect(requestsOf(judgement, 'master')[0].reason).toContain('as many on its master m');
  });

  test('colour is open for spots of the part, names the issue, and asks for them', () => {
    const near = spectrumOf(() => ((116 * Math.cbrt(0.06) + 0.8) / 116) ** 3);
    const cabin = (spots: number) => twoPartCabin({ curve: near, spots, target: { master: 'm' } }, {}, { intent: { colour: 'free', gloss: 'free' } }, { masters: [master(5, 40)] });
    const judgement = judge(cabin(1), defaultBook);
    const colour = judgement.parts[0].checks.find(({ subject }) => subject === 'colour');
    expect(colour).toMatchObject({ verdict: 'open', cause: 'too few spots', spotsOn: 'part' });
    expect(colour?.sentence).toContain('than its master m, issue C under');
    const needed = colour?.spotsNeeded ?? 0;
    expect(needed).toBeLessThanOrEqual(50);
    expect(requestsOf(judgement, 'master')).toMatchObject([{ part: 'a', subject: 'colour', quantity: 'colour', geometry: '45:0', have: 1, spots: needed }]);
    const chance = requestsOf(judgement, 'master')[0].chance ?? 0;
    expect(chance).toBeGreaterThan(0.2);
    expect(chance).toBeLessThan(1);
    expect(judge(cabin(needed + 1), defaultBook).parts[0].checks.find(({ subject }) => subject === 'colour')?.verdict).toBe('holds');
  });
});
