import type { Cabin, Joint, Part } from '../cabin/cabin.ts';
import { cabinIndex } from '../cabin/cabin-index.ts';
import { carriedJoint, hasMaster, sameButBeside } from './carried.ts';
import { judgeContext } from './judge-context.ts';
import type { JudgeContext } from './judge-context.ts';
import { judgeWith } from './judge.ts';
import type { JudgeOptions, JudgedCabin } from './judge.ts';
import type { JointResult, PartResult } from './judgement.ts';
import { rejudgeInside } from './rejudge-inside.ts';

/**
 * Judges a cabin that was made from another by an edit: only what the edit touched is judged, everything else is taken over, and
 * the result is the one that judging all of it would give. Touched is told by identity: documents share what did not change.
 * The rule book is that of the judgement before; for another book the cabin is judged anew.
 */
export function rejudge(previous: JudgedCabin, cabin: Cabin, options: JudgeOptions = {}): JudgedCabin {
  const { context: before, bookIssues } = previous;
  const stage = options.stage ?? cabin.stage ?? 'new';
  const asOf = options.asOf ?? cabin.asOf;
  const inside = stage === before.stage && asOf === before.asOf ? rejudgeInside(previous, cabin) : undefined;
  if (inside !== undefined) return inside;
  if (stage !== before.stage || asOf !== before.asOf || cabin.lights !== before.cabin.lights) {
    return judgeWith(judgeContext(cabin, before.rules, stage, asOf), bookIssues, { basis: none, part: none, joint: none, paths: none });
  }
  const changed = changedGround(before, cabin);
  const memory = changed.masters.size === 0 ? before.memory : { ...before.memory, masters: new Map() };
  const old = before.cabin;
  const sameNames = cabin.parts.length === old.parts.length && cabin.parts.every((part, place) => part === old.parts[place] || (part.id === old.parts[place].id && part.name === old.parts[place].name));
  const context = judgeContext(cabin, before.rules, stage, asOf, memory, sameNames ? before.names : undefined);
  const sameGround = partsOnSameGround(before, context, changed);
  // Most parts and joints lie where they lay and are the same objects: these are told by that alone, without looking anything up.
  const groundStands = changed.conditions.size === 0 && changed.masters.size === 0 && sameNames;
  const zonesStand = cabin.zones === old.zones;
  const previousOf = before.index;
  const oldParts = lazily(() => new Map(previous.judgement.parts.map((part) => [part.id, part])));
  const oldJoints = lazily(() => new Map(previous.joints.map((judged) => [judged.result.id, judged])));
  const moved = movedParts(old, cabin);
  /** Parts whose basis is another object than before. */
  const restated = new Set<string>();
  /** Parts that are judged anew. */
  const anew = new Set<string>();
  return judgeWith(context, bookIssues, {
    basis: (part, place) => {
      const before = part === old.parts[place] && groundStands && !moved.has(part.id) ? previous.bases.get(part.id) : undefined;
      if (before !== undefined) return before;
      restated.add(part.id);
      const basis = sameGround(part) ? previous.bases.get(part.id) : undefined;
      if (basis === undefined) {
        anew.add(part.id);
        return undefined;
      }
      return basis.part === part ? basis : { ...basis, part };
    },
    part: (basis, place): PartResult | undefined => {
      const { zone, id } = basis.part;
      if (anew.has(id)) return undefined;
      if (zonesStand && !restated.has(id)) return previous.judgement.parts[place]?.id === id ? previous.judgement.parts[place] : oldParts().get(id);
      const stands = previousOf.parts.get(id)?.zone === zone && previousOf.zones.get(zone) === context.index.zones.get(zone);
      return stands ? oldParts().get(id) : undefined;
    },
    joint: (joint, bases, place) => {
      const [first, second] = joint.parts;
      const untouched = !restated.has(first) && !restated.has(second);
      if (untouched && joint === old.joints[place] && previous.joints[place]?.input.joint === joint) return previous.joints[place];
      const judged = oldJoints().get(joint.id);
      if (judged === undefined) return undefined;
      if (untouched && joint === judged.input.joint) return judged;
      return anew.has(first) || anew.has(second) ? undefined : carriedJoint(context, judged, joint, bases);
    },
    paths: (results) => (sameWays(previous, cabin, results) ? previous.paths : undefined),
  });
}

const none = (): undefined => undefined;

function lazily<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => (made ??= make());
}

/** Parts that lie elsewhere in the list, are other objects, or are the other hand of one that is. */
function movedParts(old: Cabin, cabin: Cabin): ReadonlySet<string> {
  const moved = new Set<string>();
  cabin.parts.forEach((part, place) => {
    if (part !== old.parts[place]) moved.add(part.id);
  });
  // A part that went away may have been the other hand of one that stays.
  const gone = cabin.parts.length === old.parts.length && [...moved].every((id) => cabinIndex(old).parts.has(id)) ? [] : old.parts.filter(({ id }) => !cabinIndex(cabin).parts.has(id));
  for (const id of [...moved, ...gone.map(({ id }) => id)]) {
    for (const index of [cabinIndex(old), cabinIndex(cabin)]) {
      const partner = index.mirrors.get(id);
      if (partner !== undefined) moved.add(partner.id);
    }
  }
  return moved;
}

/** What parts rest on beside themselves, by id, where it is not the same as before. */
interface ChangedGround {
  readonly conditions: ReadonlySet<string>;
  readonly masters: ReadonlySet<string>;
}

function changedGround(before: JudgeContext, cabin: Cabin): ChangedGround {
  const conditions = changedConditions(before, cabin);
  const changedMasters = new Set<string>();
  if (mastersMayDiffer(before.cabin, cabin)) {
    const { masters } = cabinIndex(cabin);
    for (const [id, master] of before.index.masters) if (masters.get(id) !== master) changedMasters.add(id);
    for (const id of masters.keys()) if (!before.index.masters.has(id)) changedMasters.add(id);
  }
  if (conditions.size > 0) {
    for (const [id, master] of before.index.masters) if (master.readings.some((reading) => conditions.has(reading.conditions))) changedMasters.add(id);
  }
  return { conditions, masters: changedMasters };
}

/** Whether a recorded master, or a part with one, is another object than before. */
const mastersMayDiffer = (old: Cabin, cabin: Cabin): boolean => cabin.masters !== old.masters || cabin.parts.length !== old.parts.length
  || cabin.parts.some((part, place) => part !== old.parts[place] && (hasMaster(part) || hasMaster(old.parts[place])));

/** Ids of conditions that are other ones now, or whose instrument is. */
function changedConditions(before: JudgeContext, cabin: Cabin): ReadonlySet<string> {
  if (cabin.conditions === before.cabin.conditions && cabin.instruments === before.cabin.instruments) return new Set();
  const instruments = new Map(cabin.instruments.map((instrument) => [instrument.id, instrument]));
  const conditions = new Map(cabin.conditions.map((entry) => [entry.id, entry]));
  const changed = new Set<string>();
  for (const [id, entry] of before.index.conditions) {
    if (conditions.get(id) !== entry || instruments.get(entry.instrument) !== before.index.instruments.get(entry.instrument)) changed.add(id);
  }
  for (const id of conditions.keys()) if (!before.index.conditions.has(id)) changed.add(id);
  return changed;
}

/** Tells the parts that are judged on the same as before: they, their other hand, their name in sentences and all that their readings rest on. */
function partsOnSameGround(before: JudgeContext, context: JudgeContext, changed: ChangedGround): (part: Part) => boolean {
  const restsOnChanged = changed.conditions.size === 0 && changed.masters.size === 0 ? () => false : (part: Part) => restsOn(part, changed);
  return (part) => {
    if (!sameButBeside(part, before.index.parts.get(part.id)) || before.names.get(part.id) !== context.names.get(part.id)) return false;
    const [mirror, mirrorBefore] = [context.index.mirrors.get(part.id), before.index.mirrors.get(part.id)];
    if (mirror === undefined || mirrorBefore === undefined) return mirror === mirrorBefore && !restsOnChanged(part);
    return sameButBeside(mirror, mirrorBefore) && !restsOnChanged(part) && !restsOnChanged(mirror);
  };
}

const restsOn = (part: Part, { conditions, masters }: ChangedGround): boolean =>
  masters.has(part.target?.master ?? '') || part.sources.some((source) => source.specimens.some((specimen) => specimen.readings.some((reading) =>
    conditions.has(reading.conditions) || (reading.quantity === 'difference' && masters.has(reading.master)))));

/** Whether the same parts in the same zones are held together by the same `match` joints, so that the ways between them are the same. */
function sameWays({ context: before, judgement }: JudgedCabin, cabin: Cabin, results: readonly JointResult[]): boolean {
  const old = before.cabin;
  const samePart = (part: Part, index: number): boolean => part === old.parts[index] || (part.id === old.parts[index]?.id && part.zone === old.parts[index].zone);
  const sameJoint = (joint: Joint, index: number): boolean => {
    const other = old.joints[index];
    return joint === other || (other !== undefined && joint.id === other.id && joint.kind === other.kind && joint.parts.every((part, side) => part === other.parts[side]));
  };
  return cabin.parts.length === old.parts.length && cabin.joints.length === old.joints.length
    && cabin.parts.every(samePart) && cabin.joints.every(sameJoint)
    && results.every((result, index) => result.intent.colour === judgement.joints[index]?.intent.colour);
}
