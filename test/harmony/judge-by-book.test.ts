import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parseCabin } from '../../src/cabin/index.ts';
import { judgeByBook, judgeByBookInSteps } from '../../src/harmony/judge-by-book.ts';
import { judgeCabin } from '../../src/harmony/judge.ts';
import { cmcBook } from '../../src/rules/cmc-book.ts';
import { defaultBook } from '../../src/rules/default-book.ts';
import type { PairRule, RuleBook } from '../../src/rules/rule-book.ts';
import { smallCabin } from '../support/small-cabin.ts';

/** Judging the whole cabin anew is the judge of what judging by another book on top of a judgement gives. */
const slate = parseCabin(readFileSync('demo-data/shuttle-slate.cabin.json', 'utf8'), 'shuttle-slate').value!;
const basis = 'x';
const rule = (more: Partial<PairRule>): RuleBook => ({ ...defaultBook, id: 'own', rules: [...defaultBook.rules, { id: 'r', pair: ['moulded', 'soft-skin'], basis, ...more }] });
const row = (material: string, more: object): RuleBook => ({ ...defaultBook, materials: defaultBook.materials.map((one) => (one.material === material ? { ...one, ...more } : one)) });

const books: readonly (readonly [string, RuleBook])[] = [
  ['the same book by another name', { ...defaultBook, id: 'own', name: 'Own' }],
  ['a colour limit of a pair', rule({ colour: { limit: 0.3, kL: 2 } })],
  ['a gloss limit of a pair', rule({ gloss: { kind: 'limit', limit: 0.1, angle: 60, basis } })],
  ['the standing of a check', rule({ standing: { gloss: 'advisory' }, defaultIntent: { colour: 'contrast' } })],
  ['a class of material', row('moulded', { colourLimit: 0.2, readingSd: [0.5, 0.2, 0.2], glossSd: 1, masterColourLimit: 0.1 })],
  ['the family of a material', row('leather', { family: 'hard' })],
  ['the confidence', { ...defaultBook, decision: { ...defaultBook.decision, confidence: 0.6 } }],
  ['the lights', { ...defaultBook, lights: [{ light: 'D50', factor: 0.5, standing: 'required', basis }, { light: 'A', factor: 1, standing: 'required', basis }] }],
  ['the caps and the geometries', { ...defaultBook, caps: [], geometryOrder: ['di:8', '45:0'] }],
  ['the factors', { ...defaultBook, gapFactor: { ...defaultBook.gapFactor, enabled: true }, kinds: { ...defaultBook.kinds, edge: 0.5, sightline: 2 } }],
  ['the tone step and the texture', { ...defaultBook, toneStep: { ...defaultBook.toneStep, minDL: 8 }, texture: { ...defaultBook.texture, ratio: [0.99, 1.01] } }],
  ['another formula', cmcBook],
];

// The demo is large: it goes there and back by the first five changes.
test.each([['the small cabin', smallCabin(), books] as const, ['the demo', slate, books.slice(0, 5)] as const])('%s: by changes of the book, there and back', (_, cabin, changes) => {
  const first = judgeCabin(cabin, defaultBook);
  for (const [what, book] of changes) {
    const wanted = judgeCabin(cabin, book);
    const there = judgeByBook(first, book);
    expect(there.judgement, what).toEqual(wanted.judgement);
    expect(there.joints.map(({ input }) => input.book === there.context.book), what).not.toContain(false);
    expect(judgeByBook(there, defaultBook).judgement, `${what}, back`).toEqual(first.judgement);
  }
}, 300_000);

test('only the joints that a changed rule reaches are judged anew, and the share done is told after each', () => {
  const first = judgeCabin(slate, defaultBook);
  const steps = judgeByBookInSteps(first, rule({ colour: { limit: 0.3 } }));
  const shares: number[] = [];
  let step = steps.next();
  while (step.done !== true) {
    shares.push(step.value);
    step = steps.next();
  }
  const reached = step.value.judgement.joints.filter(({ rule: id }) => id === 'r').length;
  expect(reached).toBeGreaterThan(0);
  expect(shares).toHaveLength(reached);
  expect([...shares].sort((a, b) => a - b)).toEqual(shares);
  const kept = step.value.judgement.joints.filter((result, place) => result === first.judgement.joints[place]).length;
  expect(kept).toBe(slate.joints.length - reached);
});
