import { describe, expect, it } from 'vitest';
import { gaugeShare } from '../../../src/readings/quality/gauge-share.ts';
import { readingsForStandardError } from '../../../src/readings/quality/readings-for-standard-error.ts';
import { worstDirectionSd } from '../../../src/readings/quality/worst-direction-sd.ts';
import type { Matrix3 } from '../../../src/quantities.ts';
import { differenceCiede2000 } from 'culori';

describe('readings for a standard error', () => {
  // ASTM E1345: n = (s / SE)^2. s = 0.2, limit 0.5, SE 0.16 of it: (0.2 / 0.08)^2 = 6.25, so 7; the others by hand.
  it.each([
    [0.2, 0.16 * 0.5, 7], [0.2, 0.1, 4], [0.3, 0.1, 9], [0.15, 0.05, 9], [0, 0.1, 1], [0.01, 1, 1], [0.2, 0, Infinity],
  ])('sd %d and standard error %d ask for %d', (sd, error, expected) => {
    expect(readingsForStandardError(sd, error)).toBe(expected);
  });
});

describe('the share of a limit that the gauge takes', () => {
  it('adds the variances of instrument and repeated readings', () => {
    // 3-4-5: 0.03 and 0.04 make 0.05; of a limit of 0.5 a tenth; capability 0.5 / (2 x 0.05) = 5.
    expect(gaugeShare(0.5, 0.03, 0.04, false)).toMatchObject({ together: 0.05, instrumentShare: 0.06, share: 0.1, capability: 5 });
  });

  it('is that of the instrument alone where nothing was repeated', () => {
    expect(gaugeShare(1, 0.2, undefined, true)).toMatchObject({ together: 0.2, share: 0.2, repeatability: undefined, instrumentAssumed: true });
  });
});

describe('the standard deviation in the worst direction', () => {
  it('is the root of the largest variance in CIE76', () => {
    expect(worstDirectionSd([0.04, 0, 0, 0, 0.09, 0, 0, 0, 0.01], { name: 'cie76' }, [30, 0, 0])).toBeCloseTo(0.3, 12);
    // Eigenvalues of [[2, 1], [1, 2]] are 3 and 1.
    expect(worstDirectionSd([2, 1, 0, 1, 2, 0, 0, 0, 0.5], { name: 'cie76' }, [30, 0, 0])).toBeCloseTo(Math.sqrt(3), 12);
  });

  it('is the largest CIEDE2000 of the points one standard deviation away, searched by direction with culori', () => {
    const covariance: Matrix3 = [0.0009, 0.0002, -0.0001, 0.0002, 0.0004, 0.0001, -0.0001, 0.0001, 0.0006];
    const at = [42, 12, -25] as const;
    const formula = differenceCiede2000();
    const lab = (l: number, a: number, b: number) => ({ mode: 'lab65' as const, l, a, b });
    // One standard deviation along u is S u / sqrt(u' S u).
    let largest = 0;
    for (let i = 0; i <= 90; i++) for (let j = 0; j < 180; j++) {
      const [polar, azimuth] = [(Math.PI * i) / 90, (Math.PI * j) / 90];
      const u = [Math.cos(polar), Math.sin(polar) * Math.cos(azimuth), Math.sin(polar) * Math.sin(azimuth)];
      const su = [0, 1, 2].map((row) => u.reduce((sum, value, column) => sum + covariance[3 * row + column] * value, 0));
      const length = Math.sqrt(u.reduce((sum, value, row) => sum + value * su[row], 0));
      const [dL, da, db] = su.map((value) => value / length);
      largest = Math.max(largest, formula(lab(...at), lab(at[0] + dL, at[1] + da, at[2] + db)));
    }
    expect(worstDirectionSd(covariance, { name: 'ciede2000' }, at)).toBeCloseTo(largest, 3);
  });

  it('is 0 for no spread', () => {
    expect(worstDirectionSd(new Array<number>(9).fill(0), { name: 'ciede2000' }, [30, 0, 0])).toBe(0);
  });
});
