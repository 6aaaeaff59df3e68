/**
 * A number with fixed decimals, as printed beside its unit. A true minus sign, no minus before a zero,
 * an en dash where there is no number.
 */
export function fixed(value: number | undefined, decimals: number): string {
  if (value === undefined || !Number.isFinite(value)) return '–';
  const text = Math.abs(value).toFixed(decimals);
  return value < 0 && Number(text) !== 0 ? `\u2212${text}` : text;
}

/** As `fixed`, with a plus sign before positive numbers: for signed differences. */
export function signed(value: number | undefined, decimals: number): string {
  const text = fixed(value, decimals);
  return value !== undefined && value > 0 && Number(text) !== 0 ? `+${text}` : text;
}

/** A share as whole per cent, the sign held to its number. */
export const percent = (share: number | undefined): string => (share === undefined || !Number.isFinite(share) ? '–' : `${fixed(share * 100, 0)}\u00a0%`);

/** A share of which only all of it is printed as 100 %. */
export const coverageText = (share: number): string => (share < 1 && share > 0.995 ? '>\u00a099\u00a0%' : percent(share));

/** A probability as per cent that never claims certainty: below 0.5 % and above 99.5 % the bound is printed. */
export function probability(value: number | undefined): string {
  if (value === undefined || !Number.isFinite(value)) return '–';
  if (value < 0.005) return '<\u00a01\u00a0%';
  if (value > 0.995) return '>\u00a099\u00a0%';
  return percent(value);
}

/** Limit use as per cent; past ten times the limit only the bound is printed. */
export const limitUseText = (use: number | undefined): string => (use !== undefined && use > 9.995 ? '>\u00a0999\u00a0%' : percent(use));

/** Decimals for a value of a check by its unit: 2 for colour differences and gloss units, 3 for ratios and the like. */
export const decimalsOf = (unit: string): number => (/ratio/.test(unit) ? 3 : 2);

/** One word after a count, with an `s` where the count is not one, or the plural given. */
export const counted = (count: number, singular: string, plural = `${singular}s`): string => `${count} ${count === 1 ? singular : plural}`;

/** A confidence as per cent, with decimals where it has them: `95 %`, `99.73 %`. */
export const confidenceText = (confidence: number): string => `${fixed(100 * confidence, Number.isInteger(Math.round(1e6 * confidence) / 1e4) ? 0 : 2)}\u00a0%`;
