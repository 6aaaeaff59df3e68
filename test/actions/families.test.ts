import { describe, expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { restoreCabin } from '../../src/cabin/restore-cabin.ts';
import type { Action } from '../../src/actions/action.ts';
import { embedRuleBook, nameRuleBook } from '../../src/actions/cabin-actions.ts';
import { addDecision, removeVisualRecord, withdrawDecision } from '../../src/actions/decision-actions.ts';
import { emptyCabin } from '../../src/actions/empty-cabin.ts';
import { addJoint, removeJoint, setIntent, setJoint } from '../../src/actions/joint-actions.ts';
import { addLight, removeLight } from '../../src/actions/light-actions.ts';
import { deletePoint, insertPoint, moveOutline, movePoint } from '../../src/actions/outline-actions.ts';
import { addPart, removePart, setPart, setPartHand, setPartTarget } from '../../src/actions/part-actions.ts';
import { addProposal, removeProposal } from '../../src/actions/proposal-actions.ts';
import { moveReadings, removeReadings, setOutlier } from '../../src/actions/reading-actions.ts';
import { namedItems } from '../../src/actions/references.ts';
import { addConditions, addInstrument, addSupplier, removeConditions, removeInstrument, removeSupplier } from '../../src/actions/register-actions.ts';
import { actions } from '../../src/actions/registry.ts';
import { removeSource, setGrain, setStandsBy } from '../../src/actions/source-actions.ts';
import { addMaster, addSpecimen, removeMaster, removeSpecimen, setExposure, setLot } from '../../src/actions/specimen-actions.ts';
import { addZone, removeZone } from '../../src/actions/zone-actions.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { smallCabin } from '../support/small-cabin.ts';

function done<Values>(cabin: Cabin, action: Action<Values>, values: Values): Cabin {
  const { value, issues } = action.run(cabin, values);
  expect(issues.filter(({ severity }) => severity === 'error')).toEqual([]);
  return value as Cabin;
}

const refused = <Values>(cabin: Cabin, action: Action<Values>, values: Values): readonly string[] => {
  const { value, issues } = action.run(cabin, values);
  expect(value).toBeUndefined();
  return issues.map(({ code }) => code);
};

const part = (cabin: Cabin, id: string) => cabin.parts.find((one) => one.id === id);
const cabin = smallCabin();

describe('parts', () => {
  test('a part goes with its joints, its places in runs, runs left with one part, and references to it as a mirror', () => {
    const started: Cabin = { ...cabin, runs: [...cabin.runs ?? [], { id: 'r2', parts: ['door-left', 'console'] }] };
    expect(removePart.label({ part: 'door-left' }, started)).toBe('Remove part Door left with 2 joints, its place in 2 runs and the mirror reference to it');
    const after = done(started, removePart, { part: 'door-left' });
    expect(after.joints.map(({ id }) => id)).toEqual(['j1', 'j3', 'j4', 'j6']);
    expect(after.runs).toEqual([{ id: 'r1', name: 'Round the front', parts: ['dash-lower', 'door-right'] }]);
    expect(part(after, 'door-right')).not.toHaveProperty('mirrorOf');
    expect(part(after, 'dash-lower')).toBe(part(started, 'dash-lower'));
  });

  test('ids come of the name, or are the next free ones', () => {
    const named = ['Dash upper', 'Dash upper', 'Blende, große (links)', '???'];
    const ids = named.reduce<Cabin>((at, name) => done(at, addPart, { name, zone: 'dash', supplier: 'quill', material: 'moulded' }), cabin).parts.slice(6).map(({ id }) => id);
    expect(ids).toEqual(['dash-upper-2', 'dash-upper-3', 'blende-gro-e-links', 'part']);
  });

  test('a mirror gets the hand that its partner leaves', () => {
    const two = ['One', 'Two'].reduce<Cabin>((at, name) => done(at, addPart, { name, zone: 'dash', supplier: 'quill', material: 'moulded', ...(name === 'One' ? { hand: 'left' as const } : {}) }), cabin);
    expect(part(done(two, setPartHand, { part: 'two', mirrorOf: 'one' }), 'two')).toMatchObject({ hand: 'right', mirrorOf: 'one' });
    expect(refused(cabin, setPartHand, { part: 'dash-upper', mirrorOf: 'console' })).toEqual(['mirror-hand']);
  });

  test('null takes a field out, an equal value changes nothing', () => {
    expect(part(done(cabin, setPart, { part: 'dash-upper', partNumber: null }), 'dash-upper')).not.toHaveProperty('partNumber');
    expect(setPart.run(cabin, { part: 'dash-upper', partNumber: 'X-100', visibility: 1 }).value).toBe(cabin);
  });

  test('a target is set, changed and taken off', () => {
    expect(part(done(cabin, setPartTarget, { part: 'console', master: 'm-slate', glossLimit: 2 }), 'console')?.target).toEqual({ master: 'm-slate', glossLimit: 2 });
    expect(part(done(cabin, setPartTarget, { part: 'dash-lower', colourLimit: null }), 'dash-lower')?.target).toEqual({ master: 'm-slate' });
    expect(part(done(cabin, setPartTarget, { part: 'dash-lower', master: null }), 'dash-lower')).not.toHaveProperty('target');
    expect(refused(cabin, setPartTarget, { part: 'console', colourLimit: 1 })).toEqual(['missing-field']);
  });

  test('points of an outline move, come and go; three are the fewest', () => {
    expect(part(done(cabin, moveOutline, { part: 'console', dxMm: 10, dyMm: -4 }), 'console')?.outline).toEqual([[610, 400], [810, 400], [810, 896], [610, 896]]);
    expect(part(done(cabin, movePoint, { part: 'console', point: 3, to: [590, 910] }), 'console')?.outline?.[3]).toEqual([590, 910]);
    const five = done(cabin, insertPoint, { part: 'console', point: 4, to: [580, 700] });
    expect(part(five, 'console')?.outline).toEqual([[600, 404], [800, 404], [800, 900], [600, 900], [580, 700]]);
    const three = done(cabin, deletePoint, { part: 'console', point: 0 });
    expect(refused(three, deletePoint, { part: 'console', point: 0 })).toEqual(['outline-too-short']);
    expect(refused(cabin, movePoint, { part: 'console', point: 4, to: [0, 0] })).toEqual(['unknown-point']);
  });
});

describe('sources and specimens', () => {
  test('a part keeps a source; the choice of one that goes is taken out', () => {
    const after = done(cabin, removeSource, { part: 'dash-lower', source: 'ppx' });
    expect(part(after, 'dash-lower')).not.toHaveProperty('source');
    expect(refused(after, removeSource, { part: 'dash-lower', source: 'alt' })).toEqual(['too-few']);
  });

  test('a pick of a specimen goes with the specimen, and when it is at another stage', () => {
    const source = (of: Cabin) => part(of, 'dash-lower')?.sources[0];
    expect(source(done(cabin, removeSpecimen, { specimen: 'dl-2' }))).not.toHaveProperty('standsBy');
    expect(source(done(cabin, setExposure, { specimen: 'dl-2', stage: 'heat-aged', hours: 10 }))).not.toHaveProperty('standsBy');
    expect(source(done(cabin, setStandsBy, { part: 'dash-lower', source: 'ppx', stage: 'light-exposed', specimen: 'dl-3' }))?.standsBy).toEqual({ new: 'dl-2', 'light-exposed': 'dl-3' });
    expect(refused(cabin, setStandsBy, { part: 'dash-lower', source: 'ppx', stage: 'new', specimen: 'dl-3' })).toEqual(['stands-by-stage']);
  });

  test('lots and grains are named before anything else is said of them', () => {
    expect(refused(cabin, setGrain, { part: 'console', source: 'black', depthUm: 5 })).toEqual(['missing-field']);
    expect(part(done(cabin, setGrain, { part: 'console', source: 'black', grain: 'fine', depthUm: 5 }), 'console')?.sources[0]?.grain).toEqual({ id: 'fine', depthUm: 5 });
    expect(part(done(cabin, setLot, { specimen: 'co-1', lot: 'lot-51', resin: 'r1' }), 'console')?.sources[0]?.specimens[0]?.lot).toEqual({ id: 'lot-51', resin: 'r1' });
    expect(part(done(cabin, addSpecimen, { part: 'console', source: 'black', kind: 'plaque', lot: 'l' }), 'console')?.sources[0]?.specimens[1]).toEqual({ id: 'black-1', kind: 'plaque', lot: { id: 'l' }, readings: [] });
  });

  test('a master goes with the targets that name it, unless differences rest on it', () => {
    const withNew = done(done(cabin, addMaster, { id: 'm-new' }), setPartTarget, { part: 'dash-upper', master: 'm-new' });
    expect(removeMaster.label({ specimen: 'm-new' }, withNew)).toBe('Remove master m-new and the target of 1 part');
    expect(done(withNew, removeMaster, { specimen: 'm-new' })).toEqual(cabin);
    expect(refused(cabin, removeMaster, { specimen: 'm-cloth' })).toEqual(['unknown-master']);
  });

  test('readings are marked, moved and removed by their places', () => {
    const readings = (of: Cabin, id: string) => of.parts.flatMap(({ sources }) => sources.flatMap(({ specimens }) => specimens)).find((one) => one.id === id)?.readings ?? [];
    const marked = done(cabin, setOutlier, { specimen: 'do-1', readings: [1, 3], outlier: true });
    expect(readings(marked, 'do-1').map(({ outlier }) => outlier)).toEqual([undefined, true, undefined, true, ...Array<undefined>(6).fill(undefined)]);
    expect(done(marked, setOutlier, { specimen: 'do-1', readings: [1, 3], outlier: false })).toEqual(cabin);
    expect(readings(done(cabin, removeReadings, { specimen: 'do-1', readings: [0, 0, 9] }), 'do-1')).toEqual(readings(cabin, 'do-1').slice(1, 9));
    const moved = done(cabin, moveReadings, { specimen: 'do-1', readings: [2], to: 'co-1' });
    expect([readings(moved, 'do-1').length, readings(moved, 'co-1').at(-1)]).toEqual([9, readings(cabin, 'do-1')[2]]);
    expect(refused(cabin, removeReadings, { specimen: 'do-1', readings: [10] })).toEqual(['unknown-reading']);
  });
});

describe('joints', () => {
  test('two parts are joined once by a kind', () => {
    const joined = done(cabin, addJoint, { first: 'dash-upper', second: 'console', kind: 'gap', gapMm: 3 });
    expect(joined.joints.at(-1)).toEqual({ id: 'dash-upper--console', parts: ['dash-upper', 'console'], kind: 'gap', gapMm: 3 });
    expect(refused(joined, addJoint, { first: 'console', second: 'dash-upper', kind: 'gap' })).toEqual(['duplicate-joint']);
    expect(refused(cabin, addJoint, { first: 'console', second: 'console', kind: 'edge' })).toEqual(['joint-with-itself']);
    expect(refused(cabin, setJoint, { joint: 'j1', reference: 'console' })).toEqual(['reference-not-of-joint']);
  });

  test('an intent with nothing in it is none', () => {
    expect(done(cabin, setIntent, { joint: 'j6', colour: null }).joints[5]).not.toHaveProperty('intent');
    expect(done(cabin, setIntent, { joint: 'j6', gloss: 'free' }).joints[5]?.intent).toEqual({ colour: 'tone-step', gloss: 'free' });
  });

  test('decisions get the next number and are withdrawn by it; a joint says what goes with it', () => {
    const decided = done(cabin, addDecision, { joint: 'j1', check: 'gloss', reason: 'made up', role: 'quality', date: '2031-02-01', expires: '2031-05-01', value: 0.6 });
    expect(decided.joints[0]?.decisions?.[0]?.id).toBe('decision-1');
    expect(done(decided, withdrawDecision, { decision: 'decision-1' })).toEqual(cabin);
    expect(removeJoint.label({ joint: 'j2' }, cabin)).toBe('Remove joint Dash lower and Door left with 1 decision and 1 visual record');
    expect(done(cabin, removeVisualRecord, { joint: 'j2', record: 0 }).joints[1]).not.toHaveProperty('visualRecords');
  });
});

describe('proposals', () => {
  const shifts = [{ part: 'dash-lower', dL: -0.6, db: 0.2 }, { part: 'door-left', dGloss: 0.3 }];

  test('one is kept with the next free number, changes the proposals of its joint alone, and is taken off again', () => {
    const kept = done(cabin, addProposal, { joint: 'j2', date: '2031-02-28', shifts, gapMm: 4 });
    expect(kept.joints[1]).toEqual({ ...cabin.joints[1], proposals: [{ id: 'proposal-1', date: '2031-02-28', gapMm: 4, shifts }] });
    expect(restoreCabin(JSON.parse(JSON.stringify(kept))).value).toEqual(kept);
    expect(done(kept, removeProposal, { proposal: 'proposal-1' })).toEqual(cabin);
    expect(removeProposal.label({ proposal: 'proposal-1' }, kept)).toBe('Remove proposal-1 at joint Dash lower and Door left');
  });

  test('a part of another joint, a part twice and a change of nothing are refused', () => {
    expect(refused(cabin, addProposal, { joint: 'j2', date: '2031-02-28', shifts: [{ part: 'console', dL: 1 }] })).toEqual(['proposal-not-of-joint']);
    expect(refused(cabin, addProposal, { joint: 'j2', date: '2031-02-28', shifts: [{ part: 'door-left', dL: 1 }, { part: 'door-left', dL: 2 }] })).toEqual(['part-twice-in-proposal']);
    expect(refused(cabin, addProposal, { joint: 'j2', date: '2031-02-28', note: 'nothing' })).toEqual(['nothing-proposed']);
  });
});

describe('registers', () => {
  test('what is in use stays', () => {
    expect(refused(cabin, removeZone, { zone: 'dash' })).toEqual(['still-used']);
    expect(removeZone.enabled(cabin, { zone: 'dash' })).toBe('2 parts of the cabin lie in the zone.');
    expect(done(done(cabin, addZone, { name: 'Roof' }), removeZone, { zone: 'roof' })).toEqual(cabin);
    expect(refused(cabin, removeInstrument, { instrument: 'spectro-a' })).toContain('unknown-instrument');
    expect(done(done(cabin, addInstrument, { name: 'New one', kind: 'glossmeter' }), removeInstrument, { instrument: 'new-one' })).toEqual(cabin);
    expect(done(done(cabin, addSupplier, { name: 'Another (invented)' }), removeSupplier, { supplier: 'another-invented' })).toEqual(cabin);
    expect(done(done(cabin, addConditions, { id: 'spare', instrument: 'glossmeter-a' }), removeConditions, { conditions: 'spare' })).toEqual(cabin);
  });

  test('an own light comes and goes, and never takes the name of a built-in one', () => {
    const lit = done(cabin, addLight, { name: 'd65', startNm: 400, stepNm: 50, values: [1, 2, 3, 4, 5, 6, 7] });
    expect(lit.lights?.at(-1)?.id).toBe('d65');
    expect(done(lit, removeLight, { light: 'd65' })).toEqual(cabin);
    expect(refused(cabin, addLight, { name: 'short', startNm: 400, stepNm: 10, values: [1, 2, 3] })).toEqual(['wavelengths-missing']);
  });

  test('a rule book is a built-in one, or one that has no fault', () => {
    const [book] = builtInRuleBooks;
    expect(done(cabin, nameRuleBook, { ruleBook: 'cmc' }).ruleBook).toBe('cmc');
    expect(refused(cabin, nameRuleBook, { ruleBook: 'cmk' })).toEqual(['unknown-rule-book']);
    expect(done(cabin, embedRuleBook, { ruleBook: { ...book, id: 'own' } }).ruleBook).toMatchObject({ id: 'own' });
    const { issues } = embedRuleBook.run(cabin, { ruleBook: { ...book, decision: { rule: 'guarded', confidence: 7, basis: 'x' } } });
    expect(issues[0]?.path).toBe('ruleBook.decision.confidence');
  });

  test('a cabin can be made from nothing', () => {
    const empty = emptyCabin('Neue Kabine', '2031-03-01');
    expect(restoreCabin(empty)).toMatchObject({ value: empty, issues: [{ code: 'nothing-to-judge', severity: 'warning' }] });
    const zoned = done(done(empty, addZone, { name: 'Dash' }), addSupplier, { name: 'Quill (invented)' });
    expect(done(zoned, addPart, { name: 'Lid', zone: 'dash', supplier: 'quill-invented', material: 'painted' }).parts[0]?.sources[0]?.id).toBe('lid-quill-invented');
  });
});

describe('forms and menus', () => {
  const byId = (id: string) => actions.find((action) => action.id === id) as Action;

  test('the selection answers what it can, and says what is missing', () => {
    expect(byId('part.remove').enabled(cabin, {})).toBe('Select a part first.');
    expect(byId('part.remove').enabled(cabin, { parts: ['console'] })).toBe(true);
    expect(byId('source.remove').enabled(cabin, { parts: ['console'], source: 'black' })).toBe('A part has at least one source.');
    expect(byId('joint.add').fromSelection({ parts: ['console', 'dash-upper'] })).toEqual({ first: 'console', second: 'dash-upper' });
    expect(byId('readings.set-outlier').fromSelection({ specimen: 'do-1', readings: [1, 2] })).toEqual({ specimen: 'do-1', readings: [1, 2] });
    expect(byId('run.add').fromSelection({ parts: ['console', 'dash-lower', 'dash-upper'] })).toEqual({ parts: ['console', 'dash-lower', 'dash-upper'] });
  });

  test('a form begins with what is there', () => {
    expect(byId('joint.set').current(cabin, { joint: 'j2' })).toEqual({ kind: 'gap', gapMm: 6, lengthMm: 200, viewMm: 800, tiltDeg: 15 });
    expect(byId('source.set-grain').current(cabin, { part: 'dash-upper', source: 'skin' })).toEqual({ grain: 'pebble', depthUm: 120, vdiClass: 30 });
    expect(byId('part.set-target').current(cabin, { part: 'dash-lower' })).toEqual({ master: 'm-slate', colourLimit: 0.8 });
  });

  test('what can be named is listed with words', () => {
    expect(namedItems(cabin, 'source', 'dash-lower')).toEqual([{ id: 'ppx', name: 'Ferrow (invented), moulded' }, { id: 'alt', name: 'Quill (invented), moulded' }]);
    expect(namedItems(cabin, 'joint')[0]).toEqual({ id: 'j1', name: 'Dash upper and Dash lower' });
  });
});
