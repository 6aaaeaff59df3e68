import type { JointResult, Judgement, PartResult } from '../harmony/judgement.ts';

type Fields = Omit<Judgement, 'joints' | 'parts'>;

/** Results that are new or other, and the order of all where it is another. */
interface ResultsPatch<T> {
  readonly items: readonly T[];
  readonly order?: readonly string[];
}

/** What is other in a judgement than in the one before it, small enough to be sent at every edit. */
export interface JudgementPatch {
  readonly fields: Partial<Fields>;
  readonly joints: ResultsPatch<JointResult>;
  readonly parts: ResultsPatch<PartResult>;
}

/** The change between two judgements that share what did not change; results are told apart by identity, everything else by content. */
export function judgementPatch(before: Judgement, after: Judgement): JudgementPatch {
  const fields: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(after)) {
    if (key === 'joints' || key === 'parts') continue;
    const old: unknown = before[key as keyof Fields];
    if (old !== value && JSON.stringify(old) !== JSON.stringify(value)) fields[key] = value;
  }
  return { fields: fields as Partial<Fields>, joints: resultsPatch(before.joints, after.joints), parts: resultsPatch(before.parts, after.parts) };
}

function resultsPatch<T extends { readonly id: string }>(before: readonly T[], after: readonly T[]): ResultsPatch<T> {
  const sameOrder = before.length === after.length && before.every((item, index) => item === after[index] || item.id === after[index]?.id);
  if (sameOrder) return { items: after.filter((item, index) => item !== before[index]) };
  const known = new Set(before);
  return { items: after.filter((item) => !known.has(item)), order: after.map(({ id }) => id) };
}

/** The later judgement from the earlier one; results that did not change are the same objects. */
export function patchJudgement(before: Judgement, { fields, joints, parts }: JudgementPatch): Judgement {
  return { ...before, ...fields, joints: patchResults(before.joints, joints), parts: patchResults(before.parts, parts) };
}

function patchResults<T extends { readonly id: string }>(before: readonly T[], { items, order }: ResultsPatch<T>): readonly T[] {
  if (items.length === 0 && order === undefined) return before;
  const fresh = new Map(items.map((item) => [item.id, item]));
  if (order === undefined) return before.map((item) => fresh.get(item.id) ?? item);
  const kept = new Map(before.map((item) => [item.id, item]));
  return order.flatMap((id) => fresh.get(id) ?? kept.get(id) ?? []);
}
