import type { Part, Source } from '../../src/cabin/cabin.ts';
import type { JointResult } from '../../src/harmony/judgement.ts';

/** What a joint can be found by. */
export interface JointFacts {
  /** Its verdict; an accepted clash is `accepted`. */
  readonly verdict: string;
  readonly zones: readonly string[];
  readonly suppliers: readonly string[];
  /** Checks that clash or are open. */
  readonly troubles: readonly string[];
}

interface Known extends JointFacts {
  readonly parts: readonly [Part | undefined, Part | undefined];
  text?: string;
}

/** The source a part stands by: the one it names, else its first. */
export const standingSource = (part: Part | undefined): Source | undefined =>
  part?.sources.find((source) => source.id === part.source) ?? part?.sources[0];

const known = new WeakMap<JointResult, Known>();

/** The facts of a joint, made once for each result and its two parts: a cabin of thousands of joints is looked through at every edit. */
export const jointFacts = (joint: JointResult, parts: ReadonlyMap<string, Part>): JointFacts => factsOf(joint, parts);

/** All that a search looks through, in lower case. */
export function searchText(joint: JointResult, parts: ReadonlyMap<string, Part>): string {
  const facts = factsOf(joint, parts);
  return (facts.text ??= textOf(joint, facts.parts));
}

function factsOf(joint: JointResult, parts: ReadonlyMap<string, Part>): Known {
  const [first, second] = [parts.get(joint.parts[0]), parts.get(joint.parts[1])];
  const before = known.get(joint);
  if (before !== undefined && before.parts[0] === first && before.parts[1] === second) return before;
  const made: Known = {
    parts: [first, second],
    verdict: joint.verdict === 'clashes' && joint.accepted ? 'accepted' : joint.verdict,
    zones: different(first?.zone, second?.zone),
    suppliers: different(standingSource(first)?.supplier, standingSource(second)?.supplier),
    troubles: [...new Set(joint.checks.filter((check) => check.verdict === 'clashes' || check.verdict === 'open').map((check) => check.check))],
  };
  known.set(joint, made);
  return made;
}

const different = (...values: readonly (string | undefined)[]): readonly string[] => [...new Set(values.filter((value) => value !== undefined))];

function textOf(joint: JointResult, parts: Known['parts']): string {
  const sides = parts.map((part, side) => {
    const source = standingSource(part);
    return [joint.parts[side], part?.name, part?.partNumber, part?.zone, source?.material, source?.supplier].join(' ');
  });
  return [joint.id, ...sides, joint.sentence, joint.kind].join(' ').toLowerCase();
}
