import { derived } from '../../colour/value-origin.ts';

/** Surfaces whose parameters follow from their equation (integrals over whole periods). */
export const analyticSurfacesOrigin = derived('ISO 25178-2 definitions, integrated by hand for a sine');

/** Sixteen micrometres of amplitude, 64 points a period of 0.5 mm, five periods on a side. */
export const analyticGrid = { points: 320, perPeriod: 64, periodMm: 0.5, amplitudeUm: 16 } as const;

const { amplitudeUm: a, periodMm: p } = analyticGrid;
const steepest = (2 * Math.PI * a) / 1000 / p;

/** Lag at which cos(2 pi t / p) has fallen to 0.2. */
const lag = (Math.acos(0.2) / (2 * Math.PI)) * p;

export interface AnalyticSurface {
  readonly name: string;
  readonly height: (x: number, y: number) => number;
  readonly expected: Readonly<Partial<Record<'saUm' | 'sqUm' | 'sku' | 'szUm' | 'salMm' | 'str' | 'sdq' | 'sdr' | 'raUm' | 'rzUm' | 'rsmMm', number>>>;
}

const wave = (at: number): number => Math.sin((2 * Math.PI * at) / analyticGrid.perPeriod);

/** x and y in points. Sdr to fourth order of the slope: <s^2>/2 - <s^4>/8, s being the slope. */
export const analyticSurfaces: readonly AnalyticSurface[] = [
  {
    name: 'A sin(2 pi x/p)',
    height: (x) => a * wave(x),
    expected: {
      saUm: (2 * a) / Math.PI, sqUm: a / Math.SQRT2, sku: 1.5, szUm: 2 * a, salMm: lag, str: 0, sdq: steepest / Math.SQRT2,
      sdr: steepest ** 2 / 4 - (3 / 64) * steepest ** 4, raUm: (2 * a) / Math.PI, rzUm: 2 * a, rsmMm: p,
    },
  },
  {
    name: 'A sin(2 pi x/p) sin(2 pi y/p)',
    height: (x, y) => a * wave(x) * wave(y),
    // Str: along the diagonal the autocorrelation is cos^2, 0.2492 p to the threshold.
    expected: { saUm: (4 * a) / Math.PI ** 2, sqUm: a / 2, sku: 2.25, szUm: 2 * a, salMm: lag, str: 0.875, sdq: steepest / Math.SQRT2 },
  },
];

/** Share by which a parameter may deviate on this grid. */
export const analyticTolerance = 0.005;
