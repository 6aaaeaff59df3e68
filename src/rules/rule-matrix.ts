import type { Material } from '../cabin/cabin.ts';
import type { Issue } from '../issue.ts';
import { combineClasses } from './combine-classes.ts';
import { compileRuleBook } from './compile-rule-book.ts';
import { typicalVariables } from './expression-range.ts';
import { glossRuleText } from './gloss-rule-text.ts';
import { plainNumber } from './plain-number.ts';
import type { MaterialClass, ResolvedRule, RuleBook, RuleSide } from './rule-book.ts';

/** What a book says of one unordered pair of materials, both solid, meeting at an edge in no named zone, each with a grain of its own. */
export interface RuleMatrixCell {
  readonly materials: readonly [Material, Material];
  /** The rule for typical values of the variables (`typicalVariables`). */
  readonly rule: ResolvedRule;
  /** The colour limit as written: a number, or the formula of the winning rule. */
  readonly limit: string;
  /** Cap on abs(dL*) in the dark, by the classes, where no rule replaces it. */
  readonly lightnessCap?: number;
  readonly gloss: string;
  /** Rules that speak of this pair under some intent, kind or zone, in the order of the book. */
  readonly rules: readonly string[];
}

const solid = (material: Material): RuleSide => ({ material, surface: 'solid', zone: '' });

function glossText(a: MaterialClass, b: MaterialClass): string {
  const barred = [a.gloss, b.gloss].find((rule) => rule.kind === 'not applicable');
  if (barred !== undefined) return glossRuleText(barred);
  const texts = [...new Set([a.gloss, b.gloss].map(glossRuleText))].sort();
  return texts.length === 1 ? texts[0]! : `the larger at one angle of ${texts.join(' and ')}`;
}

/**
 * Every unordered pair of the book's materials, rows and columns in the order of the book: 66 pairs for eleven materials.
 * Empty, with the faults, where the book has errors.
 */
export function ruleMatrix(source: RuleBook): { readonly cells: readonly RuleMatrixCell[]; readonly issues: readonly Issue[] } {
  const { value: compiled, issues } = compileRuleBook(source);
  if (compiled === undefined) return { cells: [], issues };
  const { book } = compiled;
  const cells = book.materials.flatMap((a, index) => book.materials.slice(index).map((b): RuleMatrixCell => {
    const rule = compiled.resolve([solid(a.material), solid(b.material)], { kind: 'edge' }, typicalVariables);
    const winner = book.rules.find((each) => each.id === rule.id);
    const { limit, lightnessCap } = combineClasses(a, b, book.combination);
    const written = winner?.colour?.limit ?? limit;
    return {
      materials: [a.material, b.material],
      rule,
      limit: typeof written === 'number' ? plainNumber(written) : written,
      ...(lightnessCap === undefined || winner?.colour?.components !== undefined ? {} : { lightnessCap }),
      gloss: winner?.gloss === undefined ? glossText(a, b) : glossRuleText(winner.gloss),
      rules: book.rules.filter(({ pair: [x, y] }) => [[a, b], [b, a]].some(([first, second]) =>
        (x === '*' || x === first!.material) && (y === '*' || y === second!.material))).map((each) => each.id),
    };
  }));
  return { cells, issues };
}
