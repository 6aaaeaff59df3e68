import type { FoundTexture } from '../formats/reading-set.ts';
import type { SurfaceFile, SurfaceOptions } from '../formats/surface-file.ts';
import type { SurfaceReadingOptions } from '../formats/surface-reading.ts';
import type { Issue } from '../issue.ts';
import type { Millimetres } from '../quantities.ts';
import type { ContrastSpectrum, HeightMap, SurfaceMeasurement } from '../texture/index.ts';

/** A file of a surface to be read and measured. */
export interface SurfaceRequest {
  readonly bytes: Uint8Array;
  readonly reading: SurfaceOptions;
  readonly measuring: SurfaceReadingOptions;
}

/** What is being done, and the share of it that is done, 0..1; it never falls. */
export interface SurfaceProgress {
  readonly kind: 'progress';
  readonly doing: 'reading' | 'measuring';
  readonly share: number;
}

/** A surface that was read, with what a document keeps of it. */
export interface MeasuredReply {
  readonly kind: 'measured';
  readonly surface: SurfaceFile['kind'];
  readonly format: SurfaceFile['format'];
  readonly width: number;
  readonly height: number;
  readonly spacingMm: readonly [Millimetres, Millimetres];
  readonly missing: number;
  /** Absent where the page is not allowed to compute it. */
  readonly sha256?: string;
  /** The reading; undefined where nothing could be measured. */
  readonly data: FoundTexture | undefined;
  readonly measurement: Omit<SurfaceMeasurement, 'surface'> | undefined;
  readonly spectrum: ContrastSpectrum | undefined;
  /** The middle of the scale-limited heights, for pictures. */
  readonly heights: HeightMap | undefined;
  /** Warnings and notes of the file and of the measurement. */
  readonly issues: readonly Issue[];
}

/** All the faults that refused the file. */
export interface RefusedSurface {
  readonly kind: 'refused';
  readonly issues: readonly Issue[];
}

/** The worker answers with `progress` any number of times and then with `measured` or `refused`. */
export type SurfaceReply = SurfaceProgress | MeasuredReply | RefusedSurface;
