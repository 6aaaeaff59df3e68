import type { Lab } from '../../../src/quantities.ts';
import type { Reading } from '../../../src/readings/reading.ts';

/** Readings of CIELAB under every required light on five spots, so that colours are written down and not computed. */
export const coloured = (lab: Lab, conditions = 'annular'): Reading[] => ['D65', 'A', 'FL11', 'LED-B3'].flatMap((light) =>
  [0, 1, 2, 3, 4].map((spot): Reading => ({ quantity: 'cielab', spot: { name: `s${spot}` }, conditions, lab, light, observer: 10, measuredAt: '2026-02-01' })));
