import fc from 'fast-check';
import { expect, test } from 'vitest';
import { matching } from '../../components/model/matching.ts';

const choices = ['Console lid', 'Lid of the console', 'Dash upper', 'Dash lower'].map((name, place) => ({ id: `p${place}`, name }));
const found = (search: string): readonly string[] => matching(choices, search).map(({ name }) => name);

test('a search finds what has all of its words, in name or id, whatever the case, names that begin with it first', () => {
  expect(found('')).toEqual(choices.map(({ name }) => name));
  expect(found('LID')).toEqual(['Lid of the console', 'Console lid']);
  expect(found('lid console')).toEqual(['Console lid', 'Lid of the console']);
  expect(found('p3')).toEqual(['Dash lower']);
  expect(found('dash p2')).toEqual(['Dash upper']);
  expect(found('door')).toEqual([]);
});

test('one more word never finds more, and what is found is among the choices', () => {
  const words = fc.constantFrom('lid', 'con', 'dash', 'p1', 'e', 'z');
  fc.assert(fc.property(fc.array(words, { maxLength: 3 }), words, (some, more) => {
    const [wide, narrow] = [found(some.join(' ')), found([...some, more].join(' '))];
    expect(new Set(wide).size).toBe(wide.length);
    for (const name of narrow) expect(wide).toContain(name);
  }));
});
