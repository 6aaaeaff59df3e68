import type { Outcome } from '../issue.ts';
import type { Cabin } from './cabin.ts';
import { migrate } from './migrations.ts';
import { checkReferences } from './references/check-references.ts';
import type { Draft } from './schema/index.ts';
import { collectFaults, describeValue, isPlainObject } from './schema/index.ts';
import { cabinShape } from './shapes/cabin-shape.ts';

/**
 * The one door into the product: whatever is loaded, pasted or imported becomes a cabin here or nowhere.
 * All faults are listed, at most 1,000; with an error among them there is no value. Fields that the document must have
 * and a file may leave out are filled in; members that are not known are kept. Nothing is clamped or guessed.
 */
export function restoreCabin(value: unknown): Outcome<Cabin> {
  const faults = collectFaults();
  if (!isPlainObject(value)) {
    faults.add('wrong-type', { expected: 'a cabin document', found: describeValue(value) });
    return { value: undefined, issues: faults.list() };
  }
  const { document, issue } = migrate(value);
  if (issue !== undefined) return { value: undefined, issues: [issue] };
  const cabin = cabinShape.read(document, faults);
  if (cabin !== undefined) checkReferences(cabin as Draft<Cabin>, faults);
  return { value: faults.errors() === 0 ? cabin : undefined, issues: faults.list() };
}
