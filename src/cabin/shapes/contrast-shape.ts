import { channelDirections, channelRings, octaveOfRing, sectors } from '../../texture/contrast-channels.ts';
import type { ContrastRecord } from '../../texture/contrast-record.ts';
import type { Lamp } from '../../texture/luminance-map.ts';
import type { Schema } from '../schema/index.ts';
import { list, name, number, object, oneOf, optional, refine, required } from '../schema/index.ts';

const lamp: Schema<Lamp> = object<Lamp>('a lamp', {
  elevationDeg: required(number({ above: 0, max: 90, unit: 'degrees' })),
  azimuthDeg: required(number({ min: -360, max: 360, unit: 'degrees' })),
  ambientShare: optional(number({ min: 0, max: 1 })),
});

const square = number({ min: 0, max: 1e6 });
const band = object<ContrastRecord['bands'][number]>('a band of frequencies', {
  perMm: required(number({ above: 0, max: 2 ** octaveOfRing(channelRings - 1), unit: 'cycles a millimetre' })),
  energy: required(list(square, { min: sectors, max: sectors, items: `energies, one for each of ${sectors} directions` })),
});
const scatter = object<ContrastRecord['scatter'][number]>('the scatter of an octave', {
  octave: required(number({ min: octaveOfRing(0), max: octaveOfRing(channelRings - 1), whole: true })),
  directions: required(list(square, { min: channelDirections, max: channelDirections, items: `variances, one for each of ${channelDirections} directions` })),
});

/** The contrast of a texture by frequency and direction, with the light it was seen in. */
export const contrastShape: Schema<ContrastRecord> = refine(
  object<ContrastRecord>('a visible texture', {
    source: required(oneOf(['rendered', 'photograph'])),
    lamp: optional(lamp),
    capture: optional(name('the name of the set-up of lamp and camera')),
    rmsContrast: required(number({ min: 0, max: 1000 })),
    meanLuminance: optional(number({ above: 0, max: 1000 })),
    tileMm: required(number({ above: 0, max: 100_000, unit: 'mm' })),
    bands: required(list(band, { max: 200, items: 'bands of frequencies' })),
    scatter: required(list(scatter, { max: channelRings, items: 'octaves' })),
  }),
  (record, faults) => {
    if (record.source === 'rendered' && record.lamp === undefined) {
      faults.path.push('lamp');
      faults.add('missing-field', { expected: 'the lamp that the heights were rendered under', found: 'nothing' });
      faults.path.length -= 1;
    }
    const bands = record.bands ?? [];
    const at = bands.findIndex((own, index) => index > 0 && own !== undefined && own.perMm <= (bands[index - 1]?.perMm ?? -1));
    if (at < 0) return;
    faults.path.push('bands', at, 'perMm');
    faults.add('not-rising', { expected: 'frequencies that rise from one band to the next', found: String(bands[at]?.perMm) });
    faults.path.length -= 3;
  },
);
