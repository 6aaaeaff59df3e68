import type { ContrastSpectrum } from '../texture/contrast-spectrum.ts';
import type { ContrastRecord } from '../texture/contrast-record.ts';
import { lightKey, spectrumOfRecord } from '../texture/contrast-record.ts';
import { largestByInstrument } from './gloss-sample.ts';
import type { Conditions, Reading, TextureReading } from './reading.ts';

/** How the texture of one specimen looks in one light. */
export interface VisibleSample {
  /** Samples of the same key were seen in the same light and may be compared. */
  readonly key: string;
  readonly light: Pick<ContrastRecord, 'source' | 'lamp' | 'capture'>;
  /** The measured fields, one or more a spot. */
  readonly fields: readonly ContrastSpectrum[];
  readonly spots: number;
  /** Id of the instrument that the heights or photographs are from. */
  readonly instrument: string;
}

type Seen = TextureReading & { readonly visible: ContrastRecord };

/**
 * Visible textures of a specimen by the light they were seen in, in the order of their first reading; outliers and photographs of an unknown
 * set-up are left out. Several instruments in one light: the one with the most spots.
 */
export function visibleSamples(readings: readonly Reading[], conditions?: ReadonlyMap<string, Conditions>): VisibleSample[] {
  const byLight = new Map<string, Seen[]>();
  for (const reading of readings) {
    if (reading.quantity !== 'texture' || reading.visible === undefined || reading.outlier === true) continue;
    const key = lightKey(reading.visible);
    if (key !== undefined) byLight.set(key, [...(byLight.get(key) ?? []), reading as Seen]);
  }
  return [...byLight].map(([key, seen]) => {
    const { instrument, readings: own } = largestByInstrument(seen, conditions);
    const { source, lamp, capture } = own[0].visible;
    return {
      key, light: { source, ...(lamp === undefined ? {} : { lamp }), ...(capture === undefined ? {} : { capture }) },
      fields: own.map(({ visible }) => spectrumOfRecord(visible)), spots: new Set(own.map(({ spot }) => spot.name)).size, instrument,
    };
  });
}
