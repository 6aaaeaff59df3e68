import type { Argument } from '../../src/actions/argument.ts';
import { namedItems } from '../../src/actions/index.ts';
import type { Named } from '../../src/actions/index.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { mostInList } from './matching.ts';

/** What a field offers to choose from; undefined for a field that is written in. Sources are those of the part given. */
export function argumentOptions({ kind, choices, refersTo }: Argument, cabin: Cabin | undefined, part: string | undefined): readonly Named[] | undefined {
  if (kind === 'choice') return choices?.map((choice) => ({ id: String(choice), name: String(choice) }));
  if (kind === 'flag') return [{ id: 'true', name: 'yes' }, { id: 'false', name: 'no' }];
  if (kind !== 'reference' || refersTo === undefined || cabin === undefined) return undefined;
  return byName(namedItems(cabin, refersTo, part));
}

/** More things than a browser's own list bears. */
export interface LongChoice {
  readonly count: number;
  /** Those things by name, made when they are asked for. */
  readonly choices: () => readonly Named[];
  readonly nameOf: (id: string) => string;
}

/** What a field offers where that is very much; undefined where a list will do. */
export function longChoiceOf({ kind, refersTo }: Argument, cabin: Cabin | undefined, part: string | undefined): LongChoice | undefined {
  if (kind !== 'reference' || refersTo === undefined || cabin === undefined) return undefined;
  const items = namedItems(cabin, refersTo, part);
  return items.length <= mostInList ? undefined : {
    count: items.length, choices: () => byName(items), nameOf: (id) => items.find((item) => item.id === id)?.name ?? id,
  };
}

const { compare } = new Intl.Collator('en');
const byName = (items: readonly Named[]): readonly Named[] => items.toSorted((first, second) => compare(first.name, second.name));
