import { difference } from '../../../src/colour/index.ts';
import type { Lab } from '../../../src/quantities.ts';

/** The colour families of a colourway, CIELAB for D65 and the 10 degree observer at 45:0. */
export interface Colourway {
  readonly id: 'slate' | 'chalk';
  readonly name: string;
  /** Upper tone of skins, hides, paint. */
  readonly slate: Lab;
  readonly paint: Lab;
  readonly hide: Lab;
  /** Lower tone of skins and mouldings. */
  readonly lower: Lab;
  readonly cloth: Lab;
  readonly carpet: Lab;
  readonly roof: Lab;
  readonly black: Lab;
  readonly bronze: Lab;
  readonly ash: Lab;
  readonly thread: Lab;
  readonly nickel: Lab;
  /** Lid of the console, a hide of its own tone. */
  readonly lid: Lab;
}

const shared = {
  slate: [26, -0.1, -1.2],
  paint: [26.6, -0.1, -1.1],
  carpet: [25.5, 0, -0.8],
  roof: [76, 0.3, 2.6],
  black: [5.2, -0.1, -0.6],
  bronze: [44, 9, 18],
  ash: [41, 6, 13],
  nickel: [61, 0.3, 2.8],
} as const;

export const slateColourway: Colourway = {
  ...shared,
  id: 'slate',
  name: 'Slate',
  hide: [26.2, -0.05, -1],
  lower: [37, -0.2, -1.4],
  cloth: [36, -0.1, -1.5],
  thread: [46, 15, 25],
  lid: [30.7, -0.05, -1],
};

export const chalkColourway: Colourway = {
  ...shared,
  id: 'chalk',
  name: 'Chalk',
  hide: [76.5, 0.7, 5.6],
  lower: [69.5, 0.6, 5.2],
  cloth: [66, 0.6, 5],
  thread: [46, 15, 25],
  lid: [76.4, 0.7, 5.6],
};

export const plus = (base: Lab, by: Lab): Lab => [base[0] + by[0], base[1] + by[1], base[2] + by[2]];

/** The colour that lies in a direction from a base at a wanted CIEDE2000 difference: by bisection, to 1e-9. */
export function placedAt(base: Lab, direction: Lab, wanted: number): Lab {
  let near = 0;
  let far = 50;
  for (let turn = 0; turn < 60; turn += 1) {
    const middle = (near + far) / 2;
    const trial: Lab = [base[0] + middle * direction[0], base[1] + middle * direction[1], base[2] + middle * direction[2]];
    if (difference({ name: 'ciede2000' }, base, trial) < wanted) near = middle;
    else far = middle;
  }
  return [base[0] + near * direction[0], base[1] + near * direction[1], base[2] + near * direction[2]];
}
