import { lampRange, usualLamp } from './lamp.ts';
import type { LampSetting } from './lamp.ts';

const keys = ['fromDeg', 'elevationDeg', 'tiltDeg'] as const;

/** The lamp as an address carries it, whole degrees; empty where it stands as usual. */
export const lampAddress = (setting: LampSetting): string =>
  (keys.every((key) => setting[key] === usualLamp[key]) ? '' : keys.map((key) => Math.round(setting[key])).join(','));

/** Reads it back; what is missing, no number or out of range is as usual. */
export function lampOfAddress(text: string | undefined): LampSetting {
  if (text === undefined || text === '') return usualLamp;
  const values = text.split(',');
  const read = (key: (typeof keys)[number], index: number): number => {
    const value = values[index]?.trim() ? Number(values[index]) : Number.NaN;
    const [least, most] = lampRange[key];
    return value >= least && value <= most ? value : usualLamp[key];
  };
  return { fromDeg: read('fromDeg', 0), elevationDeg: read('elevationDeg', 1), tiltDeg: read('tiltDeg', 2) };
}
