import type { BookRow } from './describe-book.ts';
import { aimedChance } from './reachability.ts';
import type { Reachability } from './reachability.ts';

const percent = (share: number): string => `${Math.round(share * 100)}`;

/** What a report prints beside a book's values: how likely identical parts are called `holds`, on one instrument and on two. */
export function reachabilityRows(rows: readonly Reachability[]): readonly BookRow[] {
  const basis = 'computed from the assumed spreads and the readings wanted, guarded rule';
  return rows.flatMap(({ materials, spots, colour, gloss }) => {
    const subject = materials[0] === materials[1] ? materials[0] : materials.join(' + ');
    const wanted: BookRow[] = materials[0] === materials[1] ? [] : [{
      group: 'reachability', subject, name: 'spots wanted of each beside the other', value: spots.join(' and '), unit: '',
      basis: `computed: those of the material, or as many as let identical parts hold in colour on one instrument in ${percent(aimedChance)} % of cases`,
    }];
    return [...wanted, ...([['colour', colour], ['gloss', gloss]] as const).flatMap(([check, chance]): BookRow[] => (chance === undefined ? [] : [
      { group: 'reachability', subject, name: `identical parts hold in ${check}, one instrument`, value: percent(chance.oneInstrument), unit: '%', basis },
      { group: 'reachability', subject, name: `identical parts hold in ${check}, two instruments`, value: percent(chance.twoInstruments), unit: '%', basis },
    ]))];
  });
}
