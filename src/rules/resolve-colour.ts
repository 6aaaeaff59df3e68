import type { JointKind } from '../cabin/cabin.ts';
import type { FormulaName } from '../colour/difference-formula.ts';
import type { CombinedClass } from './combine-classes.ts';
import type { CompiledRule, CompiledValue } from './compile-rule.ts';
import type { SideWithClass } from './default-intent.ts';
import { decimal, plainNumber } from './plain-number.ts';
import type { ResolvedComponent, ResolvedRule, RuleBook, RuleVariables } from './rule-book.ts';

export interface ColourInput {
  readonly book: RuleBook;
  readonly formulas: { readonly gapFactor: CompiledValue; readonly textureLightness: CompiledValue };
  readonly sides: readonly [SideWithClass, SideWithClass];
  /** What the classes give; undefined where the book lacks one of the materials. */
  readonly combined: CombinedClass | undefined;
  readonly winner: CompiledRule | undefined;
  readonly kind: JointKind;
  readonly variables: RuleVariables;
}

type NotJudged = Pick<ResolvedRule['colour'], 'notJudged' | 'notJudgedKind'>;

/**
 * The factors on the colour limit and on the classes' cap of dL*. The kind's factor is left out where the winning rule names
 * that kind and gives the limit for it; the gap factor acts only where the book switches it on, and not on parts seen together from afar.
 */
function limitFactors({ book, formulas, winner, kind, variables }: ColourInput): ResolvedRule['factors'] {
  const factors: { name: string; value: number; basis: string }[] = [];
  const ownLimit = winner?.limit !== undefined && winner.rule.kind !== undefined;
  if (book.kinds[kind] !== 1 && !ownLimit) {
    factors.push({ name: `kind of joint: ${kind}`, value: book.kinds[kind], basis: book.bases?.kinds ?? 'no basis given' });
  }
  if (book.gapFactor.enabled && kind !== 'sightline') {
    const value = formulas.gapFactor.at(variables);
    if (Number.isFinite(value) && value > 0 && value !== 1) factors.push({ name: 'visible gap', value, basis: book.gapFactor.basis });
  }
  return factors;
}

/** kL that the book takes from the texture of the smoother side: where it is switched on, known, and larger than what stands without it. */
function kLFromTexture({ book, formulas, combined, winner, variables }: ColourInput): number | undefined {
  if (!book.textureLightness.enabled || winner?.kL !== undefined || !hasLightnessFactor(winner?.rule.colour?.formula ?? book.formula)) return undefined;
  const value = formulas.textureLightness.at(variables);
  return Number.isFinite(value) && value > (combined?.kL ?? 1) ? value : undefined;
}

/** CIE76 has no factors, and in CMC(l:c) l is part of the formula. */
export const hasLightnessFactor = (formula: FormulaName): boolean => formula !== 'cie76' && formula !== 'cmc';

const unknownOf = (values: readonly CompiledValue[], variables: RuleVariables): readonly string[] =>
  [...new Set(values.flatMap((value) => value.variables.filter((name) => Number.isNaN(variables[name]))))];

/** Why no instrument can judge the colour of this pair, if so. */
function notJudged({ book, sides, combined, winner, variables }: ColourInput, values: readonly CompiledValue[], usable: boolean): NotJudged {
  if (sides.some(({ side }) => side.surface === 'patterned' && side.namedColours !== true)) {
    return { notJudged: 'a patterned surface is not judged by instrument: judge visually against boundary samples', notJudgedKind: 'by eye' };
  }
  if (combined === undefined && winner?.limit === undefined) {
    const missing = [...new Set(sides.filter(({ row }) => row === undefined).map(({ side }) => side.material))].sort();
    return { notJudged: `the rule book "${book.id}" has no material ${missing.map((name) => `"${name}"`).join(' and ')} and no rule that names the pair`, notJudgedKind: 'no rule' };
  }
  if (usable) return {};
  const unknown = unknownOf(values, variables);
  const reason = unknown.length > 0 ? `${unknown.join(' and ')} ${unknown.length > 1 ? 'are' : 'is'} not known`
    : values.map((value) => `"${value.text}" is ${plainNumber(value.at(variables))}`).join(', ');
  return { notJudged: `the rule gives no usable limit for this joint: ${reason}`, notJudgedKind: 'no rule' };
}

function components({ book, combined, winner, variables }: ColourInput, factor: number): readonly ResolvedComponent[] {
  const low = (limit: number | undefined): boolean => limit !== undefined && !(variables.meanL < limit);
  if (winner?.components !== undefined) {
    return winner.components.filter(({ rule }) => !low(rule.belowL)).map(({ rule, min, max }) => ({
      component: rule.component,
      ...(min === undefined ? {} : { min: min.at(variables) }),
      ...(max === undefined ? {} : { max: max.at(variables) }),
      basis: rule.basis,
    }));
  }
  if (combined?.lightnessCap === undefined || low(book.combination.lightnessCapBelowL ?? 35)) return [];
  const cap = decimal(combined.lightnessCap * factor);
  return [{ component: 'dL', min: -cap, max: cap, basis: combined.capBasis }];
}

/**
 * The colour limits of one joint, all expressions evaluated: the winning rule's where it gives them, else those of the classes.
 * Limits that come out unusable leave the colour `notJudged`, with no lights and a limit of 0.
 */
export function resolveColour(input: ColourInput): { readonly colour: ResolvedRule['colour']; readonly factors: ResolvedRule['factors'] } {
  const { book, combined, winner, variables } = input;
  const factors = limitFactors(input);
  const factor = factors.reduce((product, each) => product * each.value, 1);
  const limit = decimal((winner?.limit?.at(variables) ?? combined?.limit ?? 0) * factor);
  const fromTexture = kLFromTexture(input);
  const k = {
    kL: winner?.kL?.at(variables) ?? fromTexture ?? combined?.kL ?? 1,
    kC: winner?.kC?.at(variables) ?? 1,
    kH: winner?.kH?.at(variables) ?? 1,
  };
  const componentLimits = components(input, factor);
  const usable = [limit, k.kL, k.kC, k.kH].every((value) => Number.isFinite(value) && value > 0)
    && componentLimits.every(({ min = 0, max = 0 }) => Number.isFinite(min) && Number.isFinite(max));
  const values = [winner?.limit, winner?.kL, winner?.kC, winner?.kH, ...(winner?.components ?? []).flatMap(({ min, max }) => [min, max])]
    .filter((value) => value !== undefined);
  const lights = winner?.lights ?? book.lights;
  const basis = winner?.limit === undefined ? combined?.limitBasis : winner.rule.basis;
  const advisory = combined?.advisory === true ? 'advisory' : book.standing.colour;
  return {
    factors,
    colour: {
      formula: winner?.rule.colour?.formula ?? book.formula,
      ...(usable ? k : { kL: 1, kC: 1, kH: 1 }),
      ...(usable && fromTexture !== undefined ? { kLFromTexture: fromTexture } : {}),
      l: book.cmc?.l ?? 2,
      c: book.cmc?.c ?? 1,
      limit: usable ? limit : 0,
      lights: usable ? lights.map(({ light, factor: own, standing, basis: why }) => ({ light, limit: decimal(limit * own), standing, basis: why })) : [],
      components: usable ? componentLimits : [],
      standing: winner?.rule.standing?.colour ?? advisory,
      ...notJudged(input, values, usable),
      ...(combined?.sameGeometryOnly === true ? { sameGeometryOnly: true } : {}),
      toneStep: book.toneStep,
      contrast: book.contrast,
      basis: basis ?? 'no basis: the rule book does not cover the pair',
    },
  };
}
