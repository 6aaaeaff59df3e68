import type { DifferenceFormula } from '../../colour/difference-formula.ts';
import { cie94GraphicArts, cie94Textiles } from '../../colour/differences/cie94.ts';
import { ciede2000ChromaWeight, ciede2000LightnessWeight, redGreenStretch } from '../../colour/differences/ciede2000.ts';
import { cmcChromaWeight, cmcLightnessWeight } from '../../colour/differences/cmc.ts';
import type { Criterion, DifferenceComponent } from '../../readings/stacked-event.ts';
import { hueIn, largestRotationSine, leastCiede2000HueShape, leastCmcHueShape, meanHueIn } from './hue-range.ts';
import { bothOf, lessOf, rootOf, sizeOf, squareOf, sumOf, timesOf } from './interval.ts';
import type { Interval } from './interval.ts';

/** All colours whose coordinates lie in three intervals. */
export type LabBox = readonly [L: Interval, a: Interval, b: Interval];

/**
 * What a criterion's value lies between for every pair of colours of two boxes: never narrower than it is, wider where the boxes are wide. Only what
 * can be told by interval arithmetic: undefined for formulas of which nothing is known here (DIN99o and the CAM spaces). The lower end of a
 * difference is left at 0, since limits from above are met by their slopes.
 */
export function criterionRangeIn(criterion: Criterion, standard: LabBox, trial: LabBox): Interval | undefined {
  if (criterion.kind === 'component') {
    const own = componentIn(criterion.component, standard, trial);
    return criterion.absolute === true ? sizeOf(own) : own;
  }
  const forward = largestDifference(criterion.formula, standard, trial);
  if (forward === undefined) return undefined;
  return [0, criterion.stricterDirection === true ? Math.max(forward, largestDifference(criterion.formula, trial, standard) ?? Infinity) : forward];
}

const chromaIn = ([, a, b]: LabBox): Interval => rootOf(sumOf(squareOf(a), squareOf(b)));

function componentIn(component: DifferenceComponent, standard: LabBox, trial: LabBox): Interval {
  if (component === 'dL') return lessOf(trial[0], standard[0]);
  if (component === 'da') return lessOf(trial[1], standard[1]);
  if (component === 'db') return lessOf(trial[2], standard[2]);
  return component === 'dC' ? chromaDifference(standard, trial) : hueDifferenceIn(standard, trial);
}

/** Also no larger than the distance in the plane of a* and b*, by the triangle inequality. */
function chromaDifference(standard: LabBox, trial: LabBox): Interval {
  const [, most] = planeDistance(standard, trial);
  return bothOf(lessOf(chromaIn(trial), chromaIn(standard)), [-most, most]);
}

const planeDistance = (standard: LabBox, trial: LabBox): Interval => rootOf(sumOf(squareOf(lessOf(trial[1], standard[1])), squareOf(lessOf(trial[2], standard[2]))));

/**
 * dH^2 is da^2 + db^2 - dC^2 and 2 (C1 C2 - a1 a2 - b1 b2), and |dH| is |a1 b2 - a2 b1| times the root of 2 / (C1 C2 + a1 a2 + b1 b2), which is at least 1 / the root of C1 C2:
 * whatever lies in all of these. Its sign is that of a1 b2 - a2 b1. Source: the forms of ISO/CIE 11664-4 and of Seve that `hueDifference` states.
 */
function hueDifferenceIn(standard: LabBox, trial: LabBox): Interval {
  const cross = lessOf(timesOf(standard[1], trial[2]), timesOf(trial[1], standard[2]));
  const dot = sumOf(timesOf(standard[1], trial[1]), timesOf(standard[2], trial[2]));
  const product = timesOf(chromaIn(standard), chromaIn(trial));
  const bySquares = lessOf(squareOf(planeDistance(standard, trial)), squareOf(chromaDifference(standard, trial)));
  const byProduct = lessOf(product, dot);
  const [leastCross, mostCross] = sizeOf(cross);
  const together = product[0] + dot[0];
  const [low, high] = bothOf(rootOf(bothOf(bySquares, [2 * byProduct[0], 2 * byProduct[1]])), [
    product[1] > 0 ? leastCross / Math.sqrt(product[1]) : 0, together > 0 ? mostCross * Math.sqrt(2 / together) : Infinity,
  ]);
  return cross[0] > 0 ? [low, high] : cross[1] < 0 ? [-high, -low] : [-high, high];
}

/** Nothing that two colours of two boxes can differ by is larger; undefined for formulas that it is not known of. */
function largestDifference(formula: DifferenceFormula, standard: LabBox, trial: LabBox): number | undefined {
  const lightness = sizeOf(lessOf(trial[0], standard[0]))[1];
  const plane = planeDistance(standard, trial)[1];
  const chroma = sizeOf(chromaDifference(standard, trial))[1];
  const hue = sizeOf(hueDifferenceIn(standard, trial))[1];
  const weighted = (L: number, C: number, H: number): number => Math.sqrt((lightness / L) ** 2 + largestInPlane(plane, chroma, hue, C, H));
  const least = chromaIn(standard)[0];
  switch (formula.name) {
    case 'cie76':
      return Math.hypot(lightness, plane);
    case 'cie94':
    case 'cie94Textile': {
      const own = formula.name === 'cie94' ? cie94GraphicArts : cie94Textiles;
      return weighted(formula.kL ?? own.kL, (formula.kC ?? 1) * (1 + own.chromaSlope * least), (formula.kH ?? 1) * (1 + own.hueSlope * least));
    }
    case 'cmc': {
      // What T weighs grows with chroma, and T is below 1.
      const most = chromaIn(standard)[1];
      const share = most === 0 ? 0 : Math.sqrt(1 / (1 + 1900 / most ** 4));
      const weight = cmcChromaWeight(least);
      return weighted((formula.l ?? 2) * cmcLightnessWeight(standard[0][0]), (formula.c ?? 1) * weight, weight * (1 - (1 - leastCmcHueShape(hueIn(standard[1], standard[2]))) * share));
    }
    case 'ciede2000':
      return largestCiede2000(formula, standard, trial, lightness);
    default:
      return undefined;
  }
}

/** The largest (dC/C)^2 + (dH/H)^2 with dC^2 + dH^2 at most the square of a distance and neither above its own largest. */
function largestInPlane(distance: number, chroma: number, hue: number, C: number, H: number): number {
  const [square, c, h] = [distance * distance, chroma * chroma, hue * hue];
  if (C <= H) {
    const first = Math.min(c, square);
    return first / (C * C) + Math.min(h, square - first) / (H * H);
  }
  const first = Math.min(h, square);
  return first / (H * H) + Math.min(c, square - first) / (C * C);
}

/** CIEDE2000 from above: SL at the mean lightness nearest to 50, the stretch of a* at the least chroma, T at its least and the rotation at its largest over the mean hues. */
function largestCiede2000({ kL = 1, kC = 1, kH = 1 }: DifferenceFormula, standard: LabBox, trial: LabBox, lightness: number): number {
  const [low, high] = sumOf(standard[0], trial[0]);
  const L = kL * ciede2000LightnessWeight(Math.min(high / 2, Math.max(low / 2, 50)));
  const [leastMean, mostMean] = sumOf(chromaIn(standard), chromaIn(trial));
  // The stretch falls with chroma. It is one and the same for both colours, so their difference is stretched with it.
  const [from, to] = [redGreenStretch(mostMean / 2), redGreenStretch(leastMean / 2)];
  const stretched = ([own, a, b]: LabBox): LabBox => [own, timesOf(a, [from, to]), b];
  const [one, two] = [stretched(standard), stretched(trial)];
  const plane = Math.hypot(to * sizeOf(lessOf(trial[1], standard[1]))[1], sizeOf(lessOf(trial[2], standard[2]))[1]);
  const chroma = Math.min(plane, sizeOf(chromaDifference(one, two))[1]);
  const hue = Math.min(plane, sizeOf(hueDifferenceIn(one, two))[1]);
  const [leastChroma, mostChroma] = sumOf(chromaIn(one), chromaIn(two)).map((value) => value / 2);
  const C = kC * ciede2000ChromaWeight(leastChroma!);
  const hues = meanHueIn(hueIn(one[1], one[2]), hueIn(two[1], two[2]));
  const H = kH * (1 + 0.015 * leastChroma! * leastCiede2000HueShape(hues));
  const rotation = mostChroma === 0 ? 0 : (2 * largestRotationSine(hues)) / Math.sqrt(1 + (25 / mostChroma!) ** 7);
  return Math.sqrt((lightness / L) ** 2 + largestInPlane(plane, chroma, hue, C, H) + rotation * (chroma / C) * (hue / H));
}
