import type { Cabin } from '../cabin.ts';
import type { Draft, Faults } from '../schema/index.ts';
import type { ReferenceIndex } from './reference-index.ts';
import { checkKnown, entriesOf } from './reference-index.ts';

/** Joints join two known, unlike parts, once for each kind; references, lights and runs are known. */
export function checkJoints(cabin: Draft<Cabin>, index: ReferenceIndex, faults: Faults): void {
  const pairs = new Map<string, string>();
  for (const [at, joint] of entriesOf(cabin.joints)) {
    const path = `joints[${at}]`;
    const parts = joint.parts;
    if (parts !== undefined) {
      parts.forEach((part, side) => {
        checkKnown(faults, 'unknown-part', part, index.parts, 'the id of a part', `${path}.parts[${side}]`);
      });
      if (parts[0] === parts[1]) {
        faults.add('joint-with-itself', { expected: 'two different parts', found: `${JSON.stringify(parts[0])} twice` }, `${path}.parts`);
      }
      const key = JSON.stringify([...[...parts].sort(), joint.kind]);
      const other = pairs.get(key);
      if (other === undefined) pairs.set(key, path);
      else {
        faults.add('duplicate-joint', {
          expected: 'one joint of a kind for a pair of parts', found: `${parts.join(' and ')} by ${joint.kind ?? 'no kind'}, as at ${other}`,
        }, `${path}.parts`);
      }
      if (joint.reference !== undefined && !parts.includes(joint.reference)) {
        faults.add('reference-not-of-joint', { expected: `one of ${parts.join(', ')}`, found: JSON.stringify(joint.reference) }, `${path}.reference`);
      }
    }
    for (const [decisionAt, decision] of entriesOf(joint.decisions)) {
      checkKnown(faults, 'unknown-light', decision.light, index.lights, 'the name of a light', `${path}.decisions[${decisionAt}].light`);
    }
    for (const [recordAt, record] of entriesOf(joint.visualRecords)) {
      if (record.light === undefined || index.lights.has(record.light)) continue;
      faults.add('light-not-listed', {
        severity: 'warning', expected: 'a light of the list or of the cabin', found: JSON.stringify(record.light),
        hint: 'The record is shown and cannot be set beside a computed light.',
      }, `${path}.visualRecords[${recordAt}].light`);
    }
  }
  checkProposals(cabin, faults);
  for (const [at, run] of entriesOf(cabin.runs)) {
    const seen = new Set<string>();
    for (const [partAt, part] of entriesOf(run.parts)) {
      const path = `runs[${at}].parts[${partAt}]`;
      checkKnown(faults, 'unknown-part', part, index.parts, 'the id of a part', path);
      if (seen.has(part)) faults.add('part-twice-in-run', { expected: 'each part once in a run', found: JSON.stringify(part) }, path);
      seen.add(part);
    }
  }
}

/** A proposal changes the two parts of its own joint, each once. */
function checkProposals(cabin: Draft<Cabin>, faults: Faults): void {
  for (const [at, { parts, proposals }] of entriesOf(cabin.joints)) {
    for (const [proposalAt, { shifts }] of entriesOf(proposals)) {
      const seen = new Set<string>();
      for (const [shiftAt, { part }] of entriesOf(shifts)) {
        if (part === undefined) continue;
        const path = `joints[${at}].proposals[${proposalAt}].shifts[${shiftAt}].part`;
        if (parts !== undefined && !parts.includes(part)) faults.add('proposal-not-of-joint', { expected: `one of ${parts.join(', ')}`, found: JSON.stringify(part) }, path);
        if (seen.has(part)) faults.add('part-twice-in-proposal', { expected: 'one shift for a part', found: `${JSON.stringify(part)} again` }, path);
        seen.add(part);
      }
    }
  }
}
