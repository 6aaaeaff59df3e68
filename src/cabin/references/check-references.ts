import type { Cabin } from '../cabin.ts';
import type { Draft, Faults } from '../schema/index.ts';
import { checkDateOrder } from './date-order.ts';
import { checkDuplicateIds } from './duplicate-ids.ts';
import { checkInstruments } from './instrument-references.ts';
import { checkJoints } from './joint-references.ts';
import { checkMasters } from './master-references.ts';
import { checkMirrors } from './mirror-references.ts';
import { checkModules } from './module-references.ts';
import { checkNamedColours } from './named-colour-references.ts';
import { checkOutlines } from './outline-faults.ts';
import { checkParts } from './part-references.ts';
import { checkReadings } from './reading-references.ts';
import type { ReferenceIndex } from './reference-index.ts';
import { indexReferences } from './reference-index.ts';

/**
 * The second pass: what one place of the document says of another. Items that need no look may be gaps in `cabin`, where the index
 * still has them.
 */
export function checkReferences(cabin: Draft<Cabin>, faults: Faults, index: ReferenceIndex = indexReferences(cabin)): void {
  checkDuplicateIds(cabin, index, faults);
  checkInstruments(cabin, index, faults);
  checkMasters(cabin, index, faults);
  checkParts(cabin, index, faults);
  checkMirrors(cabin, index, faults);
  checkModules(cabin, faults);
  checkOutlines(cabin, faults);
  checkReadings(cabin, index, faults);
  checkNamedColours(cabin, faults);
  checkJoints(cabin, index, faults);
  checkDateOrder(cabin, index, faults);
  if (cabin.parts?.length === 0) {
    faults.add('nothing-to-judge', { severity: 'warning', expected: 'at least one part', found: 'none' }, 'parts');
  }
}
