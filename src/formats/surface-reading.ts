import type { ArealParameters } from '../readings/reading.ts';
import type { ContrastSpectrum, Lamp, MeasureOptions, Steps, SurfaceMeasurement } from '../texture/index.ts';
import { contrastRecord, contrastSpectrumSteps, defaultLamp, measureSurfaceSteps, partOfSteps, renderHeightsSteps } from '../texture/index.ts';
import type { FoundTexture } from './reading-set.ts';
import type { SurfaceFile } from './surface-file.ts';

export interface SurfaceReadingOptions {
  readonly measuring?: MeasureOptions;
  /** Heights: the lamp that they are rendered under. */
  readonly lamp?: Lamp;
  /** Photographs: name of the set-up of lamp and camera; without it they are compared with no other. */
  readonly capture?: string;
}

export interface SurfaceReading {
  /** What a document keeps of it; undefined where nothing could be measured. */
  readonly data: FoundTexture | undefined;
  /** Heights only. */
  readonly measurement: SurfaceMeasurement | undefined;
  /** Undefined for a field too small or without light. */
  readonly spectrum: ContrastSpectrum | undefined;
}

/** A file of a surface as a reading of texture, step by step: parameters of heights, and how it looks. */
export function* surfaceReadingSteps(file: SurfaceFile, { measuring = {}, lamp = defaultLamp, capture }: SurfaceReadingOptions = {}): Steps<SurfaceReading> {
  const measurement = file.kind === 'heights' ? yield* partOfSteps(measureSurfaceSteps(file.map, measuring), 0, 0.6) : undefined;
  const picture = file.kind === 'photograph' ? file.picture : measurement && (yield* partOfSteps(renderHeightsSteps(measurement.surface, lamp), 0.6, 0.7));
  const spectrum = picture && (yield* partOfSteps(contrastSpectrumSteps(picture), 0.7, 1));
  const parameters: ArealParameters = measurement?.parameters ?? {};
  // A document may hold a photograph whose set-up nobody named; it says so by leaving the name out.
  const visible = spectrum && contrastRecord(spectrum, file.kind === 'heights' ? { lamp } : capture === undefined ? {} : { capture });
  const data = visible === undefined && Object.keys(parameters).length === 0 ? undefined
    : { quantity: 'texture' as const, parameters, ...(visible === undefined ? {} : { visible }) };
  return { data, measurement, spectrum };
}
