import { lightByName, spectrumToLab } from '../../../src/colour/index.ts';
import type { Lab } from '../../../src/quantities.ts';

/** Wavelengths at which an instrument reports. */
export interface Grid {
  readonly startNm: number;
  readonly stepNm: number;
  readonly count: number;
}

const light = (name: string) => {
  const found = lightByName(name);
  if (!found) throw new RangeError(`no light ${name}`);
  return found;
};

export const wavelengths = (grid: Grid): number[] => Array.from({ length: grid.count }, (_, index) => grid.startNm + index * grid.stepNm);

/** CIELAB of values on a grid under a light of the list, 10 degree observer. */
export const labOf = (values: readonly number[], grid: Grid, lightName = 'D65'): Lab =>
  spectrumToLab({ startNm: grid.startNm, stepNm: grid.stepNm, values }, light(lightName), 10);
