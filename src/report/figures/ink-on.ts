/**
 * Black or white, whichever reads better on a fill written as `#rrggbb` or `color(srgb|display-p3 r g b)`;
 * undefined for other notations. Relative luminance by the weights of sRGB (IEC 61966-2-1), of WCAG 2.2.
 */
export function inkOn(fill: string): '#000000' | '#ffffff' | undefined {
  const hex = /^#([0-9a-f]{2})([0-9a-f]{2})([0-9a-f]{2})$/i.exec(fill);
  const wide = /^color\((?:srgb|display-p3) ([\d.e+-]+) ([\d.e+-]+) ([\d.e+-]+)\)$/.exec(fill);
  const channels = hex ? hex.slice(1, 4).map((pair) => parseInt(pair, 16) / 255) : wide?.slice(1, 4).map(Number);
  if (channels === undefined || channels.some((channel) => !Number.isFinite(channel))) return undefined;
  const linear = (channel: number): number => (channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4);
  const [red = 0, green = 0, blue = 0] = channels.map(linear);
  const luminance = 0.2126 * red + 0.7152 * green + 0.0722 * blue;
  return (luminance + 0.05) / 0.05 > 1.05 / (luminance + 0.05) ? '#000000' : '#ffffff';
}
