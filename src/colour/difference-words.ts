import type { Lab } from '../quantities.ts';
import { components } from './components.ts';

/** Below this mean C*ab a colour is spoken of by its a* and b*, above it by chroma and hue (assumption, no source). */
const chromaticFrom = 20;

/** A smaller component, CIELAB units, is not named: about what one reading of a grained part repeats to (assumption, no source). */
const leastNamed = 0.1;

const uniqueHues = ['redder', 'yellower', 'greener', 'bluer'] as const;

/** Hues this near to an axis (degrees) are spoken of by that axis, so a yellow turns greener or redder, never yellower. */
const nearAxis = 22.5;

/** Word of the axis that the hue turns towards, from the mean hue of the pair. */
function hueWord(standard: Lab, chroma1: number, trial: Lab, chroma2: number, dH: number): string {
  const a = standard[1] / chroma1 + trial[1] / chroma2;
  const b = standard[2] / chroma1 + trial[2] / chroma2;
  const degrees = (Math.atan2(b, a) * 180) / Math.PI;
  const axis = dH > 0 ? Math.ceil((degrees + nearAxis) / 90) : Math.floor((degrees - nearAxis) / 90);
  return uniqueHues[(axis + 4) % 4]!;
}

/**
 * Words for how a trial differs from a standard, in the order lightness, colour.
 *
 * lighter/darker by dL*. Greys and muted colours: redder/greener by da* and yellower/bluer by db*; a hue angle or a chroma of theirs
 * would swing with noise. Chromatic colours (mean C*ab of 20 or more): more/less chromatic by dC*, and the word of the hue that
 * the trial has turned towards by dH* (a red turns yellower or bluer, an orange yellower or redder, and so on).
 * Components below `threshold` (0.1 CIELAB units unless given) are not named; equal colours, or NaN, give no words.
 * Source: direction words as in ISO 105-J03:2009 and ASTM D2244; the choice between the two sets is ours.
 */
export function differenceWords(standard: Lab, trial: Lab, threshold = leastNamed): string[] {
  const { dL, da, db, dC, dH } = components(standard, trial);
  const words: string[] = [];
  const name = (value: number, positive: string, negative: string): void => {
    if (Math.abs(value) >= threshold && value !== 0) words.push(value > 0 ? positive : negative);
  };
  name(dL, 'lighter', 'darker');
  const chroma1 = Math.sqrt(standard[1] * standard[1] + standard[2] * standard[2]);
  const chroma2 = Math.sqrt(trial[1] * trial[1] + trial[2] * trial[2]);
  if ((chroma1 + chroma2) / 2 < chromaticFrom || chroma1 === 0 || chroma2 === 0) {
    name(da, 'redder', 'greener');
    name(db, 'yellower', 'bluer');
    return words;
  }
  const word = hueWord(standard, chroma1, trial, chroma2, dH);
  name(Math.abs(dH), word, word);
  name(dC, 'more chromatic', 'less chromatic');
  return words;
}
