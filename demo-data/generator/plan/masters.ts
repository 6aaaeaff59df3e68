import type { Colourway } from './colourways.ts';
import { grains } from './materials.ts';
import type { MasterPlan } from './types.ts';

/** Master plaques of a colourway. */
export function masterPlans(way: Colourway): MasterPlan[] {
  const master = (
    id: string,
    name: string,
    material: string,
    lab: MasterPlan['lab'],
    gloss60: number,
    extra: Partial<MasterPlan> = {},
  ): MasterPlan => ({ id: `master-${id}`, name, material, lab, gloss60, issue: '3', ...extra });
  return [
    master('slate-skin', 'Master, upper tone, skin', 'soft-skin', way.slate, 2.2, { grain: grains.fine }),
    master('slate-moulded', 'Master, upper tone, moulded', 'moulded', way.slate, 2.05, { grain: grains.fine }),
    master('paint', 'Master, upper tone, paint', 'painted', way.paint, 6.2),
    master('hide', 'Master, hide', 'leather', way.hide, 2, { grain: grains.hide }),
    master('lid', 'Master, hide of the console lid', 'leather', way.lid, 2, { grain: grains.hide }),
    master('lower-skin', 'Master, lower tone, skin', 'soft-skin', way.lower, 2.1, { grain: grains.fine }),
    master('lower-moulded', 'Master, lower tone, moulded', 'moulded', way.lower, 2.1, { grain: grains.coarse }),
    master('cloth', 'Master, cloth', 'textile', way.cloth, 1),
    master('carpet', 'Master, carpet', 'carpet', way.carpet, 1),
    master('roof', 'Master, roof lining', 'headliner', way.roof, 1),
    master('roof-moulded', 'Master, roof, moulded', 'moulded', way.roof, 1.9, { grain: grains.linen }),
    master('black', 'Master, gloss black', 'gloss-black', way.black, 87),
    master('bronze', 'Master, bronze decor', 'decor-film', way.bronze, 24),
    master('nickel', 'Master, satin nickel', 'metallised', way.nickel, 58),
    master('thread', 'Master, thread', 'thread', way.thread, 1),
  ];
}
