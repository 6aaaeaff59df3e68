import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { builtInRuleBooks, compileRuleBook, ruleBookById, typicalVariables } from '../../src/rules/index.ts';
import type { CompiledRuleBook, PairRule, ResolvedRule, RuleBook, RuleSide, RuleVariables } from '../../src/rules/index.ts';

// Limits behind the expected values: the default table, common practice, no source.
const book = ruleBookById('ciede2000')!;
const compile = (changed: Partial<RuleBook> = {}): CompiledRuleBook => {
  const { value, issues } = compileRuleBook({ ...book, ...changed });
  expect(issues).toEqual([]);
  return value!;
};
const side = (material: string, more: Partial<RuleSide> = {}): RuleSide => ({ material, surface: 'solid', zone: 'door', ...more });
const compiled = compile();
const resolve = (a: string, b: string, joint: Parameters<CompiledRuleBook['resolve']>[1] = { kind: 'edge' }, variables: Partial<RuleVariables> = {}): ResolvedRule =>
  compiled.resolve([side(a), side(b)], joint, { ...typicalVariables, ...variables });
const withRules = (rules: readonly PairRule[], a: RuleSide, b: RuleSide, joint: Parameters<CompiledRuleBook['resolve']>[1] = { kind: 'edge' }): ResolvedRule =>
  compile({ rules }).resolve([a, b], joint, typicalVariables);
const basis = 'common practice, no source';

describe('classes of two materials', () => {
  it.each([
    ['moulded', 'moulded', 0.7, 1, 0.7],
    ['moulded', 'painted', 0.7, 1, 0.7],
    ['moulded', 'soft-skin', 1.0, 1, 0.7],
    ['moulded', 'leather', 1.2, 1, 0.7],
    ['leather', 'soft-skin', 1.0, 1, 0.8],
    ['textile', 'headliner', 1.2, 2, 1.5],
    ['textile', 'carpet', 1.5, 2, 1.5],
    ['moulded', 'carpet', 1.7, 1, 0.7],
    ['leather', 'thread', 1.7, 1, 1.0],
    ['gloss-black', 'decor-film', 1.0, 1, 0.8],
    ['gloss-black', 'painted', 1.0, 1, 0.7],
    ['metallised', 'moulded', 1.7, 1, 0.7],
  ])('%s with %s: limit %d, kL %d, cap %d', (a, b, limit, kL, cap) => {
    const { colour } = resolve(a, b);
    expect([colour.limit, colour.kL, colour.kC, colour.kH]).toEqual([limit, kL, 1, 1]);
    expect(colour.components).toEqual([{ component: 'dL', min: -cap, max: cap, basis: expect.stringContaining('common practice') }]);
  });

  it('cap dL* only where the mean L* is below 35', () => {
    expect(resolve('moulded', 'painted', { kind: 'edge' }, { meanL: 34.99 }).colour.components).toHaveLength(1);
    expect(resolve('moulded', 'painted', { kind: 'edge' }, { meanL: 35 }).colour.components).toEqual([]);
    expect(resolve('metallised', 'metallised', { kind: 'edge' }, { meanL: 20 }).colour.components).toEqual([]);
  });

  it('give every light its own limit', () => {
    expect(resolve('moulded', 'moulded').colour.lights.map(({ light, limit, standing }) => [light, limit, standing])).toEqual([
      ['D65', 0.7, 'required'], ['A', 0.84, 'required'], ['FL11', 0.98, 'required'], ['LED-B3', 0.91, 'required'],
      ['ID65', 0.7, 'shown'], ['FL2', 0.7, 'shown'], ['LED-B5', 0.7, 'shown'], ['P2300', 0.7, 'shown'],
    ]);
  });

  it('say how the limit came about', () => {
    const rule = resolve('textile', 'moulded');
    expect(rule.id).toBe('moulded + textile');
    expect(rule.why).toBe('No rule of the book speaks of this joint, so the classes decide: moulded is hard and textile is pile; '
      + 'the larger of 0.7 and 1.2 plus 0.2 for unlike families is 1.4.');
  });

  it('are advisory, and bound to one geometry, with metallised', () => {
    expect(resolve('metallised', 'moulded').colour).toMatchObject({ standing: 'advisory', sameGeometryOnly: true });
    expect(resolve('moulded', 'painted').colour.standing).toBe('required');
    expect(resolve('moulded', 'painted').colour.sameGeometryOnly).toBeUndefined();
  });
});

describe('gloss', () => {
  it.each([
    ['moulded', 'moulded', 2, 60, 0.5],
    ['moulded', 'leather', 2, 60, 0.6],
    ['painted', 'painted', 3, 60, 0.5],
    ['painted', 'painted', 12, 60, 1.2],
    ['painted', 'painted', 70, 60, 7],
    ['painted', 'painted', 70.1, 20, 5],
    ['moulded', 'painted', 8, 60, 0.8],
    ['moulded', 'painted', 3, 60, 0.5],
    ['gloss-black', 'gloss-black', 88, 20, 5],
    ['gloss-black', 'gloss-black', 30, 20, 5],
    ['gloss-black', 'decor-film', 80, 20, 5],
    ['gloss-black', 'decor-film', 40, 60, 4],
    ['gloss-black', 'moulded', 45, 60, 0.5],
    ['metallised', 'metallised', 20, 60, 2],
    ['metallised', 'metallised', 110, 20, 5],
  ])('of %s with %s at a mean of %d GU: angle %d, limit %d', (a, b, meanGloss, angle, limit) => {
    expect(resolve(a, b, { kind: 'edge' }, { meanGloss }).gloss).toMatchObject({ applicable: true, angle, limit });
  });

  it('of a grained pair stays at 60 degrees whatever its level, unless the rule names another angle', () => {
    // Common practice, no source: 60 degrees for grained parts; 85 on request (ASTM D523 names it below 10 GU60).
    const grained = (material: string, meanGloss: number, rules: readonly PairRule[] = []) =>
      compile({ rules }).resolve([side(material, { grain: 'fine' }), side(material)], { kind: 'edge' }, { ...typicalVariables, meanGloss }).gloss;
    expect(grained('painted', 88)).toMatchObject({ applicable: true, angle: 60, limit: 8.8 });
    expect(grained('decor-film', 75)).toMatchObject({ applicable: true, angle: 60, limit: 7.5 });
    const asked: PairRule = { id: 'sheen', pair: ['painted', 'painted'], basis, gloss: { kind: 'limit', limit: 2, angle: 85, basis } };
    expect(grained('painted', 3, [asked])).toMatchObject({ applicable: true, angle: 85, limit: 2 });
  });

  it('limits haze at 20 degrees, by the larger limit of the two sides', () => {
    const haze = (a: string, b: string, meanGloss = 88) => {
      const { gloss } = resolve(a, b, { kind: 'edge' }, { meanGloss });
      return gloss.applicable ? gloss.haze?.limit : gloss.reason;
    };
    expect(haze('gloss-black', 'gloss-black')).toBe(10);
    expect(haze('gloss-black', 'decor-film')).toBe(10);
    expect(haze('gloss-black', 'decor-film', 40)).toBeUndefined();
    expect(haze('painted', 'painted')).toBeUndefined();
    const materials = book.materials.map((row) => (row.material === 'decor-film' ? { ...row, gloss: { kind: 'limit' as const, limit: 5, angle: 20 as const, haze: { limit: 14, basis: 'agreed' }, basis } } : row));
    const both = compile({ materials });
    for (const pair of [['gloss-black', 'decor-film'], ['decor-film', 'gloss-black']] as const) {
      expect(both.resolve([side(pair[0]), side(pair[1])], { kind: 'edge' }, { ...typicalVariables, meanGloss: 88 }).gloss).toMatchObject({ haze: { limit: 14, basis: 'agreed' } });
    }
  });

  it('is not applicable to pile, nor to metal against polymers', () => {
    expect(resolve('moulded', 'textile').gloss).toMatchObject({ applicable: false, reason: expect.stringContaining('pile') });
    expect(resolve('metallised', 'gloss-black').gloss).toMatchObject({ applicable: false, reason: expect.stringContaining('metal') });
  });

  it('of metal with metal is advice', () => {
    expect(resolve('metallised', 'metallised').gloss).toMatchObject({ standing: 'advisory' });
    expect(resolve('moulded', 'moulded').gloss).toMatchObject({ standing: 'required' });
  });

  it('falls back to the floor of a level rule where no gloss is known', () => {
    expect(resolve('painted', 'painted', { kind: 'edge' }, { meanGloss: Number.NaN }).gloss).toMatchObject({ applicable: true, angle: 60, limit: 0.5 });
  });
});

describe('default intents', () => {
  it.each([
    ['moulded', 'leather', 'match', 'match'],
    ['moulded', 'soft-skin', 'match', 'match'],
    ['gloss-black', 'decor-film', 'match', 'match'],
    ['gloss-black', 'painted', 'match', 'free'],
    ['metallised', 'gloss-black', 'free', 'match'],
    ['metallised', 'moulded', 'free', 'free'],
    ['metallised', 'metallised', 'match', 'match'],
  ])('of %s with %s: colour %s, gloss %s', (a, b, colour, gloss) => {
    expect(resolve(a, b).intent).toMatchObject({ colour, gloss });
  });

  it('match texture only where both sides have the same grain', () => {
    const grain = (a?: string, b?: string): string => compiled.resolve([side('moulded', { grain: a }), side('soft-skin', { grain: b })], { kind: 'edge' }, typicalVariables).intent.texture;
    expect([grain('k1', 'k1'), grain('k1', 'k2'), grain('k1'), grain()]).toEqual(['match', 'free', 'free', 'free']);
  });

  it('give way to the joint, each by itself', () => {
    expect(resolve('metallised', 'moulded', { kind: 'edge', intent: { colour: 'match' } }).intent).toEqual({ colour: 'match', gloss: 'free', texture: 'free' });
    expect(resolve('moulded', 'moulded', { kind: 'edge', intent: { colour: 'tone-step', texture: 'contrast' } }).intent)
      .toEqual({ colour: 'tone-step', gloss: 'match', texture: 'contrast' });
  });

  it('set a patterned surface free against others and leave it to the eye', () => {
    const film = side('decor-film', { surface: 'patterned' });
    const rule = compiled.resolve([film, side('painted')], { kind: 'edge' }, typicalVariables);
    expect(rule.intent.colour).toBe('free');
    expect(rule.colour).toMatchObject({ notJudgedKind: 'by eye', notJudged: expect.stringContaining('judge visually against boundary samples') });
    const asked = compiled.resolve([side('painted'), film], { kind: 'edge', intent: { colour: 'match' } }, typicalVariables);
    expect(asked.colour.notJudgedKind).toBe('by eye');
    const named = compiled.resolve([{ ...film, namedColours: true }, side('painted')], { kind: 'edge', intent: { colour: 'match' } }, typicalVariables);
    expect(named.colour.notJudged).toBeUndefined();
  });

  it('leave melange, effect and translucent surfaces to the readings', () => {
    for (const surface of ['melange', 'effect', 'translucent'] as const) {
      expect(compiled.resolve([side('painted', { surface }), side('painted')], { kind: 'edge' }, typicalVariables).colour.notJudged).toBeUndefined();
    }
  });
});

describe('kinds and gaps', () => {
  it('widen a sightline by 1.3, the cap of dL* with it, and nothing else', () => {
    const rule = resolve('moulded', 'moulded', { kind: 'sightline' });
    expect(rule.colour.limit).toBe(0.91);
    expect(rule.colour.components[0]).toMatchObject({ min: -0.91, max: 0.91 });
    expect(rule.factors).toEqual([{ name: 'kind of joint: sightline', value: 1.3, basis }]);
    for (const kind of ['edge', 'gap', 'step', 'seam'] as const) {
      expect(resolve('moulded', 'moulded', { kind }).colour.limit).toBe(0.7);
      expect(resolve('moulded', 'moulded', { kind }).factors).toEqual([]);
    }
  });

  it('leave a gap out of account until the book switches it on', () => {
    expect(resolve('moulded', 'moulded', { kind: 'gap' }, { gapArcmin: 60 }).colour.limit).toBe(0.7);
  });

  // min(1.25, 1 + max(0, gapArcmin - 5) / 220), by hand. Assumption, no source.
  it.each([[0, 1], [5, 1], [25, 1 + 20 / 220], [49, 1.2], [60, 1.25], [600, 1.25]])('widen a gap of %d arcmin by %d where it is on', (gapArcmin, factor) => {
    const on = compile({ gapFactor: { ...book.gapFactor, enabled: true } });
    const rule = on.resolve([side('moulded'), side('moulded')], { kind: 'gap' }, { ...typicalVariables, gapArcmin });
    expect(rule.colour.limit).toBeCloseTo(0.7 * factor, 10);
    expect(rule.factors.map((each) => each.value)).toEqual(factor === 1 ? [] : [expect.closeTo(factor, 12)]);
    expect(on.resolve([side('moulded'), side('moulded')], { kind: 'sightline' }, { ...typicalVariables, gapArcmin }).colour.limit).toBe(0.91);
  });
});

describe('factors that are switched on deliberately', () => {
  const off = compile();
  const on = compile({ textureLightness: { ...book.textureLightness, enabled: true } });
  const of = (rules: CompiledRuleBook, a: string, b: string, variables: Partial<RuleVariables>, kind: 'gap' | 'sightline' = 'gap') =>
    rules.resolve([side(a), side(b)], { kind }, { ...typicalVariables, ...variables });
  const visible = (minVisibleContrast: number, maxVisibleContrast = 80): Partial<RuleVariables> => ({ minVisibleContrast, maxVisibleContrast });

  // clamp(1 + (minVisibleContrast - 10) / 40, 1, 2), by hand. Assumption, no source.
  it.each([[0, 1], [10, 1], [20, 1.25], [30, 1.5], [50, 2], [400, 2]])('a smoother side of %d thresholds has kL %d where it is on', (contrast, kL) => {
    const rule = of(on, 'moulded', 'moulded', visible(contrast, 500));
    expect(rule.colour.kL).toBeCloseTo(kL, 12);
    expect(rule.colour.limit).toBe(0.7);
    expect(of(off, 'moulded', 'moulded', visible(contrast, 500)).colour.kL).toBe(1);
    // The cap on dL* in the dark is not widened.
    expect(rule.colour.components[0]).toMatchObject({ min: -0.7, max: 0.7 });
    expect(rule.why.includes('from the texture of the smoother side')).toBe(kL !== 1);
  });

  it('the smoother side decides: the other one changes nothing', () => {
    expect(of(on, 'moulded', 'leather', visible(20, 20)).colour.kL).toBe(of(on, 'moulded', 'leather', visible(20, 500)).colour.kL);
    // Pile against a smooth part: the class gives 1, the smoother side's texture 1.25.
    expect(of(on, 'moulded', 'textile', visible(20)).colour.kL).toBe(1.25);
  });

  it('kL of the class stands where it is larger', () => {
    expect(of(on, 'textile', 'textile', visible(20)).colour).toMatchObject({ kL: 2 });
    expect(of(on, 'textile', 'textile', visible(20)).colour.kLFromTexture).toBeUndefined();
    expect(of(on, 'textile', 'textile', visible(20)).optionalFactors).toEqual([]);
  });

  it('a rule that gives kL keeps it, and a formula without kL has no use for it', () => {
    const own: PairRule = { id: 'own', pair: ['moulded', 'moulded'], basis, colour: { kL: 1.1 } };
    const ruled = compile({ textureLightness: { ...book.textureLightness, enabled: true }, rules: [own] });
    expect(of(ruled, 'moulded', 'moulded', visible(50)).colour.kL).toBe(1.1);
    expect(of(ruled, 'moulded', 'moulded', visible(50)).optionalFactors).toEqual([]);
    for (const formula of ['cmc', 'cie76'] as const) {
      const other = compile({ formula, ...(formula === 'cmc' ? { cmc: { l: 2, c: 1 } } : { cmc: undefined }), textureLightness: { ...book.textureLightness, enabled: true } });
      expect(of(other, 'moulded', 'moulded', visible(50)).colour.kL).toBe(1);
      expect(of(other, 'moulded', 'moulded', visible(50)).optionalFactors).toEqual([]);
    }
  });

  it('what is not known changes nothing and is named', () => {
    const unknown = of(on, 'moulded', 'moulded', visible(Number.NaN, Number.NaN));
    expect(unknown.colour.kL).toBe(1);
    expect(unknown.optionalFactors).toEqual([
      { name: 'kL from texture', enabled: true, value: undefined, unknown: ['minVisibleContrast'], basis: book.textureLightness.basis },
    ]);
    expect(of(off, 'moulded', 'moulded', visible(Number.NaN, Number.NaN)).optionalFactors).toEqual([]);
    expect(of(off, 'moulded', 'moulded', visible(Number.NaN, Number.NaN)).texture.visible.limit).toBeUndefined();
  });

  it('each stands beside the rule with its switch turned, on or off', () => {
    const both = { ...visible(30), gapArcmin: 49 };
    const shown = (rules: CompiledRuleBook) => of(rules, 'moulded', 'moulded', both).optionalFactors.map(({ name, enabled, value, otherwise }) => [name, enabled, value, otherwise?.kL, otherwise?.limit]);
    expect(shown(off)).toEqual([['kL from texture', false, 1.5, 1.5, 0.7], ['visible gap', false, 1.2, 1, 0.84]]);
    expect(shown(on)).toEqual([['kL from texture', true, 1.5, 1, 0.7], ['visible gap', false, 1.2, 1.5, 0.84]]);
    const all = compile({ textureLightness: { ...book.textureLightness, enabled: true }, gapFactor: { ...book.gapFactor, enabled: true } });
    expect(shown(all)).toEqual([['kL from texture', true, 1.5, 1, 0.84], ['visible gap', true, 1.2, 1.5, 0.7]]);
    expect(of(all, 'moulded', 'moulded', both, 'sightline').optionalFactors.map(({ name }) => name)).toEqual(['kL from texture']);
  });

  it('the limit of a visible difference grows with the texture it hides in', () => {
    // max(1, c ^ 0.6): 32 ^ 0.6 is 8.
    expect(of(off, 'moulded', 'moulded', visible(32)).texture.visible).toMatchObject({ illuminanceLx: 2000, fieldMm: 100, limit: expect.closeTo(8, 10) });
    expect(of(off, 'moulded', 'moulded', visible(0.5)).texture.visible.limit).toBe(1);
  });
});

describe('rules of pairs', () => {
  const rule = (id: string, pair: PairRule['pair'], limit: number | string, more: Partial<PairRule> = {}): PairRule => ({ id, pair, colour: { limit }, basis, ...more });
  const moulded = side('moulded', { zone: 'dash' });
  const leather = side('leather', { zone: 'door' });

  it('go before one another by materials, then qualifiers, then place in the book', () => {
    const all = [
      rule('two-stars', ['*', '*'], 2, { intent: 'match', kind: 'edge', zone: 'dash' }),
      rule('one-star', ['*', 'leather'], 3),
      rule('one-star-kind', ['moulded', '*'], 4, { kind: 'edge' }),
      rule('exact', ['leather', 'moulded'], 5),
      rule('exact-zone', ['moulded', 'leather'], 6, { zone: 'dash' }),
      rule('exact-kind', ['moulded', 'leather'], 7, { kind: 'edge' }),
      rule('exact-other', ['moulded', 'textile'], 8),
    ];
    const order = ['exact-kind', 'exact-zone', 'exact', 'one-star-kind', 'one-star', 'two-stars'];
    let rest = all;
    for (const id of order) {
      const won = withRules(rest, moulded, leather);
      expect(won.id).toBe(id);
      expect(won.colour.limit).toBe(rest.find((each) => each.id === id)!.colour!.limit);
      rest = rest.filter((each) => each.id !== id);
    }
    expect(withRules(rest, moulded, leather).id).toBe('leather + moulded');
  });

  it('ask for their intent, kind and zone', () => {
    const rules = [
      rule('contrast', ['moulded', 'leather'], 3, { intent: 'contrast' }), rule('seam', ['moulded', 'leather'], 4, { kind: 'seam' }),
      rule('roof', ['moulded', 'leather'], 5, { zone: 'roof' }),
    ];
    expect(withRules(rules, moulded, leather).id).toBe('leather + moulded');
    expect(withRules(rules, moulded, leather, { kind: 'edge', intent: { colour: 'contrast' } }).id).toBe('contrast');
    expect(withRules(rules, moulded, leather, { kind: 'seam' }).id).toBe('seam');
    expect(withRules(rules, { ...moulded, zone: 'roof' }, leather).id).toBe('roof');
    expect(withRules(rules, moulded, { ...leather, zone: 'roof' }).id).toBe('roof');
  });

  it('say which rule won and why', () => {
    const rules = [rule('wide', ['*', '*'], 2), rule('narrow', ['moulded', 'leather'], '0.8 + 0 * gapMm', { kind: 'seam' })];
    expect(withRules(rules, moulded, leather, { kind: 'seam' }).why)
      .toBe('Rule "narrow" decides, before "wide": it names both materials and the kind seam; its limit is 0.8 + 0 * gapMm.');
  });

  it('leave what they do not give to the classes', () => {
    const won = withRules([{ id: 'lights', pair: ['moulded', 'leather'], colour: { lights: [{ light: 'D50', factor: 2, standing: 'required', basis }] }, basis }], moulded, leather);
    expect(won.id).toBe('lights');
    expect(won.colour).toMatchObject({ limit: 1.2, kL: 1, lights: [{ light: 'D50', limit: 2.4 }] });
    expect(won.colour.components).toHaveLength(1);
    expect(won.gloss).toMatchObject({ applicable: true, limit: 0.6 });
  });

  it('give the limit for a kind they name, without the factor of that kind', () => {
    expect(withRules([rule('s', ['moulded', 'leather'], 2, { kind: 'sightline' })], moulded, leather, { kind: 'sightline' }).colour.limit).toBe(2);
    expect(withRules([rule('s', ['moulded', 'leather'], 2)], moulded, leather, { kind: 'sightline' }).colour.limit).toBe(2.6);
  });

  it('evaluate their formulas', () => {
    const formulas: PairRule = {
      id: 'f', pair: ['*', '*'], basis, metamerismLimit: '0.5 * meanL / meanL', standing: { metamerism: 'required' },
      gloss: { kind: 'limit', limit: 'max(0.4, 0.2 * meanGloss)', angle: 60, basis },
      colour: {
        formula: 'cie94Textile', limit: 'meanL < 30 ? 0.6 : 0.9', kL: '1 + 0.01 * gapArcmin', kC: 1.1, kH: 0.9,
        components: [{ component: 'db', min: -0.2, max: '0.1 + 0.01 * meanC', basis }, { component: 'dL', max: 0.4, belowL: 20, basis }],
      },
    };
    const { value, issues } = compileRuleBook({ ...book, rules: [{ ...formulas, metamerismLimit: 0.5 }] });
    expect(issues).toEqual([]);
    const won = value!.resolve([moulded, leather], { kind: 'edge' }, { ...typicalVariables, meanL: 29, gapArcmin: 50, meanC: 10, meanGloss: 4 });
    expect(won.colour).toMatchObject({ formula: 'cie94Textile', limit: 0.6, kL: 1.5, kC: 1.1, kH: 0.9 });
    expect(won.colour.components).toEqual([{ component: 'db', min: -0.2, max: expect.closeTo(0.2, 12), basis }]);
    expect(won.gloss).toMatchObject({ limit: expect.closeTo(0.8, 12) });
    expect(won.metamerism).toEqual({ limit: 0.5, standing: 'required' });
    // 0.5 * meanL / meanL is 0 / 0 at meanL = 0.
    expect(compileRuleBook({ ...book, rules: [formulas] }).issues).toMatchObject([{ code: 'expression-out-of-range', path: 'rules[0].metamerismLimit' }]);
  });

  it('that need an unknown value are not judged, and say which', () => {
    const won = compile({ rules: [rule('f', ['*', '*'], 'meanGloss < 5 ? 0.6 : 0.9')] })
      .resolve([moulded, leather], { kind: 'edge' }, { ...typicalVariables, meanGloss: Number.NaN });
    expect(won.colour).toMatchObject({ notJudgedKind: 'no rule', notJudged: expect.stringContaining('meanGloss is not known'), limit: 0, lights: [] });
  });

  it('set a default intent, which the joint may override', () => {
    const rules: PairRule[] = [{ id: 'free', pair: ['moulded', 'leather'], defaultIntent: { colour: 'contrast', gloss: 'free' }, basis }, rule('c', ['moulded', 'leather'], 9, { intent: 'contrast' })];
    expect(withRules(rules, moulded, leather)).toMatchObject({ id: 'c', intent: { colour: 'contrast', gloss: 'match' } });
    expect(withRules(rules, moulded, leather, { kind: 'edge', intent: { colour: 'match' } })).toMatchObject({ id: 'free', intent: { colour: 'match', gloss: 'free' } });
  });

  it('change the standing of single checks', () => {
    const won = withRules([{ id: 's', pair: ['*', '*'], standing: { gloss: 'advisory', texture: 'required', colour: 'if-measured', 'near-miss': 'advisory' }, basis }], moulded, leather);
    expect([won.colour.standing, won.texture.standing, won.standing!['near-miss'], won.standing!.conditions]).toEqual(['if-measured', 'required', 'advisory', 'required']);
    expect(won.gloss).toMatchObject({ standing: 'advisory' });
  });
});

describe('a material the book does not know', () => {
  it('leaves the colour not judged, with the reason', () => {
    const rule = resolve('cork', 'moulded');
    expect(rule.colour).toMatchObject({ notJudgedKind: 'no rule', limit: 0, lights: [], components: [] });
    expect(rule.colour.notJudged).toBe('the rule book "ciede2000" has no material "cork" and no rule that names the pair');
    expect(rule.gloss).toMatchObject({ applicable: false });
  });

  it('is judged where a rule gives the limit', () => {
    expect(withRules([{ id: 'any', pair: ['*', '*'], colour: { limit: 1.1 }, basis }], side('cork'), side('moulded')).colour).toMatchObject({ limit: 1.1, kL: 1 });
  });
});

describe('the order of the sides', () => {
  const material = fc.constantFrom(...book.materials.map((row) => row.material), 'cork');
  const anySide: fc.Arbitrary<RuleSide> = fc.record({
    material, surface: fc.constantFrom('solid', 'melange', 'patterned', 'effect', 'translucent'), grain: fc.constantFrom('g1', 'g2', undefined), zone: fc.constantFrom('dash', 'door', 'roof'),
  });
  const intent = fc.constantFrom('match', 'tone-step', 'contrast', 'free');
  const anyRule = fc.record({
    pair: fc.tuple(fc.constantFrom('*', 'moulded', 'leather', 'textile'), fc.constantFrom('*', 'moulded', 'leather', 'carpet')),
    intent: fc.option(intent, { nil: undefined }), kind: fc.constantFrom('edge', 'sightline', undefined), zone: fc.constantFrom('dash', 'door', undefined),
    limit: fc.constantFrom(0.5, '0.4 + meanL / 100', 'max(0.2, 0.3 * meanGloss)'),
  });
  const value = (name: keyof RuleVariables, low: number, high: number) => fc.double({ min: low, max: high, noNaN: true }).map((each) => [name, each] as const);

  it('never changes a rule', () => {
    fc.assert(fc.property(
      anySide, anySide, fc.array(anyRule, { maxLength: 6 }), fc.constantFrom('edge', 'gap', 'step', 'seam', 'sightline'),
      fc.record({ colour: intent }, { requiredKeys: [] }), fc.tuple(value('meanL', 0, 100), value('meanGloss', 0, 100), value('gapArcmin', 0, 80)), fc.boolean(), fc.nat(1),
      (a, b, drawn, kind, wanted, values, gapOn, which) => {
        const rules: PairRule[] = drawn.map(({ limit, ...more }, index) => ({ ...more, pair: [more.pair[0], more.pair[1]], id: `r${index}`, colour: { limit }, basis }));
        const both = compileRuleBook({ ...builtInRuleBooks[which]!, rules, gapFactor: { ...book.gapFactor, enabled: gapOn } }).value!;
        const variables = { ...typicalVariables, ...Object.fromEntries(values) };
        const forward = both.resolve([a, b], { kind, intent: wanted }, variables);
        expect(both.resolve([b, a], { kind, intent: wanted }, variables)).toEqual(forward);
        if (forward.colour.notJudged === undefined) expect(forward.colour.limit).toBeGreaterThan(0);
        expect(JSON.stringify(forward)).not.toContain('null');
      },
    ), { seed: 30, numRuns: 300 });
  });
});
