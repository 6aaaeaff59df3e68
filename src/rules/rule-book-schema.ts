import { checkNames, jointKinds } from '../cabin/cabin.ts';
import type { Cap, CheckName, JointKind } from '../cabin/cabin.ts';
import { boolean, list, name, number, object, oneOf, optional, remark, required, tuple, withDefault } from '../cabin/schema/index.ts';
import type { Schema } from '../cabin/schema/index.ts';
import { formulaNames } from '../colour/difference-formula.ts';
import type { GeometryClass } from '../readings/reading.ts';
import { expression } from './expression-schema.ts';
import { basesOf, materialClass, standardDeviations } from './material-schema.ts';
import { bookValues } from './rule-book.ts';
import type { RuleBook, Standing } from './rule-book.ts';
import { textureLightness, visibleTexture } from './texture-defaults.ts';
import { basis, factor, identifier, lightRules, pairRule, standing } from './rule-schema.ts';

const share = (): Schema<number> => number({ min: 0, max: 1 });
const positive = (max = 1000): Schema<number> => number({ above: 0, max });

const everyCheck = (): Schema<Readonly<Record<CheckName, Standing>>> => object<Record<CheckName, Standing>>('the standing of every check', {
  colour: required(standing()), metamerism: required(standing()), gloss: required(standing()), texture: required(standing()),
  'near-miss': required(standing()), conditions: required(standing()), master: required(standing()), cap: required(standing()),
} satisfies Record<(typeof checkNames)[number], unknown>);

const everyKind = (): Schema<Readonly<Record<JointKind, number>>> => object<Record<JointKind, number>>('a factor for every kind of joint', {
  edge: required(factor()), gap: required(factor()), step: required(factor()), seam: required(factor()), sightline: required(factor()),
} satisfies Record<(typeof jointKinds)[number], unknown>);

const assumed = (): Schema<RuleBook['assumed']> => object<RuleBook['assumed']>('the assumed spreads', {
  priorReadings: required(number({ min: 0, max: 1000 })),
  agreementSd: required(standardDeviations()),
  agreementGlossSd: required(positive()),
  textureRelativeSd: required(positive(1)),
  textureAgreementRelativeSd: required(positive(1)),
  correlation: required(object<RuleBook['assumed']['correlation']>('the correlation of instruments', {
    sameSession: required(share()), sameInstrument: required(share()), different: required(share()),
  })),
  maximumSpots: required(number({ min: 1, max: 10_000, whole: true })),
  basis: required(basis()),
});

const cap = (): Schema<Cap & { readonly zone: string }> => object<Cap & { zone: string }>('a cap', {
  id: required(identifier()),
  zone: required(name('the id of a zone')),
  quantity: required(oneOf(['gloss', 'lightness'], 'unknown-quantity')),
  max: required(positive()),
  angle: optional(oneOf([20, 60, 85], 'unknown-angle')),
  basis: required(basis()),
  caution: optional(remark()),
});

export const readingsWanted = (): Schema<NonNullable<RuleBook['readingsWanted']>> => list(object<NonNullable<RuleBook['readingsWanted']>[number]>('the readings wanted', {
  occasion: required(name('an occasion')), wanted: required(remark()), basis: required(basis()),
}), { max: 50, items: 'occasions' });

export const bookCaps = (): Schema<RuleBook['caps']> => list(cap(), { max: 200, items: 'caps' });

export const geometryOrder = (): Schema<readonly GeometryClass[]> =>
  list<GeometryClass>(oneOf(['45:0', 'de:8', 'di:8', 'multi-angle', 'unknown'], 'unknown-geometry'), { min: 1, max: 5, items: 'geometries' });

/** The whole document. What one field alone cannot show is checked by `crossChecks`. */
export const ruleBookSchema: Schema<RuleBook> = object<RuleBook>('a rule book', {
  format: required(oneOf(['adjoin-rules'], 'unknown-format')),
  version: required(oneOf([1], 'unknown-version')),
  id: required(identifier()),
  name: required(name()),
  note: required(remark()),
  observer: required(oneOf([2, 10])),
  formula: required(oneOf(formulaNames, 'unknown-formula')),
  cmc: optional(object<NonNullable<RuleBook['cmc']>>('the factors of CMC(l:c)', { l: required(factor()), c: required(factor()) })),
  decision: required(object<RuleBook['decision']>('the decision rule', {
    rule: required(oneOf(['guarded', 'simple'])),
    confidence: required(number({ above: 0.5, max: 0.9999 })),
    basis: required(basis()),
  })),
  geometryOrder: required(geometryOrder()),
  lights: required(lightRules()),
  standing: required(everyCheck()),
  materials: required(list(materialClass(), { min: 1, max: 200, items: 'materials' })),
  combination: required(object<RuleBook['combination']>('the combination of unlike materials', {
    unlikeFamilyAllowance: required(number({ min: 0, max: 100 })),
    lightnessCapBelowL: optional(number({ min: 0, max: 100 })),
    basis: required(basis()),
  })),
  assumed: required(assumed()),
  texture: required(object<RuleBook['texture']>('the texture limits', {
    ratio: required(tuple('the lowest and highest ratio', number({ above: 0, max: 1 }), number({ min: 1, max: 100 }))),
    strDifference: required(number({ above: 0, max: 1 })),
    vdiClass: required(number({ min: 0, max: 45 })),
    basis: required(basis()),
  })),
  visibleTexture: withDefault(object<RuleBook['visibleTexture']>('how textures are looked at', {
    illuminanceLx: required(number({ above: 0, max: 200_000, unit: 'lx' })),
    fieldMm: required(number({ above: 0, max: 10_000, unit: 'mm' })),
    limit: required(expression({ positive: true })),
    basis: required(basis()),
  }), visibleTexture),
  textureLightness: withDefault(object<RuleBook['textureLightness']>('kL from texture', {
    enabled: required(boolean()), formula: required(expression({ positive: true })), basis: required(basis()),
  }), textureLightness),
  toneStep: required(object<RuleBook['toneStep']>('the limits of a tone step', {
    minDL: required(positive(100)), maxDL: required(positive(100)), maxDH: required(positive(100)), basis: required(basis()),
  })),
  contrast: required(object<RuleBook['contrast']>('the limit of a contrast', { minDifference: required(positive()), basis: required(basis()) })),
  kinds: required(everyKind()),
  gapFactor: required(object<RuleBook['gapFactor']>('the gap factor', {
    enabled: required(boolean()), formula: required(expression({ positive: true })), basis: required(basis()),
  })),
  caps: required(bookCaps()),
  readingsWanted: optional(readingsWanted()),
  rules: required(list(pairRule(), { max: 2000, items: 'rules' })),
  bases: optional(basesOf(bookValues)),
});
