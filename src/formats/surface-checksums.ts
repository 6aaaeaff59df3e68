const crcTable = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit += 1) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/** Cyclic redundancy check of zip and PNG. Source: ISO 3309; PNG specification, annex D. */
export function crc32(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (let index = 0; index < bytes.length; index += 1) value = crcTable[(value ^ bytes[index]) & 0xff] ^ (value >>> 8);
  return (value ^ 0xffffffff) >>> 0;
}

const shifts = [[7, 12, 17, 22], [5, 9, 14, 20], [4, 11, 16, 23], [6, 10, 15, 21]] as const;
const sines = Uint32Array.from({ length: 64 }, (_, step) => Math.floor(Math.abs(Math.sin(step + 1)) * 2 ** 32));

/** MD5 digest in small hexadecimal digits: tells damage, not malice. Source: RFC 1321. */
export function md5(bytes: Uint8Array): string {
  const length = Math.ceil((bytes.length + 9) / 64) * 64;
  const tail = new Uint8Array(length - Math.floor(bytes.length / 64) * 64);
  const whole = length - tail.length;
  tail.set(bytes.subarray(whole));
  tail[bytes.length - whole] = 0x80;
  const tailView = new DataView(tail.buffer);
  tailView.setUint32(tail.length - 8, (bytes.length * 8) >>> 0, true);
  tailView.setUint32(tail.length - 4, Math.floor(bytes.length / 2 ** 29), true);
  const state = Uint32Array.of(0x67452301, 0xefcdab89, 0x98badcfe, 0x10325476);
  const words = new Uint32Array(16);
  const digest = (view: DataView, at: number): void => {
    for (let word = 0; word < 16; word += 1) words[word] = view.getUint32(at + 4 * word, true);
    let [a, b, c, d] = state;
    for (let step = 0; step < 64; step += 1) {
      const round = step >> 4;
      let mixed: number;
      let word: number;
      if (round === 0) [mixed, word] = [(b & c) | (~b & d), step];
      else if (round === 1) [mixed, word] = [(d & b) | (~d & c), (5 * step + 1) & 15];
      else if (round === 2) [mixed, word] = [b ^ c ^ d, (3 * step + 5) & 15];
      else [mixed, word] = [c ^ (b | ~d), (7 * step) & 15];
      const sum = (a + mixed + sines[step] + words[word]) | 0;
      const shift = shifts[round][step & 3];
      [a, d, c, b] = [d, c, b, (b + ((sum << shift) | (sum >>> (32 - shift)))) | 0];
    }
    state[0] += a;
    state[1] += b;
    state[2] += c;
    state[3] += d;
  };
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  for (let at = 0; at < whole; at += 64) digest(view, at);
  for (let at = 0; at < tail.length; at += 64) digest(tailView, at);
  return [...new Uint8Array(state.buffer)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
