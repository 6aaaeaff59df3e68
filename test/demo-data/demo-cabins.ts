import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Cabin, Part, Source } from '../../src/cabin/cabin.ts';
import { restoreCabin } from '../../src/cabin/index.ts';
import type { SpectrumReading } from '../../src/readings/reading.ts';

export const demoFolder = join(import.meta.dirname, '..', '..', 'demo-data');
export const cabinNames = ['shuttle-slate', 'shuttle-chalk', 'first-steps'] as const;
export type CabinName = (typeof cabinNames)[number] | 'lots';

export const demoText = (file: string): string => readFileSync(join(demoFolder, file), 'utf8');

export function demoCabin(name: CabinName): Cabin {
  const { value } = restoreCabin(JSON.parse(demoText(`${name}.cabin.json`)));
  if (!value) throw new Error(`${name} is no cabin`);
  return value;
}

export function partOf(cabin: Cabin, id: string): Part {
  const part = cabin.parts.find((candidate) => candidate.id === id);
  if (!part) throw new Error(`no part ${id}`);
  return part;
}

/** The source a part stands by; that of its mirror where it has no readings of its own. */
export function measuredSource(cabin: Cabin, id: string): Source {
  const part = partOf(cabin, id);
  const [source] = part.sources;
  return source.specimens.length > 0 || part.mirrorOf === undefined ? source : measuredSource(cabin, part.mirrorOf);
}

/** Mean reflectance over all readings of a specimen under one id of conditions. */
export function meanSpectrum(readings: readonly SpectrumReading[]): { values: number[]; startNm: number; stepNm: number } {
  const [first] = readings;
  return {
    startNm: first.startNm,
    stepNm: first.stepNm,
    values: first.values.map((_, index) => readings.reduce((sum, reading) => sum + reading.values[index], 0) / readings.length),
  };
}

export const spectraOf = (source: Source, conditions: string): SpectrumReading[] =>
  source.specimens[0].readings.filter(
    (reading): reading is SpectrumReading => reading.quantity === 'spectrum' && reading.conditions === conditions,
  );
