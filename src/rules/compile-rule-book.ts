import { checkNames } from '../cabin/cabin.ts';
import type { CheckName, Intent, JointKind, Material } from '../cabin/cabin.ts';
import type { Outcome } from '../issue.ts';
import { combineClasses } from './combine-classes.ts';
import type { CombinedClass } from './combine-classes.ts';
import { compileGloss, compileRule, compileValue } from './compile-rule.ts';
import type { CompiledRule } from './compile-rule.ts';
import { jointIntent } from './default-intent.ts';
import type { SideWithClass } from './default-intent.ts';
import { plainNumber } from './plain-number.ts';
import { resolveWithFactors } from './optional-factors.ts';
import { resolveGloss } from './resolve-gloss.ts';
import type { CompiledGloss } from './resolve-gloss.ts';
import { provideMathjs } from './mathjs-parser.ts';
import { restoreRuleBook } from './restore-rule-book.ts';
import type { MaterialClass, ResolvedRule, RuleBook, RuleSide, ResolvingVariables, Standing } from './rule-book.ts';
import { rankedRules, ruleReach } from './select-rule.ts';

/** What of a joint decides its rule; a whole joint of a cabin will do. */
export interface RuleJoint {
  readonly kind: JointKind;
  readonly intent?: Intent;
}

export interface CompiledRuleBook {
  readonly book: RuleBook;
  /**
   * The rule that holds for one joint. The order of the sides never matters. Variables that are not known are NaN: a limit that
   * needs one leaves the colour not judged and says so.
   */
  resolve(sides: readonly [RuleSide, RuleSide], joint: RuleJoint, variables: ResolvingVariables): ResolvedRule;
  /** The book's row of a material. */
  materialClass(material: Material): MaterialClass | undefined;
}

/** In plain assignments: this is asked for every joint. */
function everyStanding(of: RuleBook['standing'], changes: Partial<Record<CheckName, Standing>>): RuleBook['standing'] {
  const all: Partial<Record<CheckName, Standing>> = {};
  for (const check of checkNames) all[check] = changes[check] ?? of[check];
  return all as RuleBook['standing'];
}

const pairName = (sides: readonly [RuleSide, RuleSide]): string => sides.map((side) => side.material).sort().join(' + ');

function sentence(ranked: readonly CompiledRule[], combined: CombinedClass | undefined, factors: ResolvedRule['factors'], kL: number | undefined): string {
  const [winner, ...others] = ranked;
  const before = others.length === 0 ? '' : `, before ${others.length > 3 ? `${others.length} others` : others.map(({ rule }) => `"${rule.id}"`).join(', ')}`;
  const classes = combined === undefined ? 'the book has no class for one of the materials' : combined.why;
  const start = winner === undefined ? `No rule of the book speaks of this joint, so the classes decide: ${classes}`
    : `Rule "${winner.rule.id}" decides${before}: it names ${ruleReach(winner.rule)}; ${
      winner.limit === undefined ? `the limit is left to the classes: ${classes}` : `its limit is ${winner.limit.text}`}`;
  return `${start}${factors.map(({ name, value }) => `, times ${plainNumber(value)} (${name})`).join('')}${kL === undefined ? '' : `, with kL ${plainNumber(kL)} from the texture of the smoother side`}.`;
}

const visible = ({ illuminanceLx, fieldMm, basis }: RuleBook['visibleTexture'], limit: number): ResolvedRule['texture']['visible'] => ({
  illuminanceLx, fieldMm, ...(Number.isFinite(limit) && limit > 0 ? { limit } : {}), basis,
});

// Who compiles a book can also parse its formulas; the page's first load compiles none.
provideMathjs();

/**
 * Checks a rule book and compiles every formula of it once. The value is absent where the book has errors.
 */
export function compileRuleBook(source: RuleBook): Outcome<CompiledRuleBook> {
  const { value: book, issues } = restoreRuleBook(source);
  if (book === undefined) return { value: undefined, issues };
  const classes = new Map(book.materials.map((row) => [row.material, row]));
  const glosses = new Map(book.materials.map((row) => [row.material, compileGloss(row.gloss)]));
  const compiled = new Map(book.rules.map((rule) => [rule, compileRule(rule)]));
  const withoutIntent = book.rules.filter((rule) => rule.intent === undefined);
  const formulas = { gapFactor: compileValue(book.gapFactor.formula), textureLightness: compileValue(book.textureLightness.formula) };
  const visibleLimit = compileValue(book.visibleTexture.limit);
  const noClass: CompiledGloss = { kind: 'not applicable', reason: 'the rule book has no class for the material', basis: 'no basis: the rule book does not cover the pair' };

  const combinedClasses = new Map<MaterialClass, Map<MaterialClass, CombinedClass>>();
  const combinedClass = (a: MaterialClass, b: MaterialClass): CombinedClass => {
    const withOne = combinedClasses.get(a) ?? new Map<MaterialClass, CombinedClass>();
    combinedClasses.set(a, withOne);
    const combined = withOne.get(b) ?? combineClasses(a, b, book.combination);
    withOne.set(b, combined);
    return combined;
  };

  const resolve: CompiledRuleBook['resolve'] = (sides, joint, variables) => {
    const described = sides.map((side): SideWithClass => ({ side, row: classes.get(side.material) })) as unknown as readonly [SideWithClass, SideWithClass];
    const [a, b] = described;
    const combined = a.row === undefined || b.row === undefined ? undefined : combinedClass(a.row, b.row);
    // The default intent comes from rules that do not ask for one, then the intent picks among all rules.
    const first = rankedRules(withoutIntent, sides, { intent: 'match', kind: joint.kind })[0];
    const { colour: wanted } = jointIntent(described, joint.intent, first?.defaultIntent);
    const ranked = rankedRules(book.rules, sides, { intent: wanted, kind: joint.kind }).map((rule) => compiled.get(rule)!);
    const winner = ranked[0];
    const intent = { ...jointIntent(described, joint.intent, winner?.rule.defaultIntent), colour: wanted };
    const { colour, factors, optionalFactors } = resolveWithFactors({ book, formulas, sides: described, combined, winner, kind: joint.kind, variables });
    const standing = winner?.rule.standing;
    const glossStanding = standing?.gloss ?? (combined?.advisory === true ? 'advisory' : book.standing.gloss);
    const classGloss = sides.map((side) => glosses.get(side.material) ?? noClass);
    const metamerismLimit = winner?.metamerismLimit?.at(variables);
    return {
      id: winner?.rule.id ?? pairName(sides),
      why: sentence(ranked, combined, factors, colour.kLFromTexture),
      intent,
      colour,
      gloss: resolveGloss(winner?.gloss === undefined ? classGloss : [winner.gloss], variables, glossStanding, sides.some((side) => side.grain !== undefined)),
      texture: { ...book.texture, standing: standing?.texture ?? book.standing.texture, visible: visible(book.visibleTexture, visibleLimit.at(variables)) },
      metamerism: {
        ...(metamerismLimit !== undefined && Number.isFinite(metamerismLimit) && metamerismLimit > 0 ? { limit: metamerismLimit } : {}),
        standing: standing?.metamerism ?? book.standing.metamerism,
      },
      standing: everyStanding(book.standing, { ...standing, colour: colour.standing, gloss: glossStanding }),
      nearMiss: { standing: standing?.['near-miss'] ?? book.standing['near-miss'] },
      conditions: { standing: standing?.conditions ?? book.standing.conditions },
      factors,
      optionalFactors,
    };
  };
  return { value: { book, resolve, materialClass: (material) => classes.get(material) }, issues };
}
