import type { Cabin, Specimen } from '../../../src/cabin/cabin.ts';
import type { Reading } from '../../../src/readings/reading.ts';
import { smallCabin } from '../../support/small-cabin.ts';

/** Spectra at every other wavelength, and two readings of each quantity: what a file needs to show a fault, and no more. */
function shortReadings(readings: readonly Reading[], most: number): Reading[] {
  const counts = new Map<string, number>();
  return readings.flatMap((reading): Reading[] => {
    const count = (counts.get(reading.quantity) ?? 0) + 1;
    counts.set(reading.quantity, count);
    if (count > most) return [];
    return reading.quantity === 'spectrum' ? [{ ...reading, stepNm: 20, values: reading.values.filter((_, index) => index % 2 === 0) }] : [reading];
  });
}

const interleave = (readings: readonly Reading[]): Reading[] => {
  const rest = readings.filter((reading) => reading.quantity !== 'spectrum');
  const spectra = readings.filter((reading) => reading.quantity === 'spectrum');
  return [...spectra.slice(0, 1), ...rest.slice(0, 1), ...spectra.slice(1), ...rest.slice(1)];
};

const short = (specimen: Specimen, most = 2): Specimen => ({ ...specimen, readings: interleave(shortReadings(specimen.readings, most)) });

/** The valid cabin that the faulty files are made of: four parts, three joints. */
export function faultyBase(): Cabin {
  const base = smallCabin();
  const parts = base.parts.filter((part) => ['dash-lower', 'door-left', 'door-right', 'console'].includes(part.id)).map((part) => ({
    ...part,
    module: undefined,
    sources: part.sources.map((source) => ({ ...source, share: part.id === 'dash-lower' ? 0.5 : undefined, specimens: source.specimens.map((specimen) => short(specimen)) })),
  }));
  const [lower, left, right, console] = parts;
  if (lower === undefined || left === undefined || right === undefined || console === undefined) throw new Error('the small cabin has changed');
  const withDifference: Specimen = {
    id: 'do-2', kind: 'plaque', lot: { id: 'lot-41' },
    readings: [{ quantity: 'difference', spot: { name: 's1' }, conditions: 'colour-b', difference: [0.2, 0, 0.1], light: 'D65', observer: 10, master: 'm-slate' }],
  };
  const texture: Reading = { quantity: 'texture', spot: { name: 't1' }, conditions: 'texture-a', parameters: { saUm: 0.2 } };
  const [cielab] = lower.sources.slice(1);
  return {
    ...base,
    masters: base.masters?.slice(0, 1).map((master) => short(master, 1)),
    parts: [
      { ...lower, sources: [...lower.sources.slice(0, 1).map((source) => ({ ...source, standsBy: undefined, specimens: source.specimens.slice(0, 1) })), ...(cielab === undefined ? [] : [cielab])] },
      { ...left, sources: left.sources.map((source) => ({ ...source, specimens: [...source.specimens, withDifference] })) },
      right,
      { ...console, sources: console.sources.map((source) => ({ ...source, specimens: source.specimens.map((specimen) => ({ ...specimen, readings: [...specimen.readings.slice(0, 2), texture] })) })) },
    ],
    joints: base.joints.filter((joint) => ['j2', 'j3', 'j4'].includes(joint.id)),
  };
}
