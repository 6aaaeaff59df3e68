const luminanceOfCode = (code: number): number => {
  const share = code / 255;
  return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
};
const lightnessOf = (luminance: number): number => (luminance > 216 / 24389 ? 116 * Math.cbrt(luminance) - 16 : (luminance * 24389) / 27);

/** How far apart in L* two neighbouring greys of an 8-bit sRGB screen (IEC 61966-2-1) are at a lightness of 0..100. */
export function screenStep(lightness: number): number {
  let code = 0;
  while (code < 254 && lightnessOf(luminanceOfCode(code + 1)) < lightness) code += 1;
  return lightnessOf(luminanceOfCode(code + 1)) - lightnessOf(luminanceOfCode(code));
}
