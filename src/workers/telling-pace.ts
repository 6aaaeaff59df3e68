import type { Telling } from './judge-in-steps.ts';

/** Ms until the first joints are told of, and between the counts after that. */
const [firstMs, countMs] = [40, 150];
/** Joints of one lot: the first of them small, then larger, since a page looks through all of them again for each; at most so many that to receive them does not hold it. */
const [smallest, largest] = [100, 200];

/** A cabin of so many joints is judged so soon that seeing it piece by piece would only be restless. */
const fewJoints = 500;

/** When to tell of joints while a cabin of so many is judged, by a clock in ms. Begins anew with every cabin. */
export function tellingPace(joints: number, clock: () => number): (judged: number, told: number) => Telling {
  const start = clock();
  let last = start;
  return (judged, told) => {
    const now = clock();
    const lot = told === 0 ? 1 : Math.min(largest, Math.max(smallest, told / 2));
    if (joints > fewJoints && judged - told >= lot && (told > 0 || now - start >= firstMs)) {
      last = now;
      return 'joints';
    }
    if (now - last < countMs) return 'nothing';
    last = now;
    return 'count';
  };
}
