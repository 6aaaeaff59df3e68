import type { Draft, Faults } from '../cabin/schema/index.ts';
import { nameHint } from '../cabin/schema/index.ts';
import { lightByName, lightNames } from '../colour/index.ts';
import type { GlossRule, LightRule, RuleBook } from './rule-book.ts';

const hinted = (word: string, names: Iterable<string>): { hint?: string } => {
  const hint = nameHint(word, names);
  return hint === undefined ? {} : { hint };
};

function duplicates(faults: Faults, listPath: string, field: string, code: string, values: readonly (string | undefined)[]): void {
  const first = new Map<string, number>();
  values.forEach((value, index) => {
    if (value === undefined) return;
    const earlier = first.get(value);
    if (earlier === undefined) first.set(value, index);
    else faults.add(code, { expected: 'each once', found: `${JSON.stringify(value)} as in ${listPath}[${earlier}]` }, `${listPath}[${index}].${field}`);
  });
}

function lights(faults: Faults, path: string, rules: readonly (Draft<LightRule> | undefined)[] | undefined): void {
  rules?.forEach((rule, index) => {
    if (rule?.light === undefined || lightByName(rule.light) !== undefined) return;
    faults.add('unknown-light', {
      severity: 'warning', expected: 'a light of the list, or a light of the cabin', found: JSON.stringify(rule.light), ...hinted(rule.light, lightNames),
    }, `${path}[${index}].light`);
  });
}

function hazeAngle(faults: Faults, path: string, rule: Draft<GlossRule> | undefined): void {
  if (rule?.kind !== 'limit' || rule.haze === undefined || rule.angle === undefined || rule.angle === 20) return;
  faults.add('contradiction', { expected: 'a limit of haze with an angle of 20 degrees', found: `${rule.angle} degrees`, hint: 'Haze is read beside the mirror direction of the 20 degree geometry (ISO 13803).' }, `${path}.haze`);
}

/** Faults that need more than one field: names used twice or nowhere, limits the wrong way round, lights nobody knows. */
export function crossChecks(book: Draft<RuleBook>, faults: Faults): void {
  const materials = (book.materials ?? []).map((row) => row?.material);
  const known = materials.filter((material) => material !== undefined);
  duplicates(faults, 'materials', 'material', 'duplicate-material', materials);
  if (known.includes('*')) faults.add('reserved-name', { expected: 'another name', found: '"*"', hint: '* stands for any material in a rule.' }, `materials[${materials.indexOf('*')}].material`);
  duplicates(faults, 'rules', 'id', 'duplicate-id', (book.rules ?? []).map((rule) => rule?.id));
  duplicates(faults, 'caps', 'id', 'duplicate-id', (book.caps ?? []).map((cap) => cap?.id));
  book.geometryOrder?.forEach((geometry, index, all) => {
    if (all.indexOf(geometry) < index) faults.add('duplicate-geometry', { expected: 'each geometry once', found: JSON.stringify(geometry) }, `geometryOrder[${index}]`);
  });
  // A table with gaps would make rules look wrong that are not.
  const whole = known.length > 0 && known.length === materials.length;
  (book.rules ?? []).forEach((rule, index) => {
    rule?.pair?.forEach((material, side) => {
      if (!whole || material === '*' || known.includes(material)) return;
      faults.add('unknown-material', { expected: 'a material of the book, or *', found: JSON.stringify(material), ...hinted(material, known) }, `rules[${index}].pair[${side}]`);
    });
    lights(faults, `rules[${index}].colour.lights`, rule?.colour?.lights);
  });
  lights(faults, 'lights', book.lights);
  (book.materials ?? []).forEach((row, index) => hazeAngle(faults, `materials[${index}].gloss`, row?.gloss));
  (book.rules ?? []).forEach((rule, index) => hazeAngle(faults, `rules[${index}].gloss`, rule?.gloss));
  const { minDL, maxDL } = book.toneStep ?? {};
  if (minDL !== undefined && maxDL !== undefined && minDL >= maxDL) {
    faults.add('out-of-order', { expected: 'minDL below maxDL', found: `${minDL} and ${maxDL}` }, 'toneStep');
  }
  if (book.cmc !== undefined && book.formula !== undefined && book.formula !== 'cmc' && !(book.rules ?? []).some((rule) => rule?.colour?.formula === 'cmc')) {
    faults.add('unused-field', { severity: 'warning', expected: 'the formula cmc', found: JSON.stringify(book.formula), hint: 'The factors l and c act on CMC alone.' }, 'cmc');
  }
}
