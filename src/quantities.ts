/**
 * Units as flavoured numbers: a plain number may be given where a quantity is
 * asked for, but one quantity may not be given where another is asked for.
 */
declare const unit: unique symbol;
type Flavoured<Name extends string> = number & { readonly [unit]?: Name };

export type Nanometres = Flavoured<'nm'>;
export type Millimetres = Flavoured<'mm'>;
export type Micrometres = Flavoured<'µm'>;
export type Degrees = Flavoured<'°'>;
export type Kelvin = Flavoured<'K'>;
export type Lux = Flavoured<'lx'>;
/** Gloss units of ISO 2813, 100 for the black glass of n = 1.567. */
export type GlossUnits = Flavoured<'GU'>;
/** Reflectance factor, 1 for the perfect reflecting diffuser; never per cent. */
export type ReflectanceFactor = Flavoured<'1'>;
/** Calendar date, `YYYY-MM-DD`. */
export type IsoDate = string;

/** CIE tristimulus values, Y = 100 for the perfect reflecting diffuser. */
export type Xyz = readonly [X: number, Y: number, Z: number];
/** CIELAB coordinates L*, a*, b* (ISO/CIE 11664-4). */
export type Lab = readonly [L: number, a: number, b: number];
/** CIELAB L*, C*ab, h_ab in degrees 0..360. */
export type Lch = readonly [L: number, C: number, h: number];
/** Row-major symmetric 3 x 3 matrix, units of the axes multiplied. */
export type Matrix3 = readonly [number, number, number, number, number, number, number, number, number];
