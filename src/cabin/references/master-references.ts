import type { Cabin } from '../cabin.ts';
import type { Draft, Faults } from '../schema/index.ts';
import { checkMaster } from './part-references.ts';
import type { ReferenceIndex } from './reference-index.ts';
import { entriesOf } from './reference-index.ts';

/** The register of masters holds masters only, and every line of parent masters ends. */
export function checkMasters(cabin: Draft<Cabin>, index: ReferenceIndex, faults: Faults): void {
  for (const [at, master] of entriesOf(cabin.masters)) {
    if (master.kind !== undefined && master.kind !== 'master') {
      faults.add('not-a-master', { expected: 'a specimen of kind "master"', found: JSON.stringify(master.kind) }, `masters[${at}].kind`);
    }
  }
  for (const { specimen, path } of index.specimens) {
    if (!checkMaster(specimen.parentMaster, index, `${path}.parentMaster`, faults)) continue;
    const seen = new Set([specimen.id]);
    for (let next = specimen.parentMaster; next !== undefined; next = index.specimenById.get(next)?.parentMaster) {
      if (next === specimen.id) {
        faults.add('master-cycle', {
          expected: 'a line of parent masters that ends', found: `${JSON.stringify(specimen.parentMaster)}, which leads back here`,
        }, `${path}.parentMaster`);
        break;
      }
      if (seen.has(next)) break;
      seen.add(next);
    }
  }
}
