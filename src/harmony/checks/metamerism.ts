import { formulaLabel } from '../../colour/formula-label.ts';
import { metamerismUnder } from '../../colour/metamerism.ts';
import type { Metamerism } from '../../colour/metamerism.ts';
import type { Spectrum } from '../../colour/spectrum.ts';
import type { Light } from '../../colour/lights.ts';
import type { CheckResult } from '../judgement.ts';
import { figure, percentOfLimit } from '../wording.ts';
import type { JointInput } from './joint-input.ts';
import { ruleFormula } from './joint-input.ts';

interface IndexUnderLight {
  readonly light: string;
  readonly index: Metamerism;
}

/**
 * Metamerism of a pair that is meant to match: the multiplicative index of ISO 18314-4:2024 from the rule's first required light
 * to each other one. Attached to the colour check as its cause; judged alone only where the rule gives it a limit, by its value without
 * an uncertainty, since the index is a figure of the two mean spectra; else it
 * clashes where colour holds under the first light and clashes under another. Undefined for other intents.
 */
export function metamerismCheck(
  input: JointInput, spectra: readonly [Spectrum | undefined, Spectrum | undefined], colour: CheckResult, lightOf: (name: string) => Light | undefined,
): CheckResult | undefined {
  const { rule, book, names } = input;
  if (rule.intent.colour !== 'match' || rule.colour.notJudged !== undefined) return undefined;
  const base = {
    check: 'metamerism' as const, standing: rule.metamerism.standing, unit: '', lights: [], cautions: [],
    formula: formulaLabel(ruleFormula(rule)), basis: 'ISO 18314-4:2024, multiplicative correction',
  };
  const [reference, ...tests] = rule.colour.lights.filter((light) => light.standing === 'required').map(({ light }) => light);
  const referenceLight = lightOf(reference ?? '');
  const [standard, trial] = spectra;
  if (standard === undefined || trial === undefined || referenceLight === undefined) {
    return { ...base, verdict: 'no data', simple: 'no data', cause: 'missing data', sentence: 'Metamerism: needs the spectra of both sides.' };
  }
  const known = tests.flatMap((name) => {
    const light = lightOf(name);
    return light === undefined ? [] : [{ name, light }];
  });
  const indices = metamerismUnder(standard, trial, known.map(({ light }) => light), { reference: referenceLight, observer: book.observer, formula: ruleFormula(rule) });
  const found = indices.map((index, position): IndexUnderLight => ({ light: known[position].name, index }));
  const worst = [...found].sort((first, second) => second.index.multiplicative - first.index.multiplicative)[0];
  if (worst === undefined) {
    return { ...base, verdict: 'not applicable', simple: 'not applicable', sentence: 'Metamerism: the rule asks for one light only.' };
  }
  const { multiplicative: value, residual, additive, parametric } = worst.index;
  const { limit } = rule.metamerism;
  const turning = turnsUnderLight(colour, reference ?? '');
  const clashes = limit === undefined ? turning : value > limit;
  const verdict = clashes ? 'clashes' as const : 'holds' as const;
  const phrase = `index ${figure(value)} from ${reference} to ${worst.light} between ${names.trial} and ${names.standard}`
    + ` (residual ${figure(residual)} under ${reference}; additive ${figure(additive)}, parametric ${figure(parametric)})`;
  const judged = limit === undefined ? '' : `, ${percentOfLimit(value / limit)} of its limit of ${figure(limit)} by the value alone`;
  const end = turning ? `; the pair holds under ${reference} and comes apart under ${colour.light}` : '';
  return {
    ...base, verdict, simple: verdict, light: worst.light, value, ...(limit === undefined ? {} : { limit, limitUse: value / limit }),
    sentence: `Metamerism: ${phrase}${judged}${end}.`,
  };
}

/** Colour is inside its limit under the reference light, and outside under the worst one. */
export function turnsUnderLight(colour: CheckResult, reference: string): boolean {
  if (colour.verdict !== 'clashes' || colour.light === undefined || colour.light === reference) return false;
  const first = colour.lights.find((light) => light.light === reference);
  return first !== undefined && first.withinProbability > 0.5 && first.limitUse <= 1;
}
