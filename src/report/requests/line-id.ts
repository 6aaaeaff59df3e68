/** The alphabet of D. Crockford's base 32: no I, L, O and U. */
const alphabet = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const bodyLength = 7;

/**
 * Id of a line of a request sheet, short enough to be typed: `R-` and eight letters or digits, the last of them a check character by
 * the Luhn scheme modulo 32, which finds every single wrong character. The same text gives the same id everywhere and always
 * (FNV-1a hash of its UTF-16 code units, 32 bits and a second one of other seed for 35 in all).
 */
export function lineId(text: string): string {
  const first = hashOf(text, 0x811c9dc5);
  const second = hashOf(text, 0x9e3779b9);
  const body = Array.from({ length: bodyLength }, (_, index) => alphabet[index < 6 ? (first >>> (5 * index)) & 31 : second & 31]).join('');
  return `R-${body}${checkCharacter(body)}`;
}

function hashOf(text: string, seed: number): number {
  let hash = seed;
  for (let index = 0; index < text.length; index++) {
    const unit = text.charCodeAt(index);
    hash = Math.imul(hash ^ (unit & 0xff), 0x01000193);
    hash = Math.imul(hash ^ (unit >>> 8), 0x01000193);
  }
  // FNV leaves the last characters mostly in the low bits; a multiplicative mix brings them to all.
  hash ^= hash >>> 16;
  hash = Math.imul(hash, 0x21f0aaad);
  return (hash ^ (hash >>> 15)) >>> 0;
}

function checkCharacter(body: string): string {
  const size = alphabet.length;
  let sum = 0;
  let factor = 2;
  for (let index = body.length - 1; index >= 0; index--) {
    const product = factor * alphabet.indexOf(body[index]);
    sum += Math.floor(product / size) + (product % size);
    factor = factor === 2 ? 1 : 2;
  }
  return alphabet[(size - (sum % size)) % size];
}

export type ReadLineId =
  | { readonly kind: 'id'; readonly id: string }
  /** It looks like an id and its check character says that it was mistyped. */
  | { readonly kind: 'mistyped' }
  | { readonly kind: 'other' };

/** Reads an id as people type it: small letters, without the hyphen, O for 0 and I or L for 1. */
export function readLineId(text: string): ReadLineId {
  const match = /^R-?([0-9A-Z]{8})$/u.exec(text.trim().toUpperCase());
  if (match === null) return { kind: 'other' };
  const word = match[1].replaceAll('O', '0').replaceAll(/[IL]/gu, '1');
  const body = word.slice(0, bodyLength);
  return !word.includes('U') && word[bodyLength] === checkCharacter(body) ? { kind: 'id', id: `R-${word}` } : { kind: 'mistyped' };
}
