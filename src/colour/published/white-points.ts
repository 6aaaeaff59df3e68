// Made by test/reference/make-colour-tables.ts; do not edit.

/**
 * White points as printed: CIE 015:2018, 2 decimals; ASTM E308 10 nm tables, 3 decimals, from memory.
 * Transcribed by way of colour-science 0.4.6 (BSD-3-Clause, Copyright 2013 Colour Developers).
 */
export const printedWhitePoints = [
  { light: 'A', observer: 2, source: 'CIE 015:2018', xyz: [109.85, 100, 35.58] },
  { light: 'A', observer: 2, source: 'ASTM E308, from memory', xyz: [109.85, 100, 35.585] },
  { light: 'A', observer: 10, source: 'CIE 015:2018', xyz: [111.14, 100, 35.2] },
  { light: 'A', observer: 10, source: 'ASTM E308, from memory', xyz: [111.144, 100, 35.2] },
  { light: 'C', observer: 2, source: 'CIE 015:2018', xyz: [98.07, 100, 118.22] },
  { light: 'C', observer: 2, source: 'ASTM E308, from memory', xyz: [98.074, 100, 118.232] },
  { light: 'C', observer: 10, source: 'CIE 015:2018', xyz: [97.29, 100, 116.14] },
  { light: 'C', observer: 10, source: 'ASTM E308, from memory', xyz: [97.285, 100, 116.145] },
  { light: 'D50', observer: 2, source: 'CIE 015:2018', xyz: [96.42, 100, 82.51] },
  { light: 'D50', observer: 2, source: 'ASTM E308, from memory', xyz: [96.422, 100, 82.521] },
  { light: 'D50', observer: 10, source: 'CIE 015:2018', xyz: [96.72, 100, 81.43] },
  { light: 'D50', observer: 10, source: 'ASTM E308, from memory', xyz: [96.72, 100, 81.427] },
  { light: 'D65', observer: 2, source: 'CIE 015:2018', xyz: [95.04, 100, 108.88] },
  { light: 'D65', observer: 2, source: 'ASTM E308, from memory', xyz: [95.047, 100, 108.883] },
  { light: 'D65', observer: 10, source: 'CIE 015:2018', xyz: [94.81, 100, 107.32] },
  { light: 'D65', observer: 10, source: 'ASTM E308, from memory', xyz: [94.811, 100, 107.304] },
  { light: 'FL2', observer: 2, source: 'ASTM E308, from memory', xyz: [99.186, 100, 67.393] },
  { light: 'FL2', observer: 10, source: 'ASTM E308, from memory', xyz: [103.279, 100, 69.027] },
  { light: 'FL7', observer: 2, source: 'ASTM E308, from memory', xyz: [95.041, 100, 108.747] },
  { light: 'FL7', observer: 10, source: 'ASTM E308, from memory', xyz: [95.792, 100, 107.686] },
  { light: 'FL11', observer: 2, source: 'ASTM E308, from memory', xyz: [100.962, 100, 64.35] },
  { light: 'FL11', observer: 10, source: 'ASTM E308, from memory', xyz: [103.863, 100, 65.607] },
] as const;

/**
 * Chromaticity coordinates after CIE 15:2004 and CIE 015:2018; those of FL2, FL7 and FL11 at 10 deg by linear interpolation of the lamps.
 * Transcribed by way of colour-science 0.4.6 (BSD-3-Clause, Copyright 2013 Colour Developers).
 */
export const printedChromaticities = [
  { light: 'D65', observer: 2, xy: [0.3127, 0.329], decimals: 5 },
  { light: 'D65', observer: 10, xy: [0.31382, 0.331], decimals: 5 },
  { light: 'D50', observer: 2, xy: [0.34567, 0.3585], decimals: 5 },
  { light: 'D50', observer: 10, xy: [0.34773, 0.35952], decimals: 5 },
  { light: 'A', observer: 2, xy: [0.44758, 0.40745], decimals: 5 },
  { light: 'A', observer: 10, xy: [0.45117, 0.40594], decimals: 5 },
  { light: 'C', observer: 2, xy: [0.31006, 0.31616], decimals: 5 },
  { light: 'C', observer: 10, xy: [0.31039, 0.31905], decimals: 5 },
  { light: 'FL2', observer: 2, xy: [0.3721, 0.3751], decimals: 4 },
  { light: 'FL2', observer: 10, xy: [0.37925, 0.36733], decimals: 5 },
  { light: 'FL7', observer: 2, xy: [0.3129, 0.3292], decimals: 4 },
  { light: 'FL7', observer: 10, xy: [0.31569, 0.3296], decimals: 5 },
  { light: 'FL11', observer: 2, xy: [0.3805, 0.3769], decimals: 4 },
  { light: 'FL11', observer: 10, xy: [0.38541, 0.37123], decimals: 5 },
  { light: 'LED-B1', observer: 2, xy: [0.456, 0.4078], decimals: 4 },
  { light: 'LED-B1', observer: 10, xy: [0.4625, 0.40304], decimals: 5 },
  { light: 'LED-B2', observer: 2, xy: [0.4357, 0.4012], decimals: 4 },
  { light: 'LED-B2', observer: 10, xy: [0.44212, 0.39663], decimals: 5 },
  { light: 'LED-B3', observer: 2, xy: [0.3756, 0.3723], decimals: 4 },
  { light: 'LED-B3', observer: 10, xy: [0.38085, 0.36852], decimals: 5 },
  { light: 'LED-B4', observer: 2, xy: [0.3422, 0.3502], decimals: 4 },
  { light: 'LED-B4', observer: 10, xy: [0.34837, 0.34507], decimals: 5 },
  { light: 'LED-B5', observer: 2, xy: [0.3118, 0.3236], decimals: 4 },
  { light: 'LED-B5', observer: 10, xy: [0.31692, 0.32206], decimals: 5 },
  { light: 'LED-BH1', observer: 2, xy: [0.4474, 0.4066], decimals: 4 },
  { light: 'LED-BH1', observer: 10, xy: [0.45277, 0.40003], decimals: 5 },
  { light: 'LED-RGB1', observer: 2, xy: [0.4557, 0.4211], decimals: 4 },
  { light: 'LED-RGB1', observer: 10, xy: [0.45704, 0.42538], decimals: 5 },
  { light: 'LED-V1', observer: 2, xy: [0.4548, 0.4044], decimals: 4 },
  { light: 'LED-V1', observer: 10, xy: [0.4536, 0.3982], decimals: 5 },
  { light: 'LED-V2', observer: 2, xy: [0.3781, 0.3775], decimals: 4 },
  { light: 'LED-V2', observer: 10, xy: [0.37773, 0.37451], decimals: 5 },
  { light: 'ID65', observer: 2, xy: [0.31066, 0.33066], decimals: 5 },
  { light: 'ID65', observer: 10, xy: [0.31207, 0.33266], decimals: 5 },
  { light: 'ID50', observer: 2, xy: [0.34321, 0.36021], decimals: 5 },
  { light: 'ID50', observer: 10, xy: [0.34562, 0.36123], decimals: 5 },
] as const;
