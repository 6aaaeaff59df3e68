/** The planted colours by a computation outside the program: an independent CIELAB and the CIEDE2000 of culori. */
import { differenceCiede2000 } from 'culori';
import { describe, expect, it } from 'vitest';
import { independentLab } from '../support/independent-colorimetry.ts';
import { demoCabin, meanSpectrum, measuredSource, spectraOf } from './demo-cabins.ts';

const cabin = demoCabin('shuttle-slate');
const deltaE = differenceCiede2000();

function labOf(spectra: ReturnType<typeof spectraOf>, light: string): number[] {
  const { values, startNm, stepNm } = meanSpectrum(spectra);
  return independentLab(values, { startNm, stepNm, count: values.length }, light, 10);
}

const partLab = (id: string, light = 'D65', conditions = 'lab-45'): number[] =>
  labOf(spectraOf(measuredSource(cabin, id), conditions), light);

const masterLab = (id: string, light = 'D65'): number[] => {
  const master = cabin.masters?.find((candidate) => candidate.id === id);
  if (!master) throw new Error(`no master ${id}`);
  return labOf(
    master.readings.filter((reading) => reading.quantity === 'spectrum' && reading.conditions === 'lab-45') as ReturnType<typeof spectraOf>,
    light,
  );
};

const difference = (first: number[], second: number[]): number => {
  const colour = ([l, a, b]: number[]) => ({ mode: 'lab65' as const, l, a, b });
  return deltaE(colour(first), colour(second));
};

describe('each within its master', () => {
  it('uses 60 and 70 % of the master limit of 0.9, together 146 % of the joint limit of 0.8', () => {
    const master = masterLab('master-slate-skin');
    const dash = partLab('upper-dash');
    const roll = partLab('door-roll-left');
    // To half a per cent of the limit: the readings are rounded to five places.
    expect(difference(master, dash) / 0.9).toBeCloseTo(0.6, 1);
    expect(Math.abs(difference(master, dash) / 0.9 - 0.6)).toBeLessThan(0.02);
    expect(Math.abs(difference(master, roll) / 0.9 - 0.7)).toBeLessThan(0.02);
    expect(Math.abs(difference(dash, roll) / 0.8 - 1.46)).toBeLessThan(0.03);
  });
});

describe('the metameric pair', () => {
  const at = (light: string): number => difference(partLab('mid-dash-right', light), partLab('glovebox-lid', light));

  it('is within its limit of 1.0 in D65, 1.2 under A and 1.3 under LED-B3, and beyond 1.4 under FL11', () => {
    expect(at('D65')).toBeLessThan(0.5);
    expect(at('A')).toBeLessThan(0.6);
    expect(at('LED-B3')).toBeLessThan(0.65);
    expect(at('FL11')).toBeGreaterThan(1.75);
  });
});

describe('the near miss', () => {
  it('is 4.0 to 4.6 lighter where a step of 5 is wanted', () => {
    const step = partLab('console-lid')[0] - partLab('console-frame')[0];
    expect(step).toBeGreaterThan(4);
    expect(step).toBeLessThan(4.6);
  });
});

describe('geometry', () => {
  const [inside, outside] = ['sphere-included', 'sphere-excluded'].map((conditions) => (id: string) => partLab(id, 'D65', conditions)[0]);

  it('shows gloss black near the dark skin with the specular part included, and far darker without it', () => {
    expect(Math.abs(inside('display-surround') - inside('upper-dash'))).toBeLessThan(4);
    expect(outside('upper-dash') - outside('display-surround')).toBeGreaterThan(10);
  });
});
