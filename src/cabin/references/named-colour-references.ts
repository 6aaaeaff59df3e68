import type { Cabin } from '../cabin.ts';
import type { Draft, Faults } from '../schema/index.ts';
import { nameHint } from '../schema/index.ts';
import { entriesOf } from './reference-index.ts';

/** A reading names a colour that its source has. One that it has not would be read, and judged by nothing. */
export function checkNamedColours(cabin: Draft<Cabin>, faults: Faults): void {
  for (const [partAt, part] of entriesOf(cabin.parts)) {
    for (const [sourceAt, source] of entriesOf(part.sources)) {
      const known = entriesOf(source.namedColours).flatMap(([, { name }]) => (name === undefined ? [] : [name]));
      for (const [specimenAt, specimen] of entriesOf(source.specimens)) {
        for (const [at, { colour }] of entriesOf(specimen.readings)) {
          if (colour === undefined || known.includes(colour)) continue;
          const hint = nameHint(colour, known);
          faults.add('unknown-colour', { expected: 'the name of a colour of the source', found: JSON.stringify(colour), ...(hint === undefined ? {} : { hint }) },
            `parts[${partAt}].sources[${sourceAt}].specimens[${specimenAt}].readings[${at}].colour`);
        }
      }
    }
  }
}
