import type { ColourIntent, JointKind, Material } from '../cabin/cabin.ts';
import { combineClasses } from './combine-classes.ts';
import type { PairRule, RuleBook } from './rule-book.ts';
import { matchesPair, ruleReach, specificity } from './select-rule.ts';

/** What is known of a joint when one asks which rule wins; what is absent is left open. */
export interface RulingFacts {
  readonly intent?: ColourIntent | undefined;
  readonly kind?: JointKind | undefined;
  /** Zones of the two parts. */
  readonly zones?: readonly string[] | undefined;
}

/** One rule, or the classes, as it stands to a pair of materials. */
export interface RulingEntry {
  /** Undefined for the classes of the two materials, which stand last. */
  readonly rule: PairRule | undefined;
  /** What it names, in words. */
  readonly reach: string;
  /** `yields`: it speaks of the joint and another one goes before it; `elsewhere`: it speaks of other joints of this pair only. */
  readonly place: 'wins' | 'yields' | 'elsewhere';
  readonly why: string;
}

const rank = (rule: PairRule, index: number) => ({ rule, index, ...specificity(rule) });
type Ranked = ReturnType<typeof rank>;

const materialWords = ['no material by name', 'one material', 'both materials'] as const;
/** The intent, kind and zone that a rule names. */
const qualifiersOf = ({ intent, kind, zone }: PairRule): string => {
  const named = [...(intent === undefined ? [] : [`the intent ${intent}`]), ...(kind === undefined ? [] : [`the kind ${kind}`]), ...(zone === undefined ? [] : [`the zone ${zone}`])];
  return named.length < 2 ? named.join('') : `${named.slice(0, -1).join(', ')} and ${named.at(-1)}`;
};

/** Why one of two rules that both speak of a joint goes before the other. */
function precedence(first: Ranked, second: Ranked): string {
  if (first.materials !== second.materials) return `it names ${materialWords[first.materials]}, "${second.rule.id}" ${materialWords[second.materials]}`;
  if (first.qualifiers !== second.qualifiers) return `it names ${qualifiersOf(first.rule)}, "${second.rule.id}" ${second.qualifiers === 0 ? 'no intent, kind or zone' : `only ${qualifiersOf(second.rule)}`}`;
  return `it is as specific as "${second.rule.id}" and stands later in the book`;
}

/** What a rule asks for that the joint is not, or is not known to be; undefined where it speaks of the joint. */
function mismatch(rule: PairRule, { intent, kind, zones }: RulingFacts): string | undefined {
  const asks = [
    ...(rule.intent !== undefined && rule.intent !== intent ? [`the intent ${rule.intent}${intent === undefined ? '' : `, this is ${intent}`}`] : []),
    ...(rule.kind !== undefined && rule.kind !== kind ? [`the kind ${rule.kind}${kind === undefined ? '' : `, this is ${kind}`}`] : []),
    ...(rule.zone !== undefined && zones?.includes(rule.zone) !== true ? [`the zone ${rule.zone}${zones === undefined ? '' : ', neither part lies in it'}`] : []),
  ];
  return asks.length === 0 ? undefined : `only for ${asks.join('; and ')}`;
}

/**
 * Every rule of a book that names a pair of materials under some intent, kind or zone, the most specific first, and the classes last:
 * which one wins for a joint of which these facts are known, and why. The order of the two materials never matters.
 */
export function pairRuling(book: RuleBook, [a, b]: readonly [Material, Material], facts: RulingFacts): readonly RulingEntry[] {
  const ranked = book.rules.map(rank)
    .filter(({ rule }) => matchesPair(rule.pair, [{ material: a }, { material: b }]))
    .sort((x, y) => y.materials - x.materials || y.qualifiers - x.qualifiers || y.index - x.index);
  const speaking = ranked.filter(({ rule }) => mismatch(rule, facts) === undefined);
  const [winner, next] = speaking;
  const entries = ranked.map((entry): RulingEntry => {
    const { rule } = entry;
    const reach = ruleReach(rule);
    if (entry === winner) return { rule, reach, place: 'wins', why: next === undefined ? 'no other rule speaks of this joint' : precedence(entry, next) };
    const apart = mismatch(rule, facts);
    if (apart !== undefined) return { rule, reach, place: 'elsewhere', why: apart };
    return { rule, reach, place: 'yields', why: `"${winner!.rule.id}" goes before: ${precedence(winner!, entry)}` };
  });
  return [...entries, classesEntry(book, [a, b], winner?.rule)];
}

function classesEntry(book: RuleBook, pair: readonly [Material, Material], winner: PairRule | undefined): RulingEntry {
  const [first, second] = pair.map((material) => book.materials.find((row) => row.material === material));
  const sum = first === undefined || second === undefined ? 'the book has no class for one of the materials' : combineClasses(first, second, book.combination).why;
  return {
    rule: undefined, reach: 'the classes of the two materials', place: winner === undefined ? 'wins' : 'yields',
    why: winner === undefined ? `no rule speaks of this joint: ${sum}` : `they give what "${winner.id}" leaves open: ${sum}`,
  };
}
