import type { Matrix3 } from '../../quantities.ts';
import type { Cabin } from '../cabin.ts';
import { memberPath } from '../json-path.ts';
import type { Draft, Faults } from '../schema/index.ts';
import { isPositiveSemidefinite } from '../shapes/covariance.ts';
import type { ReferenceIndex } from './reference-index.ts';
import { checkKnown, entriesOf } from './reference-index.ts';

/** Conditions name known instruments; covariances shared by two instruments are stated alike and fit the instruments' own. */
export function checkInstruments(cabin: Draft<Cabin>, index: ReferenceIndex, faults: Faults): void {
  for (const [at, conditions] of entriesOf(cabin.conditions)) {
    checkKnown(faults, 'unknown-instrument', conditions.instrument, index.instruments, 'the id of an instrument', `conditions[${at}].instrument`);
  }
  for (const [at, instrument] of entriesOf(cabin.instruments)) {
    for (const [other, shared] of Object.entries(instrument.agreement?.shared ?? {})) {
      const path = memberPath(`instruments[${at}].agreement.shared`, other);
      if (!checkKnown(faults, 'unknown-instrument', other, index.instruments, 'the id of an instrument', path)) continue;
      const partner = index.instruments.get(other);
      if (other === instrument.id) {
        faults.add('shared-with-itself', { expected: 'another instrument', found: JSON.stringify(other) }, path);
      } else if (shared !== undefined) {
        checkShared(shared, instrument.agreement?.covariance, partner?.agreement?.covariance, path, faults);
        const reverse = instrument.id === undefined ? undefined : partner?.agreement?.shared?.[instrument.id];
        if (reverse !== undefined && (instrument.id ?? '') < other && reverse.some((value, place) => value !== shared[place])) {
          faults.add('shared-unequal', { expected: `the matrix that ${JSON.stringify(other)} states`, found: shared.join(', ') }, path);
        }
      }
    }
  }
}

/** The covariance of the difference of two instruments, C_a + C_b - 2 C_ab, must be one. */
function checkShared(shared: Matrix3, own: Matrix3 | undefined, partner: Matrix3 | undefined, path: string, faults: Faults): void {
  if (own === undefined || partner === undefined || !isPositiveSemidefinite(own) || !isPositiveSemidefinite(partner)) return;
  const ofDifference = own.map((value, place) => value + (partner[place] ?? 0) - 2 * (shared[place] ?? 0)) as readonly number[] as Matrix3;
  if (!isPositiveSemidefinite(ofDifference)) {
    faults.add('shared-too-large', {
      expected: 'a shared covariance that leaves the difference of the two instruments a covariance', found: shared.join(', '),
    }, path);
  }
}
