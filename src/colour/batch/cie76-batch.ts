import type { LabColumns } from './lab-columns.ts';

/** `cie76Difference` of the colours in the same places of two columns. */
export function cie76Batch(standard: LabColumns, trial: LabColumns, into: Float64Array): void {
  const { L: L1, a: a1, b: b1 } = standard;
  const { L: L2, a: a2, b: b2 } = trial;
  for (let i = 0; i < into.length; i++) {
    const dL = L2[i] - L1[i];
    const da = a2[i] - a1[i];
    const db = b2[i] - b1[i];
    into[i] = Math.sqrt(dL * dL + da * da + db * db);
  }
}
