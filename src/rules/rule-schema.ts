import { checkNames, jointKinds } from '../cabin/cabin.ts';
import type { CheckName, ColourIntent, Intent, SurfaceIntent } from '../cabin/cabin.ts';
import { list, name, number, object, oneOf, optional, patternText, plain, refine, remark, required, tuple, variant } from '../cabin/schema/index.ts';
import type { Schema } from '../cabin/schema/index.ts';
import { formulaNames } from '../colour/difference-formula.ts';
import { expression } from './expression-schema.ts';
import type { ComponentRule, GlossRule, HazeLimit, LightRule, PairRule, Standing } from './rule-book.ts';

export const idPattern = /^[A-Za-z0-9][\w.-]*$/;
export const identifier = (): Schema<string> => patternText(idPattern, 'bad-id', 'an id of letters, digits, points, hyphens and underscores');

const unsourced = 'Write where the value comes from: a source in full, or "common practice, no source", or "assumption, no source".';

/** Where a value comes from: never empty. */
export const basis = (): Schema<string> => {
  const text = remark();
  return plain('a basis', (value, faults) => {
    const read = text.read(value, faults);
    if (read === undefined) return undefined;
    if (read.trim() !== '') return read;
    faults.add('empty-text', { expected: 'a basis', found: 'an empty text', hint: unsourced });
    return undefined;
  });
};

export const factor = (): Schema<number> => number({ above: 0, max: 100 });
export const colourIntent = (): Schema<ColourIntent> => oneOf(['match', 'tone-step', 'contrast', 'free'], 'unknown-intent');
const surfaceIntent = (): Schema<SurfaceIntent> => oneOf(['match', 'contrast', 'free'], 'unknown-intent');
export const standing = (): Schema<Standing> => oneOf(['required', 'if-measured', 'advisory'], 'unknown-standing');

export const lightRule = (): Schema<LightRule> => object<LightRule>('a light', {
  light: required(name('the name of a light')),
  factor: required(factor()),
  standing: required(oneOf(['required', 'shown'], 'unknown-standing')),
  basis: required(basis()),
});

/** The lights of a book or rule: at least one is required, none twice. */
export const lightRules = (): Schema<readonly LightRule[]> => refine(list(lightRule(), { min: 1, max: 60, items: 'lights' }), (lights, faults) => {
  lights.forEach(({ light }, index) => {
    if (lights.findIndex((other) => other.light === light) < index) {
      faults.path.push(index);
      faults.add('duplicate-light', { expected: 'each light once', found: JSON.stringify(light) });
      faults.path.pop();
    }
  });
  if (!lights.some((light) => light.standing === 'required')) {
    faults.add('no-required-light', { expected: 'at least one light that is required', found: 'shown lights only' });
  }
});

const componentRule = (): Schema<ComponentRule> => refine(
  object<ComponentRule>('a component limit', {
    component: required(oneOf(['dL', 'da', 'db', 'dC', 'dH'], 'unknown-component')),
    min: optional(expression({ positive: false })),
    max: optional(expression({ positive: false })),
    belowL: optional(number({ above: 0, max: 100 })),
    basis: required(basis()),
  }),
  ({ min, max }, faults) => {
    if (min === undefined && max === undefined) faults.add('missing-field', { expected: 'min or max', found: 'neither' });
    if (typeof min === 'number' && typeof max === 'number' && min >= max) {
      faults.add('out-of-order', { expected: 'min below max', found: `${min} and ${max}` });
    }
  },
);

export const componentRules = (): Schema<readonly ComponentRule[]> => list(componentRule(), { max: 20, items: 'component limits' });

const hazeLimit = (): Schema<HazeLimit> => object<HazeLimit>('a limit of haze', {
  limit: required(number({ above: 0, max: 1000 })), basis: required(basis()),
});

export const glossRule = (): Schema<GlossRule> => variant<GlossRule, 'kind'>('a gloss rule', 'kind', 'unknown-gloss-rule', {
  limit: object<Extract<GlossRule, { kind: 'limit' }>>('a gloss limit', {
    kind: required(oneOf(['limit'])),
    limit: required(expression({ positive: true })),
    angle: required(oneOf([20, 60, 85], 'unknown-angle')),
    haze: optional(hazeLimit()),
    basis: required(basis()),
  }),
  level: object<Extract<GlossRule, { kind: 'level' }>>('a gloss limit by level', {
    kind: required(oneOf(['level'])),
    floor: required(number({ above: 0, max: 1000, unit: 'GU' })),
    share: required(number({ min: 0, max: 1 })),
    switchGu60: required(number({ above: 0, max: 1000, unit: 'GU' })),
    limit20: required(number({ above: 0, max: 1000, unit: 'GU' })),
    basis: required(basis()),
  }),
  'not applicable': object<Extract<GlossRule, { kind: 'not applicable' }>>('a reason why gloss is not judged', {
    kind: required(oneOf(['not applicable'])),
    reason: required(name('a reason')),
    basis: required(basis()),
  }),
});

const intent = (): Schema<Intent> => object<Intent>('an intent', {
  colour: optional(colourIntent()), gloss: optional(surfaceIntent()), texture: optional(surfaceIntent()),
});

/** One schema for each check, all optional: what a rule changes. */
const standings = (): Schema<Partial<Record<CheckName, Standing>>> => object<Partial<Record<CheckName, Standing>>>(
  'the standing of checks',
  Object.fromEntries(checkNames.map((check) => [check, optional(standing())])) as Record<CheckName, ReturnType<typeof optional<Standing>>>,
);

export const pairRule = (): Schema<PairRule> => refine(
  object<PairRule>('a rule', {
    id: required(identifier()),
    pair: required(tuple('two materials', name('a material, or * for any'), name('a material, or * for any'))),
    intent: optional(colourIntent()),
    kind: optional(oneOf(jointKinds, 'unknown-kind')),
    zone: optional(name('the id of a zone')),
    defaultIntent: optional(intent()),
    colour: optional(object<NonNullable<PairRule['colour']>>('the colour limits of a rule', {
      formula: optional(oneOf(formulaNames, 'unknown-formula')),
      limit: optional(expression({ positive: true })),
      kL: optional(expression({ positive: true })),
      kC: optional(expression({ positive: true })),
      kH: optional(expression({ positive: true })),
      lights: optional(lightRules()),
      components: optional(componentRules()),
    })),
    gloss: optional(glossRule()),
    metamerismLimit: optional(expression({ positive: true })),
    standing: optional(standings()),
    basis: required(basis()),
  }),
  (rule, faults) => {
    const wanted = rule.defaultIntent?.colour;
    if (rule.intent === undefined || wanted === undefined || wanted === rule.intent) return;
    faults.path.push('defaultIntent', 'colour');
    faults.add('contradiction', { expected: `"${rule.intent}", the intent that the rule is for`, found: JSON.stringify(wanted), hint: 'Leave one of the two out.' });
    faults.path.length -= 2;
  },
);
