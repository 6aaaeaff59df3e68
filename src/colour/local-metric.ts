import type { Lab, Matrix3 } from '../quantities.ts';
import type { UniformColour } from './appearance/uniform-space.ts';
import type { DifferenceFormula } from './difference-formula.ts';
import { din99oFactors } from './din99o-factors.ts';
import { labToCam02Ucs } from './differences/cam02-ucs.ts';
import { labToCam16Ucs } from './differences/cam16-ucs.ts';
import { cie94GraphicArts, cie94Textiles, type Cie94Application } from './differences/cie94.ts';
import {
  ciede2000ChromaWeight, ciede2000HueWeight, ciede2000LightnessWeight, ciede2000Rotation, fullHue, redGreenStretch,
} from './differences/ciede2000.ts';
import { cmcChromaWeight, cmcHueWeight, cmcLightnessWeight } from './differences/cmc.ts';
import { din99oConstants } from './differences/din99o.ts';

/**
 * Quadratic form Q of a formula at the midpoint of a pair: dE^2 is about d' Q d for a small Lab difference d.
 *
 * Symmetric and positive semidefinite at every finite colour, the neutral ones too. CIE94 and CMC take their weights from the
 * standard, as the formulas do, and the directions of chroma and hue from the midpoint. CIEDE2000 is taken at the midpoint itself, so its
 * jumps between opposite hues do not show. The CAM spaces, whose chroma has no slope at grey, are taken over half the pair's own size.
 * Source: derived from each formula; for CIEDE2000 from its weights and rotation term with a' = (1 + G) a.
 */
export function localMetric(formula: DifferenceFormula, standard: Lab, trial: Lab): Matrix3 {
  const middle: Lab = [(standard[0] + trial[0]) / 2, (standard[1] + trial[1]) / 2, (standard[2] + trial[2]) / 2];
  switch (formula.name) {
    case 'cie76':
      return [1, 0, 0, 0, 1, 0, 0, 0, 1];
    case 'cie94':
      return cie94Metric(formula, cie94GraphicArts, standard, middle);
    case 'cie94Textile':
      return cie94Metric(formula, cie94Textiles, standard, middle);
    case 'cmc':
      return cmcMetric(formula, standard, middle);
    case 'ciede2000':
      return ciede2000Metric(formula, middle);
    case 'din99o':
      return din99oMetric(formula, middle);
    case 'cam02ucs':
      return uniformMetric(labToCam02Ucs, formula.kL ?? 1, middle, halfSize(standard, trial));
    case 'cam16ucs':
      return uniformMetric(labToCam16Ucs, formula.kL ?? 1, middle, halfSize(standard, trial));
  }
}

/** Form with weights on lightness, chroma and hue; chroma points from the neutral axis to `middle`. */
function cylindricalMetric(lightness: number, chroma: number, hue: number, middle: Lab): Matrix3 {
  const a = middle[1];
  const b = middle[2];
  const square = a * a + b * b;
  if (square === 0) {
    const mean = (chroma + hue) / 2;
    return [lightness, 0, 0, 0, mean, 0, 0, 0, mean];
  }
  const cross = ((chroma - hue) * a * b) / square;
  return [
    lightness, 0, 0,
    0, (chroma * a * a + hue * b * b) / square, cross,
    0, cross, (chroma * b * b + hue * a * a) / square,
  ];
}

const inverseSquare = (weight: number): number => 1 / (weight * weight);

function cie94Metric(formula: DifferenceFormula, application: Cie94Application, standard: Lab, middle: Lab): Matrix3 {
  const chroma = Math.sqrt(standard[1] * standard[1] + standard[2] * standard[2]);
  return cylindricalMetric(
    inverseSquare(formula.kL ?? application.kL),
    inverseSquare((formula.kC ?? 1) * (1 + application.chromaSlope * chroma)),
    inverseSquare((formula.kH ?? 1) * (1 + application.hueSlope * chroma)),
    middle,
  );
}

function cmcMetric(formula: DifferenceFormula, standard: Lab, middle: Lab): Matrix3 {
  const chroma = Math.sqrt(standard[1] * standard[1] + standard[2] * standard[2]);
  return cylindricalMetric(
    inverseSquare((formula.l ?? 2) * cmcLightnessWeight(standard[0])),
    inverseSquare((formula.c ?? 1) * cmcChromaWeight(chroma)),
    inverseSquare(cmcHueWeight(standard[1], standard[2], chroma)),
    middle,
  );
}

function ciede2000Metric(formula: DifferenceFormula, middle: Lab): Matrix3 {
  const [L, a, b] = middle;
  // Both colours of a pair share one G, so it is a constant of the form and has no slope of its own.
  const stretch = redGreenStretch(Math.sqrt(a * a + b * b));
  const stretched = stretch * a;
  const chroma = Math.sqrt(stretched * stretched + b * b);
  const hue = fullHue(stretched, b);
  const cosine = chroma === 0 ? 1 : stretched / chroma;
  const sine = chroma === 0 ? 0 : b / chroma;
  const lightness = 1 / ((formula.kL ?? 1) * ciede2000LightnessWeight(L));
  // Rows of the weighted chroma and hue differences: (along, turned) times (da, db).
  const perChroma = 1 / ((formula.kC ?? 1) * ciede2000ChromaWeight(chroma));
  const perHue = 1 / ((formula.kH ?? 1) * ciede2000HueWeight(chroma, hue));
  const chromaA = cosine * stretch * perChroma;
  const chromaB = sine * perChroma;
  const hueA = -sine * stretch * perHue;
  const hueB = cosine * perHue;
  const rotation = ciede2000Rotation(chroma, hue);
  const cross = chromaA * chromaB + hueA * hueB + (rotation / 2) * (chromaA * hueB + chromaB * hueA);
  return [
    lightness * lightness, 0, 0,
    0, chromaA * chromaA + hueA * hueA + rotation * chromaA * hueA, cross,
    0, cross, chromaB * chromaB + hueB * hueB + rotation * chromaB * hueB,
  ];
}

function din99oMetric(formula: DifferenceFormula, middle: Lab): Matrix3 {
  const { lightnessScale, lightnessSlope, yellowBlueScale, chromaSlope, chromaScale, cosine, sine } = din99oConstants;
  const { kE, kCH } = din99oFactors(formula);
  const lightness = (lightnessScale * lightnessSlope) / (kE * (1 + lightnessSlope * middle[0]));
  const e = middle[1] * cosine + middle[2] * sine;
  const f = yellowBlueScale * (middle[2] * cosine - middle[1] * sine);
  const radius = Math.sqrt(e * e + f * f);
  const scale = 1 / (chromaScale * kCH * kE);
  const outward = (scale * chromaSlope) / (1 + chromaSlope * radius);
  const around = radius === 0 ? outward : (scale * Math.log1p(chromaSlope * radius)) / radius;
  const [, , , , ee, ef, , , ff] = cylindricalMetric(1, outward * outward, around * around, [0, e, f]);
  // (de, df) = rows times (da, db).
  const rowE = [cosine, sine] as const;
  const rowF = [-yellowBlueScale * sine, yellowBlueScale * cosine] as const;
  const entry = (i: 0 | 1, j: 0 | 1): number =>
    ee * rowE[i] * rowE[j] + ef * (rowE[i] * rowF[j] + rowF[i] * rowE[j]) + ff * rowF[i] * rowF[j];
  return [lightness * lightness, 0, 0, 0, entry(0, 0), entry(0, 1), 0, entry(0, 1), entry(1, 1)];
}

/** Half the CIELAB distance of the pair, kept between 0.05 and 1: the step of the central differences. */
function halfSize(standard: Lab, trial: Lab): number {
  const dL = trial[0] - standard[0];
  const da = trial[1] - standard[1];
  const db = trial[2] - standard[2];
  return Math.min(1, Math.max(0.05, Math.sqrt(dL * dL + da * da + db * db) / 2));
}

/** J'J with the slopes J of a uniform space by central differences: positive semidefinite whatever the slopes are. */
function uniformMetric(space: (lab: Lab) => UniformColour, kL: number, middle: Lab, step: number): Matrix3 {
  const [L, a, b] = middle;
  const slope = (high: UniformColour, low: UniformColour): UniformColour => [
    (high[0] - low[0]) / (2 * step * kL), (high[1] - low[1]) / (2 * step), (high[2] - low[2]) / (2 * step),
  ];
  const byL = slope(space([L + step, a, b]), space([L - step, a, b]));
  const byA = slope(space([L, a + step, b]), space([L, a - step, b]));
  const byB = slope(space([L, a, b + step]), space([L, a, b - step]));
  const dot = (u: UniformColour, v: UniformColour): number => u[0] * v[0] + u[1] * v[1] + u[2] * v[2];
  const la = dot(byL, byA);
  const lb = dot(byL, byB);
  const ab = dot(byA, byB);
  return [dot(byL, byL), la, lb, la, dot(byA, byA), ab, lb, ab, dot(byB, byB)];
}
