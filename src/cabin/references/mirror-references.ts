import type { Cabin, Part } from '../cabin.ts';
import type { Draft, Faults } from '../schema/index.ts';
import type { ReferenceIndex } from './reference-index.ts';
import { checkKnown, entriesOf } from './reference-index.ts';

/** `mirrorOf` pairs one left with one right part: no part with itself, no rings or chains, no second mirror of one part. */
export function checkMirrors(cabin: Draft<Cabin>, index: ReferenceIndex, faults: Faults): void {
  const taken = new Map<string, string>();
  for (const [at, part] of entriesOf(cabin.parts)) {
    const other = part.mirrorOf;
    if (other === undefined) continue;
    const path = `parts[${at}].mirrorOf`;
    if (!checkKnown(faults, 'unknown-part', other, index.parts, 'the id of a part', path)) continue;
    const ring = ringFrom(part, index);
    if (ring !== undefined) {
      faults.add('mirror-cycle', {
        expected: 'a mirror that leads back to no part', found: ring.join(' -> '), hint: 'Only one of the two hands says mirrorOf.',
      }, path);
      continue;
    }
    const partner = index.parts.get(other);
    if (partner?.mirrorOf !== undefined) {
      faults.add('mirror-chain', {
        expected: 'a part that is no mirror itself', found: `${JSON.stringify(other)}, the mirror of ${JSON.stringify(partner.mirrorOf)}`,
      }, path);
    }
    const owner = taken.get(other);
    if (owner === undefined) taken.set(other, part.id ?? '');
    else faults.add('mirror-taken', {
      expected: 'one mirror of a part', found: `${JSON.stringify(other)}, mirrored by ${JSON.stringify(owner)} already`,
    }, path);
    const handed = new Set([part.hand, partner?.hand]);
    if (!(handed.has('left') && handed.has('right'))) {
      faults.add('mirror-hand', {
        expected: 'one part of hand "left" and one of hand "right"', found: `${part.hand ?? 'no hand'} and ${partner?.hand ?? 'no hand'}`,
      }, path);
    }
  }
}

function ringFrom(part: Draft<Part>, index: ReferenceIndex): string[] | undefined {
  const seen: string[] = [part.id ?? ''];
  let next = part.mirrorOf;
  while (next !== undefined) {
    if (next === part.id) return [...seen, next];
    if (seen.includes(next)) return undefined;
    seen.push(next);
    next = index.parts.get(next)?.mirrorOf;
  }
  return undefined;
}
