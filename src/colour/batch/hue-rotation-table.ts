const radiansPerDegree = Math.PI / 180;
/** Places a quarter turn is cut into. */
export const huePlacesPerQuarter = 1024;
const places = 4 * huePlacesPerQuarter;

/** -2 sin(60 deg exp(-((h - 275) / 25)^2)) at a hue h in degrees, and its slope in h. */
function rotation(hue: number): readonly [value: number, slope: number] {
  const offset = (hue - 275) / 25;
  const angle = 60 * radiansPerDegree * Math.exp(-offset * offset);
  return [-2 * Math.sin(angle), -2 * Math.cos(angle) * angle * ((-2 * offset) / 25)];
}

/** Hue in degrees at a share 0..1 of a quarter turn, as {@link huePlace} counts it, and its slope in the share. */
function hueAt(quarter: number, share: number): readonly [hue: number, slope: number] {
  const rest = 1 - share;
  return [90 * quarter + Math.atan2(share, rest) / radiansPerDegree, 1 / ((share * share + rest * rest) * radiansPerDegree)];
}

/**
 * The part of CIEDE2000's rotation term RT that depends on the hue alone, as cubics in the place of the hue: coefficients of place
 * k from [4 k] on, constant first. Met at both ends of every place in value and slope; within 2e-12 of the function between them.
 * The hue of 360 degrees ends the table, and that of 0 begins it: the function is not the same there by 2e-5.
 */
export const hueRotationTable: Float64Array = (() => {
  const table = new Float64Array(4 * (places + 1));
  for (let place = 0; place < places; place++) {
    const quarter = Math.floor(place / huePlacesPerQuarter);
    const at = (step: number): readonly [value: number, slope: number] => {
      const [hue, turn] = hueAt(quarter, (place + step) / huePlacesPerQuarter - quarter);
      const [value, slope] = rotation(hue);
      return [value, (slope * turn) / huePlacesPerQuarter];
    };
    const [from, fromSlope] = at(0);
    const [to, toSlope] = at(1);
    table.set([from, fromSlope, 3 * (to - from) - 2 * fromSlope - toSlope, 2 * (from - to) + fromSlope + toSlope], 4 * place);
  }
  table[4 * places] = rotation(360)[0];
  return table;
})();

/** Place of a hue in the table by its cosine and sine, 0 to `4 x 1024`: an angle in all but name, for one division. */
export function huePlace(cosine: number, sine: number): number {
  const share = cosine / (Math.abs(cosine) + Math.abs(sine));
  return huePlacesPerQuarter * (sine < 0 ? 3 + share : 1 - share);
}
