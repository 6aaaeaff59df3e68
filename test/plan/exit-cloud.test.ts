import { expect, test } from 'vitest';
import { exitCloud } from '../../src/plan/apportion/exit-cloud.ts';
import { firstExits } from '../../src/plan/apportion/first-exits.ts';
import { scatterDirections } from '../../src/plan/apportion/scatter-directions.ts';
import { randomJoint } from './support/random-joint.ts';

/** What either way leaves between an exit and the limit itself, as a share of its distance. */
const closeness = 5e-4;

test.each(['coarse', 'fine'] as const)('exits by columns are those found direction by direction, 30 seeded joints, %s directions', (fineness) => {
  let met = 0;
  for (let seed = 1; seed <= 30; seed++) {
    const joint = randomJoint(seed);
    for (const scale of [1, 0.3, 3]) {
      const sds = [scale * joint.sds[0], joint.sds[1]] as const;
      const defined = firstExits(joint.terms, joint.shapes, sds, scatterDirections(fineness));
      const exits = exitCloud(fineness).take(joint).exitsAt(sds);
      let worst = 0;
      exits.forEach((exit, row) => {
        // Beyond 8 deviations lies less than 1e-10 of the cloud.
        if (!(Math.min(exit, defined[row]!) < 8)) return;
        met++;
        worst = Math.max(worst, Math.abs(exit / defined[row]! - 1));
      });
      expect(worst, `joint ${seed}, ${scale}`).toBeLessThan(closeness);
    }
  }
  expect(met).toBeGreaterThan(5000);
});
