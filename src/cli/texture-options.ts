import type { Issue } from '../issue.ts';
import type { SurfaceOptions } from '../formats/surface-file.ts';
import type { Form, Lamp, MeasureOptions, ProfileChoice, Viewing } from '../texture/index.ts';
import type { Arguments, OptionSpec } from './verb.ts';
import { heightUnits, transferCurves } from '../formats/surface-file.ts';
import { defaultLamp, forms, usualFieldMm } from '../texture/index.ts';
import { aboveZero, boundedNumber } from './bounded-number.ts';
import { lastValue, usageIssue } from './verb.ts';

/** Booth at the upper end of ISO 3668 for dark colours; the part at arm's length; a dark part. */
const usual = { viewMm: 700, illuminanceLx: 2000, reflectance: 0.05 } as const;

export const textureOptions: Readonly<Record<string, OptionSpec>> = {
  form: { value: 'FORM', about: 'form to take off, none where absent', choices: forms },
  's-filter-mm': { value: 'LENGTH', about: 'nesting index of the S-filter in mm; no filter where absent' },
  'l-filter-mm': { value: 'LENGTH', about: 'nesting index of the L-filter in mm; no filter where absent' },
  of: { value: 'SURFACE', about: 'what was measured, a part where absent; a tool gets its class of VDI 3400', choices: ['part', 'tool'] },
  profile: { value: 'x|y|N', about: 'profiles for Ra, Rz and RSm: all rows (x), all columns (y), or row N alone, the first is 1; x where absent' },
  'spacing-mm': { value: 'LENGTH', about: 'grids: distance of neighbouring points in mm' },
  'height-unit': { value: 'UNIT', about: 'grids: unit of heights, um where neither file nor option says', choices: heightUnits },
  'mm-per-pixel': { value: 'LENGTH', about: 'photographs: distance of neighbouring pixels in mm' },
  transfer: { value: 'CURVE', about: 'photographs: curve from light to number, as the file says where absent', choices: transferCurves },
  'flat-field': { value: 'FILE', about: 'photographs: a picture of an even grey card in the same light' },
  capture: { value: 'NAME', about: 'photographs: name of the set-up of lamp and camera; pictures of one set-up may be compared in a cabin' },
  with: { value: 'FILE', about: 'a second surface to tell apart from the first, read with the same options' },
  'view-mm': { value: 'LENGTH', about: `viewing distance in mm, ${usual.viewMm} where absent` },
  'illuminance-lx': { value: 'LUX', about: `illuminance, ${usual.illuminanceLx} lx where absent` },
  reflectance: { value: 'Y', about: `luminance factor of the part, 0 to 1, ${usual.reflectance} where absent` },
  'field-mm': { value: 'LENGTH', about: `side of the square that the eye takes in, ${usualFieldMm} mm where absent` },
  'lamp-elevation': { value: 'DEGREES', about: `height maps: lamp above the surface, ${defaultLamp.elevationDeg} where absent` },
  'lamp-azimuth': { value: 'DEGREES', about: `height maps: where the light comes from, from +x towards +y, ${defaultLamp.azimuthDeg} where absent` },
  specimen: { value: 'NAME', about: 'the specimen that FILE was taken of, for --out' },
  spot: { value: 'NAME', about: 'the spot on it, for --out' },
  instrument: { value: 'NAME', about: 'the instrument, for --out' },
  out: { value: 'FILE', about: 'write what was measured of FILE as a reading (JSON), to be read into a cabin; needs --specimen' },
};

export interface TextureJob {
  readonly reading: SurfaceOptions;
  readonly measuring: MeasureOptions;
  readonly viewing: Required<Viewing>;
  readonly lamp: Lamp;
  readonly capture: string | undefined;
}

function profileChoice(args: Arguments, issues: Issue[]): ProfileChoice | undefined {
  const text = lastValue(args, 'profile');
  if (text === undefined || text === 'x' || text === 'y') return text;
  if (/^[1-9]\d{0,8}$/u.test(text)) return Number(text);
  issues.push(usageIssue('unknown-value', '--profile', text, 'x, y or the number of a row, from 1'));
  return undefined;
}

/** The options of the command line; what cannot be used is added to the issues. */
export function textureJob(args: Arguments, issues: Issue[]): TextureJob {
  const number = (name: string, least = 0, most = Infinity, openBelow = true): number | undefined => boundedNumber(args, name, { least, most, openBelow }, issues);
  const choice = <T extends string>(name: string, choices: readonly T[]): T | undefined => choices.find((candidate) => candidate === lastValue(args, name));
  const form: Form | undefined = choice('form', forms);
  return {
    reading: {
      spacingMm: boundedNumber(args, 'spacing-mm', aboveZero, issues), mmPerPixel: number('mm-per-pixel'),
      heightUnit: choice('height-unit', heightUnits), transfer: choice('transfer', transferCurves),
    },
    measuring: { form, sFilterMm: number('s-filter-mm'), lFilterMm: number('l-filter-mm'), profile: profileChoice(args, issues), of: choice('of', ['part', 'tool'] as const) },
    viewing: {
      viewMm: number('view-mm') ?? usual.viewMm, illuminanceLx: number('illuminance-lx') ?? usual.illuminanceLx,
      reflectance: number('reflectance', 0, 1) ?? usual.reflectance, fieldMm: number('field-mm') ?? usualFieldMm,
    },
    lamp: {
      elevationDeg: number('lamp-elevation', 0, 90) ?? defaultLamp.elevationDeg, azimuthDeg: number('lamp-azimuth', -360, 360, false) ?? defaultLamp.azimuthDeg,
    },
    capture: lastValue(args, 'capture'),
  };
}
