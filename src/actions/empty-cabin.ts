import type { Cabin } from '../cabin/cabin.ts';
import { currentVersion } from '../cabin/migrations.ts';
import { idOfName } from './next-id.ts';

/** A cabin to begin with: a name and a day, nothing in it. */
export const emptyCabin = (name: string, asOf: string): Cabin => ({
  format: 'adjoin-cabin', version: currentVersion, id: idOfName(name, 'cabin'), name, asOf,
  zones: [], suppliers: [], instruments: [], conditions: [], parts: [], joints: [],
});
