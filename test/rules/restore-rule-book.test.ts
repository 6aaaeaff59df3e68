import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { builtInRuleBooks, compileRuleBook, parseRuleBook, restoreRuleBook, ruleBookById, serialiseRuleBook } from '../../src/rules/index.ts';

type Json = Record<string, unknown>;
const fresh = (): Json => JSON.parse(JSON.stringify(ruleBookById('ciede2000'))) as Json;

/** A copy of the default book with one place changed; `undefined` takes the place away. */
function changed(path: string, value: unknown): Json {
  const root = fresh();
  const steps = path.split(/[.[\]]+/).filter((step) => step !== '');
  const last = steps.pop()!;
  const parent = steps.reduce<Json>((node, step) => node[step] as Json, root);
  if (value === undefined) delete parent[last];
  else parent[last] = value;
  return root;
}

const rule = (more: Json): Json => ({ id: 'extra', pair: ['moulded', 'leather'], basis: 'common practice, no source', ...more });
const withRule = (more: Json): Json => changed('rules', [rule(more)]);

// [what is wrong, the document, code, path of the issue]
const faults: readonly (readonly [string, unknown, string, string | undefined])[] = [
  ['no object', 7, 'wrong-type', undefined],
  ['no value', undefined, 'wrong-type', undefined],
  ['a list', [], 'wrong-type', undefined],
  ['another format', changed('format', 'adjoin-cabin'), 'unknown-format', 'format'],
  ['a later version', changed('version', 2), 'unknown-version', 'version'],
  ['no id', changed('id', undefined), 'missing-field', 'id'],
  ['an id with a slash', changed('id', '../x'), 'bad-id', 'id'],
  ['an empty name', changed('name', ''), 'empty-text', 'name'],
  ['an unknown formula', changed('formula', 'ciede200'), 'unknown-formula', 'formula'],
  ['an observer of 5 degrees', changed('observer', 5), 'unknown-value', 'observer'],
  ['a confidence of 1', changed('decision.confidence', 1), 'out-of-range', 'decision.confidence'],
  ['a confidence as text', changed('decision.confidence', '0.95'), 'wrong-type', 'decision.confidence'],
  ['an unknown decision rule', changed('decision.rule', 'gaurded'), 'unknown-value', 'decision.rule'],
  ['an unknown geometry', changed('geometryOrder[0]', '45/0'), 'unknown-geometry', 'geometryOrder[0]'],
  ['a geometry twice', changed('geometryOrder[1]', '45:0'), 'duplicate-geometry', 'geometryOrder[1]'],
  ['no lights', changed('lights', []), 'too-few', 'lights'],
  ['only shown lights', changed('lights', [{ light: 'D65', factor: 1, standing: 'shown', basis: 'x' }]), 'no-required-light', 'lights'],
  ['a light twice', changed('lights[1].light', 'D65'), 'duplicate-light', 'lights[1]'],
  ['a light factor of 0', changed('lights[0].factor', 0), 'out-of-range', 'lights[0].factor'],
  ['a light without basis', changed('lights[0].basis', undefined), 'missing-field', 'lights[0].basis'],
  ['an empty basis', changed('lights[0].basis', '  '), 'empty-text', 'lights[0].basis'],
  ['a check without standing', changed('standing.cap', undefined), 'missing-field', 'standing.cap'],
  ['an unknown standing', changed('standing.colour', 'optional'), 'unknown-standing', 'standing.colour'],
  ['no materials', changed('materials', []), 'too-few', 'materials'],
  ['a material twice', changed('materials[1].material', 'moulded'), 'duplicate-material', 'materials[1].material'],
  ['a material named *', changed('materials[10].material', '*'), 'reserved-name', 'materials[10].material'],
  ['a negative limit', changed('materials[0].colourLimit', -0.7), 'negative', 'materials[0].colourLimit'],
  ['an infinite limit', changed('materials[0].colourLimit', Infinity), 'not-finite', 'materials[0].colourLimit'],
  ['a limit that is no number', changed('materials[0].colourLimit', Number.NaN), 'not-finite', 'materials[0].colourLimit'],
  ['two standard deviations', changed('materials[0].readingSd', [0.1, 0.1]), 'wrong-length', 'materials[0].readingSd'],
  ['a standard deviation of 0', changed('materials[0].readingSd', [0.1, 0, 0.1]), 'out-of-range', 'materials[0].readingSd[1]'],
  ['half a spot', changed('materials[0].wanted.spots', 2.5), 'not-whole', 'materials[0].wanted.spots'],
  ['an unknown gloss rule', changed('materials[0].gloss.kind', 'levels'), 'unknown-gloss-rule', 'materials[0].gloss.kind'],
  ['an unknown gloss angle', changed('materials[0].gloss.angle', 45), 'unknown-angle', 'materials[0].gloss.angle'],
  ['a gloss formula that can be 0', changed('materials[0].gloss.limit', '0.1 * meanGloss'), 'expression-out-of-range', 'materials[0].gloss.limit'],
  ['a gap formula with an unknown name', changed('gapFactor.formula', '1 + gapMM2'), 'unknown-name', 'gapFactor.formula'],
  ['a texture formula with an unknown name', changed('textureLightness.formula', '1 + contrast'), 'unknown-name', 'textureLightness.formula'],
  ['a texture formula that can be 0', changed('textureLightness.formula', 'minVisibleContrast / 10'), 'expression-out-of-range', 'textureLightness.formula'],
  ['a switch as text', changed('textureLightness.enabled', 'off'), 'wrong-type', 'textureLightness.enabled'],
  ['kL from texture without basis', changed('textureLightness.basis', undefined), 'missing-field', 'textureLightness.basis'],
  ['no light to see textures by', changed('visibleTexture.illuminanceLx', 0), 'out-of-range', 'visibleTexture.illuminanceLx'],
  ['a field of no size', changed('visibleTexture.fieldMm', -1), 'negative', 'visibleTexture.fieldMm'],
  ['a visible limit that can be 0', changed('visibleTexture.limit', 'minVisibleContrast ^ 0.6'), 'expression-out-of-range', 'visibleTexture.limit'],
  ['a limit of haze without basis', changed('materials[8].gloss.haze.basis', undefined), 'missing-field', 'materials[8].gloss.haze.basis'],
  ['a limit of haze of 0', changed('materials[8].gloss.haze.limit', 0), 'out-of-range', 'materials[8].gloss.haze.limit'],
  ['a limit of haze at 60 degrees', changed('materials[0].gloss.haze', { limit: 5, basis: 'x' }), 'contradiction', 'materials[0].gloss.haze'],
  ['a texture ratio above 1', changed('texture.ratio', [1.1, 1.25]), 'out-of-range', 'texture.ratio[0]'],
  ['a tone step the wrong way round', changed('toneStep.minDL', 20), 'out-of-order', 'toneStep'],
  ['a kind without factor', changed('kinds.seam', undefined), 'missing-field', 'kinds.seam'],
  ['a correlation of 2', changed('assumed.correlation.sameSession', 2), 'out-of-range', 'assumed.correlation.sameSession'],
  ['a cap id twice', changed('caps[1].id', 'upper-dash-gloss'), 'duplicate-id', 'caps[1].id'],
  ['a cap on chroma', changed('caps[0].quantity', 'chroma'), 'unknown-quantity', 'caps[0].quantity'],
  ['a rule of three materials', withRule({ pair: ['moulded', 'leather', 'carpet'] }), 'wrong-length', 'rules[0].pair'],
  ['a rule of an unknown material', withRule({ pair: ['moulded', 'lether'] }), 'unknown-material', 'rules[0].pair[1]'],
  ['two rules of one id', changed('rules', [rule({}), rule({})]), 'duplicate-id', 'rules[1].id'],
  ['a rule of an unknown kind', withRule({ kind: 'corner' }), 'unknown-kind', 'rules[0].kind'],
  ['a rule of an unknown intent', withRule({ intent: 'same' }), 'unknown-intent', 'rules[0].intent'],
  ['a rule that contradicts itself', withRule({ intent: 'match', defaultIntent: { colour: 'contrast' } }), 'contradiction', 'rules[0].defaultIntent.colour'],
  ['a rule without basis', withRule({ basis: undefined }), 'missing-field', 'rules[0].basis'],
  ['a component without limit', withRule({ colour: { components: [{ component: 'dL', basis: 'x' }] } }), 'missing-field', 'rules[0].colour.components[0]'],
  ['a component the wrong way round', withRule({ colour: { components: [{ component: 'dL', min: 1, max: -1, basis: 'x' }] } }), 'out-of-order', 'rules[0].colour.components[0]'],
  ['an unknown component', withRule({ colour: { components: [{ component: 'dE', max: 1, basis: 'x' }] } }), 'unknown-component', 'rules[0].colour.components[0].component'],
  ['a limit that escapes', withRule({ colour: { limit: 'meanL.constructor' } }), 'bad-expression', 'rules[0].colour.limit'],
  ['a limit as a list', withRule({ colour: { limit: [1] } }), 'wrong-type', 'rules[0].colour.limit'],
  ['a limit of 0', withRule({ colour: { limit: 0 } }), 'expression-out-of-range', 'rules[0].colour.limit'],
];

describe('restoreRuleBook', () => {
  it.each(faults)('refuses %s', (_title, document, code, path) => {
    const { value, issues } = restoreRuleBook(document);
    expect(value).toBeUndefined();
    expect(issues.map((issue) => [issue.code, issue.path])).toContainEqual([code, path]);
  });

  it('lists all faults of a book, not the first only', () => {
    const book = fresh();
    Object.assign(book, { id: '', formula: 'x', toneStep: null, contrast: { minDifference: -1 } });
    (book['lights'] as Json[])[2]!['factor'] = 'big';
    expect(restoreRuleBook(book).issues.map((issue) => issue.path)).toEqual(['id', 'formula', 'lights[2].factor', 'toneStep', 'contrast.minDifference', 'contrast.basis']);
  });

  it('tells where in a formula the fault stands', () => {
    const { issues } = restoreRuleBook(withRule({ colour: { limit: '0.5 + gapmm' } }));
    expect(issues).toMatchObject([{ code: 'unknown-name', path: 'rules[0].colour.limit', hint: 'Did you mean "gapMm"?' }]);
    expect(issues[0]!.found).toBe('"gapmm" at character 7 of "0.5 + gapmm"');
  });

  it('warns of a light that only a cabin can know, and of a field it does not know', () => {
    const { value, issues } = restoreRuleBook({ ...changed('lights[1].light', 'LED-B33'), colourLimits: 3 });
    expect(value).toBeDefined();
    expect(issues).toMatchObject([
      { code: 'unknown-field', severity: 'warning', path: 'colourLimits' },
      { code: 'unknown-light', severity: 'warning', path: 'lights[1].light', hint: expect.stringContaining('LED-B3') },
    ]);
  });

  it('gives a book without them the way of looking at textures, and kL from texture switched off', () => {
    const book = fresh();
    delete book['visibleTexture'];
    delete book['textureLightness'];
    const { value, issues } = restoreRuleBook(book);
    expect(issues).toEqual([]);
    expect(value).toEqual(ruleBookById('ciede2000'));
    expect(value!.textureLightness.enabled).toBe(false);
  });

  it('takes a material of the user\'s own with its rule', () => {
    const book = fresh();
    (book['materials'] as Json[]).push({ ...(book['materials'] as Json[])[0], material: 'cork', family: 'wood' });
    book['rules'] = [rule({ pair: ['cork', '*'], colour: { limit: 1.4 } })];
    const { value, issues } = restoreRuleBook(book);
    expect(issues).toEqual([]);
    expect(compileRuleBook(value!).value!.materialClass('cork')).toMatchObject({ family: 'wood' });
  });

  it('never throws and never lets a non-finite number through, whatever is mutated', () => {
    const places: string[] = [];
    const walk = (node: unknown, path: string): void => {
      if (typeof node !== 'object' || node === null) return;
      for (const [key, value] of Object.entries(node)) {
        const place = Array.isArray(node) ? `${path}[${key}]` : path === '' ? key : `${path}.${key}`;
        if (!/[^\w.[\]-]/.test(place)) places.push(place);
        walk(value, place);
      }
    };
    walk(fresh(), '');
    const junk = fc.oneof(
      fc.constantFrom<unknown>(null, undefined, true, '', 'x', '1 / 0', 'end', Number.NaN, Infinity, -Infinity, -1, 0, 1e308, [], {}, [null], { __proto__: null }),
      fc.double(), fc.string(), fc.anything({ maxDepth: 2 }),
    );
    fc.assert(fc.property(fc.constantFrom(...places), junk, (path, value) => {
      const { value: book, issues } = restoreRuleBook(changed(path, value));
      expect(book === undefined).toBe(issues.some((issue) => issue.severity === 'error'));
      if (book !== undefined) expect(compileRuleBook(book).value).toBeDefined();
      const check = (node: unknown): void => {
        if (typeof node === 'number') expect(Number.isFinite(node)).toBe(true);
        else if (typeof node === 'object' && node !== null) Object.values(node).forEach(check);
      };
      check(book);
    }), { seed: 40, numRuns: 600 });
  });
});

describe('files of rule books', () => {
  it.each(builtInRuleBooks.map((book) => [book.id, book] as const))('come back as they went: %s', (_id, book) => {
    const text = serialiseRuleBook(book);
    const { value, issues } = parseRuleBook(text, 'rules.json');
    expect(issues).toEqual([]);
    expect(value).toEqual(book);
    expect(serialiseRuleBook(value!)).toBe(text);
  });

  it('are written alike however the keys were ordered', () => {
    const book = ruleBookById('cmc')!;
    expect(serialiseRuleBook(Object.fromEntries(Object.entries(book).toReversed()) as unknown as typeof book)).toBe(serialiseRuleBook(book));
  });

  it('give faults with file, line and column', () => {
    const text = serialiseRuleBook(ruleBookById('ciede2000')!).replace('"observer": 10', '"observer": 12');
    const line = text.split('\n').findIndex((each) => each.includes('"observer": 12')) + 1;
    const { value, issues } = parseRuleBook(text, 'rules.json');
    expect(value).toBeUndefined();
    expect(issues).toMatchObject([{ code: 'unknown-value', path: 'observer', file: 'rules.json', line, column: 15 }]);
  });

  it('that are no JSON, empty, or hold a key twice are refused with their place', () => {
    expect(parseRuleBook('{"format": }').issues[0]).toMatchObject({ line: 1, column: 12 });
    expect(parseRuleBook('').value).toBeUndefined();
    expect(parseRuleBook('').issues).not.toEqual([]);
    const twice = parseRuleBook('{"format": "adjoin-rules",\n "format": "adjoin-rules"}');
    expect(twice.value).toBeUndefined();
    expect(twice.issues).toContainEqual(expect.objectContaining({ code: 'duplicate-key', line: 2 }));
  });
});

describe('compileRuleBook', () => {
  it('refuses a faulty book and says why', () => {
    const { value, issues } = compileRuleBook({ ...ruleBookById('cmc')!, materials: [] });
    expect(value).toBeUndefined();
    expect(issues).toMatchObject([{ code: 'too-few', path: 'materials' }]);
  });
});
