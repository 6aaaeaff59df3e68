import type { Cabin, Part } from '../cabin/cabin.ts';
import { carryIndex } from '../cabin/cabin-index.ts';
import { cabinStep } from '../cabin/cabin-step.ts';
import type { CabinStep } from '../cabin/cabin-step.ts';
import { DerivedMap } from '../cabin/derived-map.ts';
import { carriedJoint, hasMaster, sameButBeside } from './carried.ts';
import { judgeContext } from './judge-context.ts';
import type { JudgeContext } from './judge-context.ts';
import { judgedCabin, judgePart, masterUseIn } from './judge.ts';
import type { JudgedCabin } from './judge.ts';
import { judgeJoint } from './judge-joint.ts';
import { partBasis } from './part-bases.ts';
import type { PartBasis } from './part-basis.ts';
import { requestsAfter } from './requests/measurement-requests.ts';
import { judgeRuns, pathsOfMatches, runsAfter } from './runs.ts';
import { summaryBlocks } from './summary.ts';

/** Fields of the document that nothing is judged by. */
const idle: ReadonlySet<keyof Cabin> = new Set(['name', 'trimLevel', 'colourway', 'phase', 'revision', 'note', 'volume', 'planning']);

/**
 * Judges a cabin after an edit that stayed inside of some parts and joints: what it costs depends on what those touch and not on the
 * size of the cabin, but for the copying of lists. Undefined where the edit was of another kind, or reaches beyond its parts: by
 * their name in sentences, a master that others are held to, or the other hand they have.
 */
export function rejudgeInside(previous: JudgedCabin, cabin: Cabin): JudgedCabin | undefined {
  const { context: before } = previous;
  const step = cabinStep(before.cabin, cabin);
  if (step === undefined || !staysInside(before.cabin, cabin, step)) return undefined;
  carryIndex(before.cabin, cabin, step);
  const context = judgeContext(cabin, before.rules, before.stage, before.asOf, before.memory, before.names);
  const { inOrder, anew, restated } = basesAfter(previous, context, step);
  const bases = new DerivedMap(context.index.partPlaces, (place) => inOrder[place]);
  const parts = previous.judgement.parts.slice();
  const judgedParts = [...restated].filter((place) => anew.has(place) || cabin.parts[place].zone !== before.cabin.parts[place].zone);
  for (const place of judgedParts) parts[place] = judgePart(context, inOrder[place]);
  const { joints, results, changed } = jointsAfter(previous, context, bases, { step, anew, restated, masterUse: masterUseIn(context, parts) });
  const sameWays = samePlaces(previous, cabin, step) && changed.every((place) => results[place].intent.colour === previous.judgement.joints[place].intent.colour);
  const paths = sameWays ? previous.paths : pathsOfMatches(cabin, results);
  const touched = new Set([...restated].map((place) => cabin.parts[place].id));
  return judgedCabin({
    context, bookIssues: previous.bookIssues, bases, inOrder, joints, parts, paths, results,
    runs: sameWays ? runsAfter(context, bases, previous.judgement.runs, touched) : judgeRuns(context, bases, paths),
    blocks: summaryBlocks(results, previous.blocks, changed),
    ranked: requestsAfter({ context, joints, parts, bases }, previous.ranked, changed, judgedParts),
  });
}

function staysInside(before: Cabin, after: Cabin, { parts, fields }: CabinStep): boolean {
  const alike = (old: Part, part: Part): boolean => old.name === part.name && old.mirrorOf === part.mirrorOf && !hasMaster(old) && !hasMaster(part);
  return fields.every((name) => idle.has(name)) && parts.every((place) => alike(before.parts[place], after.parts[place]));
}

interface BasesAfter {
  readonly inOrder: readonly PartBasis[];
  /** Places of the parts that are judged on other ground than before. */
  readonly anew: ReadonlySet<number>;
  /** Places of the parts whose basis is another object: those, and the ones of which something else was changed. */
  readonly restated: ReadonlySet<number>;
}

function basesAfter({ context: { cabin: old }, inOrder: before }: JudgedCabin, context: JudgeContext, step: CabinStep): BasesAfter {
  const { cabin, index } = context;
  const inOrder = before.slice();
  const [anew, restated] = [new Set<number>(), new Set<number>()];
  const sameGround = (place: number): boolean => sameButBeside(cabin.parts[place], old.parts[place]);
  const handOf = (place: number): number | undefined => index.partPlaces.get(index.mirrors.get(cabin.parts[place].id)?.id ?? '');
  for (const changed of step.parts) {
    for (const place of [changed, handOf(changed)]) {
      if (place === undefined || restated.has(place)) continue;
      const hand = handOf(place);
      const stands = sameGround(place) && (hand === undefined || sameGround(hand));
      if (stands && cabin.parts[place] === old.parts[place]) continue;
      restated.add(place);
      if (!stands) anew.add(place);
      inOrder[place] = stands ? { ...before[place], part: cabin.parts[place] } : partBasis(context, cabin.parts[place]);
    }
  }
  return { inOrder, anew, restated };
}

interface Reached extends Pick<BasesAfter, 'anew' | 'restated'> {
  readonly step: CabinStep;
  readonly masterUse: (part: string) => number | undefined;
}

/** The joints with those judged anew that the edit reaches, and the places where the result is another. */
function jointsAfter(previous: JudgedCabin, context: JudgeContext, bases: ReadonlyMap<string, PartBasis>, { step, anew, restated, masterUse }: Reached) {
  const { cabin, index } = context;
  const joints = previous.joints.slice();
  const results = previous.judgement.joints.slice();
  const reached = new Set([...step.joints, ...[...restated].flatMap((place) => index.jointsOfParts.get(cabin.parts[place].id) ?? [])]);
  const changed: number[] = [];
  for (const place of reached) {
    const joint = cabin.joints[place];
    const onNewGround = joint.parts.some((part) => anew.has(index.partPlaces.get(part) ?? -1));
    const carried = onNewGround ? undefined : carriedJoint(context, previous.joints[place], joint, bases);
    const judged = carried ?? judgeJoint(context, joint, bases, masterUse);
    joints[place] = judged;
    if (results[place] === judged.result) continue;
    results[place] = judged.result;
    changed.push(place);
  }
  return { joints, results, changed };
}

/** Whether the changed parts lie in the same zones and the changed joints join the same parts in the same way. */
function samePlaces({ context: { cabin: old } }: JudgedCabin, cabin: Cabin, { parts, joints }: CabinStep): boolean {
  return parts.every((place) => old.parts[place].zone === cabin.parts[place].zone) && joints.every((place) => {
    const [before, after] = [old.joints[place], cabin.joints[place]];
    return before.kind === after.kind && before.parts.every((part, side) => part === after.parts[side]);
  });
}
