const minus = '\u2212';

/** A number for reading: fixed decimals, the typographic minus sign, a dash where there is none. */
export function fixed(value: number | undefined, decimals = 2): string {
  if (value === undefined || !Number.isFinite(value)) return '–';
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? minus + text : text;
}

/** As `fixed`, with a plus sign before positive numbers. */
export function signed(value: number | undefined, decimals = 2): string {
  const text = fixed(value, decimals);
  return value !== undefined && value > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/** A share as whole per cent. */
export const percent = (share: number | undefined): string => (share === undefined || !Number.isFinite(share) ? '–' : `${fixed(share * 100, 0)} %`);

/** A probability to two decimals, never rounded to certainty. */
export function probability(p: number | undefined): string {
  if (p === undefined || !Number.isFinite(p)) return '–';
  if (p > 0.995) return '> 0.99';
  if (p < 0.005) return '< 0.01';
  return p.toFixed(2);
}

/** `1 joint`, `2 joints`. */
export const counted = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;
