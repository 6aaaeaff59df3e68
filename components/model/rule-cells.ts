import type { Cabin, ColourIntent, JointKind, Material } from '../../src/cabin/cabin.ts';
import { colourIntents, jointKinds } from '../../src/cabin/cabin.ts';
import type { JointResult } from '../../src/harmony/judgement.ts';
import { combineClasses, glossRuleText, pairRuling } from '../../src/rules/index.ts';
import { plainNumber } from '../../src/rules/plain-number.ts';
import type { MaterialClass, PairRule, RuleBook } from '../../src/rules/index.ts';
import { partsById, standingSource } from './joint-filter.ts';
import { pairKey } from './rule-pairs.ts';

/** Which joints the matrix looks at; an absent field lets everything through. */
export interface RuleFilter {
  readonly intent?: ColourIntent | undefined;
  readonly kind?: JointKind | undefined;
  readonly zone?: string | undefined;
}

/** One unordered pair of materials as the cabin has it. */
export interface RuleCell {
  readonly key: string;
  readonly materials: readonly [Material, Material];
  /** Its joints that the filter lets through. */
  readonly joints: readonly JointResult[];
  readonly holds: number;
  readonly open: number;
  /** Clashes that no decision accepts, and those that one does. */
  readonly clashes: number;
  readonly accepted: number;
  /** Ids of the rules that won there, the most frequent first; the classes are `undefined`. What the facts alone give where no joint meets. */
  readonly winners: readonly (PairRule | undefined)[];
  /** The colour limit of the first of them as written. */
  readonly limit: string;
  readonly gloss: string;
}

/** Materials that parts of the cabin stand by, in the order of the book; those that the book does not know last. */
export function materialsInUse(cabin: Cabin, book: RuleBook): readonly Material[] {
  const used = new Set(cabin.parts.map((part) => standingSource(part)?.material).filter((material) => material !== undefined));
  const known = book.materials.map(({ material }) => material);
  return [...known.filter((material) => used.has(material)), ...[...used].filter((material) => !known.includes(material)).sort()];
}

/** The joints that a filter lets through. */
export function filteredJoints(cabin: Cabin, joints: readonly JointResult[], { intent, kind, zone }: RuleFilter): readonly JointResult[] {
  const parts = partsById(cabin);
  return joints.filter((joint) => (intent === undefined || joint.intent.colour === intent) && (kind === undefined || joint.kind === kind)
    && (zone === undefined || joint.parts.some((part) => parts.get(part)?.zone === zone)));
}

/** Every unordered pair of some materials, row after row up to the diagonal. */
export function ruleCells(cabin: Cabin, book: RuleBook, joints: readonly JointResult[], filter: RuleFilter, materials: readonly Material[]): readonly (readonly RuleCell[])[] {
  const parts = partsById(cabin);
  const byPair = new Map<string, JointResult[]>();
  for (const joint of filteredJoints(cabin, joints, filter)) {
    const [a, b] = joint.parts.map((id) => standingSource(parts.get(id))?.material ?? '');
    const key = pairKey(a ?? '', b ?? '');
    const known = byPair.get(key);
    if (known === undefined) byPair.set(key, [joint]);
    else known.push(joint);
  }
  const rules = new Map(book.rules.map((rule) => [rule.id, rule]));
  return materials.map((row, index) => materials.slice(0, index + 1).map((column) => cellOf(book, rules, [column, row], byPair.get(pairKey(row, column)) ?? [], filter)));
}

function cellOf(book: RuleBook, rules: ReadonlyMap<string, PairRule>, materials: readonly [Material, Material], joints: readonly JointResult[], filter: RuleFilter): RuleCell {
  const count = (wanted: (joint: JointResult) => boolean): number => joints.filter(wanted).length;
  const winners = joints.length === 0 ? [assumedWinner(book, materials, filter)] : byFrequency(joints.map(({ rule }) => rules.get(rule)));
  const [first] = winners;
  return {
    key: pairKey(...materials), materials, joints,
    holds: count(({ verdict }) => verdict === 'holds'), open: count(({ verdict }) => verdict === 'open'),
    clashes: count(({ verdict, accepted }) => verdict === 'clashes' && !accepted), accepted: count(({ verdict, accepted }) => verdict === 'clashes' && accepted),
    winners, limit: limitText(book, materials, first), gloss: glossTextOf(book, materials, first),
  };
}

const assumedWinner = (book: RuleBook, materials: readonly [Material, Material], { intent, kind, zone }: RuleFilter): PairRule | undefined =>
  pairRuling(book, materials, { intent: intent ?? 'match', kind: kind ?? 'edge', zones: zone === undefined ? undefined : [zone] }).find(({ place }) => place === 'wins')?.rule;

function byFrequency<T>(items: readonly T[]): readonly T[] {
  const counts = new Map<T, number>();
  for (const item of items) counts.set(item, (counts.get(item) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1]).map(([item]) => item);
}

const rowsOf = (book: RuleBook, materials: readonly [Material, Material]): readonly (MaterialClass | undefined)[] =>
  materials.map((material) => book.materials.find((row) => row.material === material));

/** A figure of a limit with at least one decimal, so that a column of them can be compared. */
const figure = (value: number): string => { const text = plainNumber(value); return Number.isInteger(value) ? `${text}.0` : text; };

/** The colour limit as written: a number, or a formula; an en dash where the book has none. */
export function limitText(book: RuleBook, materials: readonly [Material, Material], rule: PairRule | undefined): string {
  const own = rule?.colour?.limit;
  if (own !== undefined) return typeof own === 'number' ? figure(own) : own;
  const [a, b] = rowsOf(book, materials);
  return a === undefined || b === undefined ? '–' : figure(combineClasses(a, b, book.combination).limit);
}

/** The gloss limit in words. */
export function glossTextOf(book: RuleBook, materials: readonly [Material, Material], rule: PairRule | undefined): string {
  if (rule?.gloss !== undefined) return glossRuleText(rule.gloss);
  const rows = rowsOf(book, materials);
  const barred = rows.find((row) => row?.gloss.kind === 'not applicable');
  if (barred !== undefined) return glossRuleText(barred.gloss);
  const texts = [...new Set(rows.flatMap((row) => (row === undefined ? [] : [glossRuleText(row.gloss)])))].sort();
  return texts.length === 0 ? '–' : texts.length === 1 ? texts[0]! : `the larger at one angle of ${texts.join(' and ')}`;
}

const oneOf = <T extends string>(values: readonly T[], value: string | undefined): T | undefined => values.find((one) => one === value);

/** The filter as an address has it. */
export const ruleFilter = (options: Readonly<Record<string, string>>): RuleFilter =>
  ({ intent: oneOf(colourIntents, options['intent']), kind: oneOf(jointKinds, options['kind']), zone: options['in-zone'] });
