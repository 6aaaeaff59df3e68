import { describe, expect, test } from 'vitest';
import type { MendCard } from '../../src/plan/index.ts';
import { mendCardText, mendCsv } from '../../src/report/mend-card-text.ts';
import { smallCabin } from '../support/small-cabin.ts';

const cabin = smallCabin();
const [part] = cabin.parts;
const card: MendCard = {
  parts: [part!.id], supplier: 'ferrow', source: 'skin', shift: { part: part!.id, dL: -0.5, da: 0.25, db: 0, dGloss: -0.6 },
  from: [26, -0.2, -1], to: [25.5, 0.05, -1], gloss: { angle: 60, from: 1.6, to: 1 }, toolChange: true, joints: [cabin.joints[0]!.id],
  spectrum: { startNm: 400, stepNm: 10, from: [0.05, 0.051], to: [0.048, 0.0495] },
  basis: 'CIELAB for the 10° observer under D65; joints judged by the rule book House under D65 and A',
  sentences: ['Ferrow: make it darker.', 'It mends the joint x, once all cards are met.', 'This is a target, not a forecast of a recipe.'],
};

describe('the card of a part as text', () => {
  const text = mendCardText(cabin, card);
  test('says what is asked in words, then the numbers, the target as a target', () => {
    expect(text.startsWith(`${part!.name}\nFor `)).toBe(true);
    expect(text).toContain('Ferrow: make it darker.');
    expect(text).toContain('not a forecast of a recipe');
    expect(text).toContain('Shift         dL* −0.50, da* +0.25, db* 0.00');
    expect(text).toContain('Target        L*, a*, b* 25.50, 0.05, −1.00 under D65');
    expect(text).toContain('by a change of the tool');
    expect(text).toContain('Basis         CIELAB for the 10° observer under D65; joints judged by the rule book House under D65 and A');
    expect(text).toContain('  410    0.0510   0.0495');
  });

  test('ends with the caution on flammability, emissions, airbag cover and glare', () => {
    expect(text.trimEnd()).toMatch(/flammability, emissions, airbag cover and glare .* local codes and the responsible licensed engineer decide\.$/);
  });

  test('as a table: a row a part, numbers in full', () => {
    const [head, row, rest] = mendCsv(cabin, [card]).split('\r\n');
    expect(head!.split(',').slice(0, 5)).toEqual(['supplier', 'part', 'id', 'partNumber', 'source']);
    expect(row).toContain(`${part!.id},X-100,skin,-0.5,0.25,0,-0.6,26,-0.2,-1,25.5,0.05,-1,60,1.6,1,yes,`);
    expect(rest).toBe('');
  });
});
