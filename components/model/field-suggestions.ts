import { bookOfCabin } from '../../src/actions/index.ts';
import type { Argument } from '../../src/actions/argument.ts';
import { materials } from '../../src/cabin/cabin.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';

const sources = (cabin: Cabin) => cabin.parts.flatMap((part) => part.sources);
const specimens = (cabin: Cabin) => [...sources(cabin).flatMap((source) => source.specimens), ...(cabin.masters ?? [])];

/** What the cabin has already for fields that take any name, by their labels. */
const known: Readonly<Record<string, (cabin: Cabin) => readonly (string | undefined)[]>> = {
  Material: (cabin) => [...(bookOfCabin(cabin)?.materials.map(({ material }) => material) ?? materials), ...sources(cabin).map(({ material }) => material)],
  Module: (cabin) => cabin.parts.map(({ module }) => module),
  Grain: (cabin) => sources(cabin).map(({ grain }) => grain?.id),
  Currency: (cabin) => sources(cabin).map(({ currency }) => currency),
  Lot: (cabin) => specimens(cabin).map(({ lot }) => lot?.id),
  Stage: (cabin) => ['new', ...specimens(cabin).map(({ exposure }) => exposure?.stage)],
  'Stage that is judged': (cabin) => ['new', ...specimens(cabin).map(({ exposure }) => exposure?.stage)],
};
/** More would be no help. */
const most = 60;

/** Names that may be meant by a field that is written in, each once; empty for fields that anything may stand in. */
export function fieldSuggestions({ kind, label }: Argument, cabin: Cabin | undefined): readonly string[] {
  const names = kind === 'name' && cabin !== undefined ? known[label]?.(cabin) ?? [] : [];
  return [...new Set(names)].filter((name) => name !== undefined).slice(0, most);
}
