import { assumption, commonPractice, decisionBasis, lightAndObserver } from './book-bases.ts';
import { glossByLevel } from './material-table.ts';
import { textureLightness, visibleTexture } from './texture-defaults.ts';
import type { RuleBook } from './rule-book.ts';

const glossCaution = 'A design aid against veiling glare in the windscreen; legal visibility requirements and the responsible engineer decide.';

/** All that the built-in books share: everything but the formula and the table of materials. */
export const bookFoundation: Omit<RuleBook, 'id' | 'name' | 'note' | 'formula' | 'cmc' | 'materials' | 'bases'> = {
  format: 'adjoin-rules',
  version: 1,
  observer: 10,
  decision: { rule: 'guarded', confidence: 0.95, basis: decisionBasis },
  geometryOrder: ['45:0', 'de:8', 'di:8'],
  lights: [
    { light: 'D65', factor: 1, standing: 'required', basis: `${lightAndObserver}; factor: ${commonPractice}` },
    { light: 'A', factor: 1.2, standing: 'required', basis: `SAE J1545:2021 by its published summary: A and F2 for metamerism; factor: ${commonPractice}` },
    { light: 'FL11', factor: 1.4, standing: 'required', basis: commonPractice },
    { light: 'LED-B3', factor: 1.3, standing: 'required', basis: commonPractice },
    { light: 'ID65', factor: 1, standing: 'shown', basis: commonPractice },
    { light: 'FL2', factor: 1, standing: 'shown', basis: 'SAE J1545:2021 by its published summary: A and F2 for metamerism' },
    { light: 'LED-B5', factor: 1, standing: 'shown', basis: commonPractice },
    { light: 'P2300', factor: 1, standing: 'shown', basis: `SAE J361 asks for horizon light; its temperature: ${commonPractice}` },
  ],
  standing: {
    colour: 'required', metamerism: 'advisory', gloss: 'required', texture: 'if-measured',
    'near-miss': 'required', conditions: 'required', master: 'if-measured', cap: 'required',
  },
  combination: { unlikeFamilyAllowance: 0.2, lightnessCapBelowL: 35, basis: commonPractice },
  assumed: {
    priorReadings: 8,
    agreementSd: [0.1, 0.06, 0.06],
    agreementGlossSd: 0.15,
    textureRelativeSd: 0.05,
    textureAgreementRelativeSd: 0.05,
    correlation: { sameSession: 1, sameInstrument: 0.5, different: 0 },
    maximumSpots: 50,
    basis: assumption,
  },
  visibleTexture,
  textureLightness,
  texture: { ratio: [0.8, 1.25], strDifference: 0.2, vdiClass: 1, basis: commonPractice },
  toneStep: {
    minDL: 5, maxDL: 15, maxDH: 2,
    basis: 'design heuristic: smaller steps lie in the ambiguity of Moon and Spencer, J. Opt. Soc. Am. 34 (1944); figures: common practice, no source',
  },
  contrast: {
    minDifference: 12,
    basis: 'design heuristic: smaller steps lie in the ambiguity of Moon and Spencer, J. Opt. Soc. Am. 34 (1944); figure: common practice, no source',
  },
  kinds: { edge: 1, gap: 1, step: 1, seam: 1, sightline: 1.3 },
  gapFactor: { enabled: false, formula: 'min(1.25, 1 + max(0, gapArcmin - 5)/220)', basis: assumption },
  caps: [
    {
      id: 'upper-dash-gloss', zone: 'upper-dash', quantity: 'gloss', max: 2, angle: 60,
      basis: 'SAE technical paper abstract (2006): some car makers specify 2.0 or lower GU60 for most first-surface moulded-in-colour interior parts',
      caution: glossCaution,
    },
    { id: 'upper-dash-lightness', zone: 'upper-dash', quantity: 'lightness', max: 30, basis: commonPractice, caution: glossCaution },
  ],
  readingsWanted: [
    { occasion: 'tool approval', wanted: '3 parts of each cavity, 5 spots each', basis: commonPractice },
    { occasion: 'series', wanted: '1 to 3 parts of each lot, 3 spots each', basis: commonPractice },
    { occasion: 'textile and carpet', wanted: '5 to 8 places, 4 rotations each', basis: commonPractice },
    { occasion: 'leather', wanted: '5 spots on each of several hides', basis: commonPractice },
    { occasion: 'gloss', wanted: '3 to 5 spots, along and across the grain', basis: commonPractice },
    { occasion: 'every judged joint', wanted: 'one spot within 30 mm of it', basis: commonPractice },
  ],
  rules: [
    {
      id: 'metallised-pair', pair: ['metallised', 'metallised'], gloss: { ...glossByLevel, basis: assumption }, standing: { gloss: 'advisory' },
      basis: 'assumption, no source: metal is compared with metal only, and its gloss is advice',
    },
  ],
};

/** Bases that both built-in books give for values without one beside them. */
export const foundationBases: NonNullable<RuleBook['bases']> = {
  observer: lightAndObserver,
  geometryOrder: commonPractice,
  standing: assumption,
  kinds: commonPractice,
  defaultIntents: commonPractice,
};
