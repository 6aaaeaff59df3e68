const [zero, nine, plus, minus, point, comma, smallE, largeE] = [0x30, 0x39, 0x2b, 0x2d, 0x2e, 0x2c, 0x65, 0x45];
const exactPowers = Float64Array.from({ length: 23 }, (_, power) => 10 ** power);

/** Bytes of text in ASCII as a string; other bytes as the characters of Latin-1. */
export function asciiText(bytes: Uint8Array, start: number, end: number): string {
  let text = '';
  for (let at = start; at < end; at += 8192) text += String.fromCharCode(...bytes.subarray(at, Math.min(end, at + 8192)));
  return text;
}

/**
 * The decimal number that the bytes spell, to the last bit; NaN where they spell none. `decimal` is the code of the decimal sign.
 *
 * Up to 15 digits and powers of ten up to 22 are exact in doubles and so is one operation on them rounded once
 * (W. D. Clinger, How to read floating point numbers accurately, PLDI 1990); the rest is left to the language.
 */
export function numberOf(bytes: Uint8Array, start: number, end: number, decimal: number = point): number {
  let at = start;
  const negative = bytes[at] === minus;
  if (negative || bytes[at] === plus) at += 1;
  let digits = 0;
  let mantissa = 0;
  let places = 0;
  let whole = true;
  for (; at < end; at += 1) {
    const code = bytes[at];
    if (code >= zero && code <= nine) {
      mantissa = mantissa * 10 + (code - zero);
      digits += 1;
      if (!whole) places += 1;
    } else if (code === decimal && whole) whole = false;
    else break;
  }
  if (digits === 0) return NaN;
  let exponent = 0;
  if (at < end) {
    if (bytes[at] !== smallE && bytes[at] !== largeE) return NaN;
    at += 1;
    const falling = bytes[at] === minus;
    if (falling || bytes[at] === plus) at += 1;
    if (at >= end || end - at > 4) return NaN;
    for (; at < end; at += 1) {
      if (!(bytes[at] >= zero && bytes[at] <= nine)) return NaN;
      exponent = exponent * 10 + (bytes[at] - zero);
    }
    if (falling) exponent = -exponent;
  }
  const power = exponent - places;
  if (digits > 15 || Math.abs(power) > 22) {
    const text = asciiText(bytes, start, end);
    return Number(decimal === comma ? text.replace(',', '.') : text);
  }
  const value = power < 0 ? mantissa / exactPowers[-power] : mantissa * exactPowers[power];
  return negative ? -value : value;
}

const missingWords: ReadonlySet<string> = new Set(['BAD', 'NAN']);

/** Whether the bytes are a word for a point that was not measured: BAD (ISO 25178-71) or NaN in any case. */
export const isMissingWord = (bytes: Uint8Array, start: number, end: number): boolean =>
  end - start === 3 && missingWords.has(asciiText(bytes, start, end).toUpperCase());
