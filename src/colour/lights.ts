import type { Kelvin, Nanometres } from '../quantities.ts';
import { interpolate, visibleInterpolants } from './interpolation.ts';
import { illuminantA, planckian } from './planck.ts';
import type { Spectrum } from './spectrum.ts';
import { endNm, visibleCount, visibleStartNm } from './spectrum.ts';
import { daylightIlluminants } from './tables/daylight-illuminants.ts';
import { fluorescentLamps } from './tables/fluorescent-lamps.ts';
import { illuminantC } from './tables/illuminant-c.ts';
import { indoorDaylight } from './tables/indoor-daylight.ts';
import { ledLamps } from './tables/led-lamps.ts';

/** A light by its relative power, 360 nm to 780 nm at 1 nm (421 values). The object itself is the key of cached weights. */
export interface Light {
  readonly name: string;
  readonly spd: Float64Array;
}

const atEveryNanometre = (power: (wavelength: Nanometres) => number): Float64Array =>
  Float64Array.from({ length: visibleCount }, (_, i) => power(visibleStartNm + i));

/** CIE daylight between its 5 nm values (CIE 015:2018; ISO/CIE 11664-2:2022: linear interpolation). */
function linear(table: Spectrum): Float64Array {
  return atEveryNanometre((wavelength) => {
    const position = (wavelength - table.startNm) / table.stepNm;
    const left = Math.min(Math.floor(position), table.values.length - 2);
    return table.values[left] + (position - left) * (table.values[left + 1] - table.values[left]);
  });
}

/** A lamp between its values by Sprague (CIE 167:2005), nothing beyond them; undershoot beside sharp lines is left as it comes. */
function lamp(table: Spectrum): Float64Array {
  const end = endNm(table);
  const interpolants = visibleInterpolants(table.startNm, table.stepNm, table.values.length);
  return atEveryNanometre((wavelength) =>
    (wavelength < table.startNm || wavelength > end ? 0 : interpolate(table.values, interpolants[wavelength - visibleStartNm])));
}

const makers = {
  D65: () => linear(daylightIlluminants.D65),
  D50: () => linear(daylightIlluminants.D50),
  A: () => atEveryNanometre(illuminantA),
  C: () => lamp(illuminantC.C),
  FL2: () => lamp(fluorescentLamps.FL2),
  FL7: () => lamp(fluorescentLamps.FL7),
  FL11: () => lamp(fluorescentLamps.FL11),
  'FL3.15': () => lamp(fluorescentLamps['FL3.15']),
  'LED-B1': () => lamp(ledLamps['LED-B1']),
  'LED-B2': () => lamp(ledLamps['LED-B2']),
  'LED-B3': () => lamp(ledLamps['LED-B3']),
  'LED-B4': () => lamp(ledLamps['LED-B4']),
  'LED-B5': () => lamp(ledLamps['LED-B5']),
  'LED-BH1': () => lamp(ledLamps['LED-BH1']),
  'LED-RGB1': () => lamp(ledLamps['LED-RGB1']),
  'LED-V1': () => lamp(ledLamps['LED-V1']),
  'LED-V2': () => lamp(ledLamps['LED-V2']),
  ID50: () => linear(indoorDaylight.ID50),
  ID65: () => linear(indoorDaylight.ID65),
  P2300: () => atEveryNanometre((wavelength) => planckian(wavelength, 2300)),
} as const;

/** Every built-in light: daylight, incandescent, fluorescent, LED, daylight behind glass, and a low sun of 2300 K. */
export const lightNames: readonly string[] = Object.keys(makers);

const made = new Map<string, Light>();

/**
 * A built-in light by its exact name, `undefined` for any other name; the same object every time.
 *
 * A by its formula; D50, D65, ID50 and ID65 linear between 5 nm values; C, FL and LED by Sprague from 5 nm values,
 * FL and LED without power below 380 nm; P2300 by Planck's law with c2 = 1.4388e7 nm K.
 * Source: CIE 015:2018; ISO/CIE 11664-2:2022; CIE 184:2009; CIE 167:2005.
 */
export function lightByName(name: string): Light | undefined {
  const known = made.get(name);
  if (known || !Object.hasOwn(makers, name)) return known;
  const light: Light = { name, spd: makers[name as keyof typeof makers]() };
  made.set(name, light);
  return light;
}

/**
 * A light measured or specified by the user, brought to 1 nm.
 *
 * Relative power at even steps: Sprague from six values on (CIE 167:2005), else straight lines; no power is assumed beyond the data.
 * Weights are cached by the object that is returned, so keep it.
 */
export const userLight = (name: string, startNm: Nanometres, stepNm: Nanometres, values: ArrayLike<number>): Light =>
  ({ name, spd: lamp({ startNm, stepNm, values }) });

/** A black body of a temperature above zero, named `P` and the temperature; keep the object, as that of {@link userLight}. */
export const planckianLight = (kelvin: Kelvin): Light =>
  lightByName(`P${kelvin}`) ?? { name: `P${kelvin}`, spd: atEveryNanometre((wavelength) => planckian(wavelength, kelvin)) };
