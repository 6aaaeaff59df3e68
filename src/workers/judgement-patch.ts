import type { Judgement } from '../harmony/judgement.ts';
import { patchSequence, sequencePatch } from './sequence-patch.ts';
import type { SequencePatch } from './sequence-patch.ts';

/** Lists as long as the cabin is large, whose entries stay the same objects where nothing changed. */
const lists = ['joints', 'parts', 'runs', 'requests'] as const;
type ListName = typeof lists[number];
type Fields = Omit<Judgement, ListName>;

/** What is other in a judgement than in the one before it, small enough to be sent at every edit. */
export interface JudgementPatch {
  readonly fields: Partial<Fields>;
  readonly lists: { readonly [Name in ListName]: SequencePatch<Judgement[Name][number]> };
}

const isList = (key: string): key is ListName => (lists as readonly string[]).includes(key);

/** The change between two judgements that share what did not change; entries of lists are told apart by identity, everything else by content. */
export function judgementPatch(before: Judgement, after: Judgement): JudgementPatch {
  const fields: Record<string, unknown> = {};
  for (const [key, value] of Object.entries(after)) {
    if (isList(key)) continue;
    const old: unknown = before[key as keyof Fields];
    if (old !== value && JSON.stringify(old) !== JSON.stringify(value)) fields[key] = value;
  }
  return {
    fields: fields as Partial<Fields>,
    lists: {
      joints: sequencePatch(before.joints, after.joints), parts: sequencePatch(before.parts, after.parts),
      runs: sequencePatch(before.runs, after.runs), requests: sequencePatch(before.requests, after.requests),
    },
  };
}

/** The later judgement from the earlier one; results that did not change are the same objects. */
export const patchJudgement = (before: Judgement, { fields, lists: changed }: JudgementPatch): Judgement => ({
  ...before, ...fields,
  joints: patchSequence(before.joints, changed.joints), parts: patchSequence(before.parts, changed.parts),
  runs: patchSequence(before.runs, changed.runs), requests: patchSequence(before.requests, changed.requests),
});
