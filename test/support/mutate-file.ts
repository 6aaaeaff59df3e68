/** Bytes that break readers: separators, quotes, brackets, signs, ends of lines, numbers out of range, parts of encodings. */
const tokens = [
  ',', ';', '\t', '"', '""', "'", '\n', '\r', '\r\n', '<', '>', '</', '/>', '&', '&amp;', '&#0;', '&x;', '<!--', '-->', '<![CDATA[', ']]>', '<!DOCTYPE a [<!ENTITY b "c">]>', '<?', '?>', '{', '}', '[', ']', ':', '\\u0000', '\\', '#', '# scale: percent\n',
  '# scale: x\n', '0', '-1', '1e999', '-0', 'NaN', '1e-400', '99999999999999999999', '0x10', '1,5', '400', '__proto__', 'constructor', 'BEGIN_DATA', 'END_DATA', 'BEGIN_DATA_FORMAT', 'END_DATA_FORMAT', 'NUMBER_OF_SETS 3', 'KEYWORD', 'SPECTRAL_PCT', 'wavelength',
  'null', 'true', ' ', '\ufeff', '\u202e', '\ufffd', '\0', 'ä', '%', '=1+1', 'sep=;\n', 'xmlns="urn:x"', 'x:', '.', '+', 'e',
].map((text) => new TextEncoder().encode(text));

/** A copy of a file with one to six random changes: bytes flipped, cut, doubled, moved, tokens put in, the end cut off. `random` gives numbers from 0 to 1. */
export function mutateFile(file: Uint8Array, random: () => number): Uint8Array {
  let bytes = Array.from(file);
  const upTo = (count: number): number => Math.floor(random() * count);
  for (let change = 1 + upTo(6); change > 0; change -= 1) {
    const at = upTo(bytes.length + 1);
    const length = 1 + upTo(random() < 0.8 ? 8 : 400);
    switch (upTo(8)) {
      case 0: bytes[upTo(Math.max(1, bytes.length))] = upTo(256); break;
      case 1: bytes.splice(at, length); break;
      case 2: bytes.splice(at, 0, ...bytes.slice(at, at + length)); break;
      case 3: bytes.splice(upTo(bytes.length + 1), 0, ...bytes.splice(at, length)); break;
      case 4: bytes.splice(at, 0, ...(tokens[upTo(tokens.length)] ?? [])); break;
      case 5: bytes.splice(at, length, ...(tokens[upTo(tokens.length)] ?? [])); break;
      case 6: if (random() < 0.2) bytes = bytes.slice(0, at); break;
      default: bytes.splice(at, 0, ...Array.from({ length }, () => tokens[upTo(tokens.length)] ?? new Uint8Array()).flatMap((token) => [...token]).slice(0, 200));
    }
  }
  return Uint8Array.from(bytes);
}
