import type { Argument } from '../../src/actions/argument.ts';
import { namedItems } from '../../src/actions/index.ts';
import type { Named } from '../../src/actions/index.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';

/** What a field offers to choose from; undefined for a field that is written in. Sources are those of the part given. */
export function argumentOptions({ kind, choices, refersTo }: Argument, cabin: Cabin | undefined, part: string | undefined): readonly Named[] | undefined {
  if (kind === 'choice') return choices?.map((choice) => ({ id: String(choice), name: String(choice) }));
  if (kind === 'flag') return [{ id: 'true', name: 'yes' }, { id: 'false', name: 'no' }];
  if (kind !== 'reference' || refersTo === undefined || cabin === undefined) return undefined;
  return namedItems(cabin, refersTo, part).toSorted((first, second) => first.name.localeCompare(second.name, 'en'));
}
