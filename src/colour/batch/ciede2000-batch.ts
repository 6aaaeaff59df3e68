import { ciede2000Constants } from './ciede2000-constants.ts';
import { hueRotationTable, huePlace } from './hue-rotation-table.ts';
import type { LabColumns } from './lab-columns.ts';
import { ciede2000BySimd } from './simd/ciede2000-kernel.ts';

const { power25to7, cosine30, cosine6, sine6, cosine63, sine63, oppositeTolerance, leastProduct } = ciede2000Constants;

/** Pairs that go through the steps together: few enough to stay in the fastest memory. */
const block = 256;
const stretch = new Float64Array(block);
const cosine = new Float64Array(block);
const sine = new Float64Array(block);
const hueStep = new Float64Array(block);
const meanChroma = new Float64Array(block);
const chromaStep = new Float64Array(block);

/**
 * `ciede2000Difference` of the colours in the same places of two columns.
 *
 * Algebraic: the mean hue enters by its cosine and sine, powers are products, and the rotation term comes from a table; within 1e-9 of
 * the definition for chromas up to 1000. Not finite where a coordinate is not; chromas up to 1e40. By vectors where the engine has them.
 */
export function ciede2000Batch(standard: LabColumns, trial: LabColumns, into: Float64Array, kL: number, kC: number, kH: number): void {
  if (!ciede2000BySimd(standard, trial, into, kL, kC, kH)) ciede2000InPlainNumbers(standard, trial, into, kL, kC, kH);
}

/**
 * The same in plain numbers, to the last bit. In three steps over blocks, since one long chain of roots and quotients for each pair would
 * leave the processor waiting.
 */
export function ciede2000InPlainNumbers(standard: LabColumns, trial: LabColumns, into: Float64Array, kL: number, kC: number, kH: number): void {
  for (let from = 0; from < into.length; from += block) {
    const count = Math.min(block, into.length - from);
    redGreenStretches(standard, trial, from, count);
    meanHues(standard, trial, from, count);
    weightedSums(standard.L, trial.L, into, from, count, kL, kC, kH);
  }
}

/** 1 + G of every pair. */
function redGreenStretches({ a: a1, b: b1 }: LabColumns, { a: a2, b: b2 }: LabColumns, from: number, count: number): void {
  for (let j = 0; j < count; j++) {
    const i = from + j;
    const chroma = 0.5 * (Math.sqrt(a1[i] * a1[i] + b1[i] * b1[i]) + Math.sqrt(a2[i] * a2[i] + b2[i] * b2[i]));
    const square = chroma * chroma;
    const seventh = square * square * square * chroma;
    stretch[j] = 1.5 - 0.5 * Math.sqrt(seventh / (seventh + power25to7));
  }
}

/** Cosine and sine of the mean hue, hue difference dH', mean chroma and chroma difference dC' of every pair. */
function meanHues({ a: a1, b: b1 }: LabColumns, { a: a2, b: b2 }: LabColumns, from: number, count: number): void {
  for (let j = 0; j < count; j++) {
    const i = from + j;
    const x1 = stretch[j] * a1[i];
    const x2 = stretch[j] * a2[i];
    const y1 = b1[i];
    const y2 = b2[i];
    const chroma1 = Math.sqrt(x1 * x1 + y1 * y1);
    const chroma2 = Math.sqrt(x2 * x2 + y2 * y2);
    meanChroma[j] = 0.5 * (chroma1 + chroma2);
    chromaStep[j] = chroma2 - chroma1;
    const product = chroma1 * chroma2;
    if (product < leastProduct) {
      cosine[j] = 1;
      sine[j] = 0;
      hueStep[j] = 0;
      continue;
    }
    const dot = x1 * x2 + y1 * y2;
    const cross = x1 * y2 - x2 * y1;
    const root = Math.sqrt(product);
    const width = Math.sqrt(2 * (product + Math.abs(dot)));
    if (dot < 0) {
      // The mean hue stands across the difference of the two unit vectors, which are far apart here.
      const sign = growing(cross, product, x1, y1, x2, y2) ? 1 : -1;
      const scale = sign / (root * width);
      cosine[j] = (y2 * chroma1 - y1 * chroma2) * scale;
      sine[j] = (x1 * chroma2 - x2 * chroma1) * scale;
      hueStep[j] = sign * width;
    } else {
      const scale = 1 / (root * width);
      cosine[j] = (x1 * chroma2 + x2 * chroma1) * scale;
      sine[j] = (y1 * chroma2 + y2 * chroma1) * scale;
      hueStep[j] = 2 * cross * root * scale;
    }
  }
}

/** Whether the hue grows from the first colour to the second; of opposite ones the angles 0..360 degrees themselves tell. */
function growing(cross: number, product: number, x1: number, y1: number, x2: number, y2: number): boolean {
  if (Math.abs(cross) <= oppositeTolerance * product) {
    const upper1 = y1 > 0 || (y1 === 0 && x1 > 0);
    const upper2 = y2 > 0 || (y2 === 0 && x2 > 0);
    if (upper1 !== upper2) return upper1;
  }
  return cross >= 0;
}

function weightedSums(L1: Float64Array, L2: Float64Array, into: Float64Array, from: number, count: number, kL: number, kC: number, kH: number): void {
  for (let j = 0; j < count; j++) {
    const i = from + j;
    const c = cosine[j];
    const s = sine[j];
    const c2 = 2 * c * c - 1;
    const s2 = 2 * s * c;
    const t = 1
      - 0.17 * (cosine30 * c + 0.5 * s)
      + 0.24 * c2
      + 0.32 * (cosine6 * (c * c2 - s * s2) - sine6 * (s * c2 + c * s2))
      - 0.2 * (cosine63 * (2 * c2 * c2 - 1) + sine63 * (2 * s2 * c2));
    const mean = meanChroma[j];
    const chromaWeight = kC * (1 + 0.045 * mean);
    const hueWeight = kH * (1 + 0.015 * mean * t);
    const fromMiddle = 0.5 * (L1[i] + L2[i]) - 50;
    const square = fromMiddle * fromMiddle;
    const root = Math.sqrt(20 + square);
    const lightness = ((L2[i] - L1[i]) * root) / (kL * (root + 0.015 * square));
    const weights = 1 / (chromaWeight * hueWeight);
    const chroma = chromaStep[j] * hueWeight * weights;
    const hue = hueStep[j] * chromaWeight * weights;
    const meanSquare = mean * mean;
    const seventh = meanSquare * meanSquare * meanSquare * mean;
    const place = huePlace(c, s);
    const whole = place | 0;
    const rest = place - whole;
    const at = 4 * whole;
    const rotation = hueRotationTable[at] + rest * (hueRotationTable[at + 1] + rest * (hueRotationTable[at + 2] + rest * hueRotationTable[at + 3]));
    into[i] = Math.sqrt(lightness * lightness + chroma * chroma + hue * hue + rotation * Math.sqrt(seventh / (seventh + power25to7)) * chroma * hue);
  }
}
