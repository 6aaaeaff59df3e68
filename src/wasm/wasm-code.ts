/** Bytes of WebAssembly, as the instructions follow one another. */
export type Code = readonly number[];

/** Unsigned number in the variable-length form of the binary format (LEB128). */
export function unsigned(value: number): Code {
  const bytes: number[] = [];
  let rest = value;
  do {
    const low = rest % 128;
    rest = Math.floor(rest / 128);
    bytes.push(rest > 0 ? low + 128 : low);
  } while (rest > 0);
  return bytes;
}

/** Signed number in the same form; whole numbers of 32 bits. */
function signed(value: number): Code {
  const bytes: number[] = [];
  let rest = value;
  for (;;) {
    const low = rest & 127;
    rest >>= 7;
    if ((rest === 0 && (low & 64) === 0) || (rest === -1 && (low & 64) !== 0)) return [...bytes, low];
    bytes.push(low + 128);
  }
}

const vector = (operation: number): Code => [0xfd, ...unsigned(operation)];
/** Address operand: aligned to 2^`align` bytes, `offset` bytes on. */
const at = (align: number, offset: number): Code => [align, ...unsigned(offset)];

/** Instructions, by the names of the text format; operands are taken from the stack in the order given. */
export const get = (local: number): Code => [0x20, ...unsigned(local)];
export const set = (local: number, ...value: Code[]): Code => [...value.flat(), 0x21, ...unsigned(local)];
export const int = (value: number): Code => [0x41, ...signed(value)];
export const addInt = (first: Code, second: Code): Code => [...first, ...second, 0x6a];
export const subtractInt = (first: Code, second: Code): Code => [...first, ...second, 0x6b];
export const andInt = (first: Code, second: Code): Code => [...first, ...second, 0x71];
export const orInt = (first: Code, second: Code): Code => [...first, ...second, 0x72];
export const bitsUpInt = (value: Code, by: number): Code => [...value, ...int(by), 0x74];
export const multiplyInt = (first: Code, second: Code): Code => [...first, ...second, 0x6c];
/** Runs the body again and again until the local, lowered by 1 each time, is 0; the body runs once at least. */
export const countDown = (local: number, ...body: Code[]): Code =>
  [0x03, 0x40, ...body.flat(), ...set(local, subtractInt(get(local), int(1))), ...get(local), 0x0d, 0x00, 0x0b];

export const load = (address: Code, offset = 0): Code => [...address, ...vector(0x00), ...at(3, offset)];
/** One number in both lanes. */
export const loadTwice = (address: Code, offset = 0): Code => [...address, ...vector(0x0a), ...at(3, offset)];
export const loadInt = (address: Code): Code => [...address, 0x28, ...at(2, 0)];
export const storeByte = (address: Code, value: Code): Code => [...address, ...value, 0x3a, ...at(0, 0)];
export const store = (address: Code, value: Code, offset = 0): Code => [...address, ...value, ...vector(0x0b), ...at(3, offset)];
/** A number in both lanes. */
export const both = (value: number): Code => pair(value, value);
const binary = (operation: number) => (first: Code, second: Code): Code => [...first, ...second, ...vector(operation)];
export const add = binary(0xf0);
export const subtract = binary(0xf1);
export const multiply = binary(0xf2);
export const divide = binary(0xf3);
const unary = (operation: number) => (value: Code): Code => [...value, ...vector(operation)];
export const absolute = unary(0xec);
export const squareRoot = unary(0xef);
export const equal = binary(0x47);
export const less = binary(0x49);
export const greater = binary(0x4a);
export const atMost = binary(0x4b);
export const atLeast = binary(0x4c);
/** Lanes where both masks are set. */
export const and = binary(0x4e);
/** The masks of the two lanes as the bits 1 and 2 of a whole number. */
export const laneBits = (mask: Code): Code => [...mask, ...vector(0xc4)];
/** Two numbers, the first in the low lane. */
export const pair = (first: number, second: number): Code => [...vector(0x0c), ...new Uint8Array(Float64Array.of(first, second).buffer)];
/** Lanes of `first` where the mask is set, else of `second`. */
export const select = (first: Code, second: Code, mask: Code): Code => [...first, ...second, ...mask, ...vector(0x52)];
export const or = binary(0x50);
export const exclusiveOr = binary(0x51);
/** Both lanes cut towards zero to whole numbers of 32 bits, in the first two of four; NaN is 0. */
export const wholeParts = unary(0xfc);
/** The first two of four whole numbers of 32 bits as numbers. */
export const fromWhole = unary(0xfe);
/** One of four whole numbers of 32 bits. */
export const wholeAt = (value: Code, place: number): Code => [...value, ...vector(0x1b), place];
const shuffle = (...bytes: readonly number[]) => (first: Code, second: Code): Code => [...first, ...second, ...vector(0x0d), ...bytes];
const eight = (from: number): readonly number[] => Array.from({ length: 8 }, (_, place) => from + place);
/** The low lanes of two vectors beside each other, and their high lanes. */
export const lowLanes = shuffle(...eight(0), ...eight(16));
export const highLanes = shuffle(...eight(8), ...eight(24));
/** Both lanes as whole numbers of 64 bits, moved by so many bits; zeros come in. */
export const bitsUp = (value: Code, by: number): Code => [...value, ...int(by), ...vector(0xcb)];
export const bitsDown = (value: Code, by: number): Code => [...value, ...int(by), ...vector(0xcd)];
