import { name, number, object, optional, required, boolean, tuple } from '../cabin/schema/index.ts';
import type { Schema } from '../cabin/schema/index.ts';
import { materialValues } from './rule-book.ts';
import type { Basis, MaterialClass } from './rule-book.ts';
import { basis, factor, glossRule } from './rule-schema.ts';

/** Bases by the names of the values they belong to, each optional. */
export const basesOf = <const Name extends string>(names: readonly Name[]): Schema<Partial<Readonly<Record<Name, Basis>>>> =>
  object<Partial<Record<Name, Basis>>>(
    'bases by value', Object.fromEntries(names.map((each) => [each, optional(basis())])) as never,
  );

const limit = (): Schema<number> => number({ above: 0, max: 1000 });
const sd = (): Schema<number> => number({ above: 0, max: 100, hint: 'No reading repeats exactly: give a small number instead of 0.' });
export const standardDeviations = (): Schema<readonly [number, number, number]> =>
  tuple('standard deviations of L*, a* and b*', sd(), sd(), sd());

/** One row of the table of materials. */
export const materialClass = (): Schema<MaterialClass> => object<MaterialClass>('a material', {
  material: required(name('the name of a material')),
  family: required(name('a family')),
  colourLimit: required(limit()),
  kL: required(factor()),
  lightnessCap: optional(limit()),
  gloss: required(glossRule()),
  readingSd: required(standardDeviations()),
  glossSd: required(sd()),
  wanted: required(object<MaterialClass['wanted']>('the readings wanted', {
    spots: required(number({ min: 1, max: 1000, whole: true })),
    rotations: optional(number({ min: 1, max: 360, whole: true })),
    specimens: optional(number({ min: 1, max: 1000, whole: true })),
  })),
  masterColourLimit: required(limit()),
  masterGlossLimit: optional(limit()),
  advisory: optional(boolean()),
  sameGeometryOnly: optional(boolean()),
  basis: required(basis()),
  bases: optional(basesOf(materialValues)),
});
