import type { Issue } from '../issue.ts';
import type { Micrometres, Millimetres } from '../quantities.ts';
import type { Form } from './form.ts';
import { removeFormSteps } from './form.ts';
import { gaussianFilterSteps } from './gaussian-filter.ts';
import type { HeightMap } from './height-map.ts';
import { heightParameters } from './height-parameters.ts';
import { hybridParameterSteps } from './hybrid-parameters.ts';
import type { ProfileChoice, ProfileParameters } from './profile-parameters.ts';
import { profileParameters } from './profile-parameters.ts';
import type { Surface } from './sampled-field.ts';
import { spatialParameterSteps } from './spatial-parameters.ts';
import type { Steps } from './steps.ts';
import { partOfSteps } from './steps.ts';
import { measurementCautions } from './measurement-cautions.ts';
import { textureDirectionSteps } from './texture-direction.ts';
import { vdiClassOfRa } from './vdi-class.ts';

export interface MeasureOptions {
  /** F-operation; none where absent. */
  readonly form?: Form;
  /** Nesting index of the S-filter; none where absent. */
  readonly sFilterMm?: Millimetres;
  /** Nesting index of the L-filter; none where absent. */
  readonly lFilterMm?: Millimetres;
  /** Profiles for Ra, Rz and RSm; all rows where absent. */
  readonly profile?: ProfileChoice;
  /** Only a tool's surface has a class of VDI 3400. */
  readonly of?: 'part' | 'tool';
}

/** Parameters of a scale-limited surface, named as a texture reading names them; undefined where the surface does not determine one. */
export interface MeasuredParameters {
  readonly saUm?: Micrometres;
  readonly sqUm?: Micrometres;
  readonly ssk?: number;
  readonly sku?: number;
  readonly spUm?: Micrometres;
  readonly svUm?: Micrometres;
  readonly szUm?: Micrometres;
  readonly salMm?: Millimetres;
  readonly str?: number;
  readonly stdDeg?: number;
  readonly sdq?: number;
  readonly sdr?: number;
  readonly raUm?: Micrometres;
  readonly rzUm?: Micrometres;
  readonly rsmMm?: Millimetres;
  readonly vdiClass?: number;
}

export interface SurfaceMeasurement {
  readonly parameters: MeasuredParameters;
  readonly profiles: ProfileParameters | undefined;
  /** Set where Str is 0: what it can be at most. */
  readonly strAtMost?: number;
  readonly conditions: Required<Pick<MeasureOptions, 'form' | 'of'>> & Pick<MeasureOptions, 'sFilterMm' | 'lFilterMm'>;
  readonly issues: readonly Issue[];
  /** The scale-limited surface itself, about any level. */
  readonly surface: Surface;
}

/** F-operation, then the S-filter, then the L-filter: the scale-limited surface. Source: ISO 25178-2 and ISO 25178-3. */
export function* scaleLimitedSteps(map: HeightMap, options: MeasureOptions): Steps<Surface> {
  const { width, height, spacingMm } = map;
  let values = yield* partOfSteps(removeFormSteps(map, options.form ?? 'none'), 0, 0.2);
  yield 0.2;
  if (options.sFilterMm !== undefined) values = yield* partOfSteps(gaussianFilterSteps(values, width, height, spacingMm, options.sFilterMm), 0.2, 0.6);
  yield 0.6;
  if (options.lFilterMm !== undefined) {
    const waves = yield* partOfSteps(gaussianFilterSteps(values, width, height, spacingMm, options.lFilterMm), 0.6, 0.95);
    for (let index = 0; index < values.length; index += 1) values[index] -= waves[index];
  }
  return { width, height, spacingMm, values };
}

/**
 * Areal parameters of ISO 25178-2 and profile parameters of ISO 21920-2 of a height map, step by step.
 *
 * Over the scale-limited surface: the form taken off, then the S-filter and the L-filter where asked for. Missing points take no part.
 * A surface without heights has Sa 0 and no shape. What the map is too small or too coarse for is said in `issues`.
 */
export function* measureSurfaceSteps(map: HeightMap, options: MeasureOptions = {}): Steps<SurfaceMeasurement> {
  const surface = yield* partOfSteps(scaleLimitedSteps(map, options), 0, 0.5);
  const heights = heightParameters(surface.values, largestOf(map.values));
  const flat = heights === undefined || heights.ssk === undefined;
  yield 0.55;
  const hybrid = yield* partOfSteps(hybridParameterSteps(surface), 0.55, 0.65);
  const spatial = flat ? undefined : yield* partOfSteps(spatialParameterSteps(surface), 0.65, 0.85);
  const stdDeg = flat ? undefined : yield* partOfSteps(textureDirectionSteps(surface), 0.85, 0.95);
  const profiles = flat ? undefined : profileParameters(surface, options.profile ?? 'x', options.lFilterMm);
  yield 0.99;
  const of = options.of ?? 'part';
  const parameters: MeasuredParameters = defined({
    ...heights, ...(spatial && { salMm: spatial.salMm, str: spatial.str }), stdDeg, ...hybrid,
    raUm: profiles?.raUm, rzUm: profiles?.rzUm, rsmMm: profiles?.rsmMm,
    vdiClass: of === 'tool' && profiles !== undefined ? vdiClassOfRa(profiles.raUm) : undefined,
  });
  return {
    parameters, profiles, ...(spatial?.strAtMost === undefined ? {} : { strAtMost: spatial.strAtMost }),
    conditions: { form: options.form ?? 'none', of, ...defined({ sFilterMm: options.sFilterMm, lFilterMm: options.lFilterMm }) },
    issues: measurementCautions(map, options, parameters), surface,
  };
}

function defined<T extends object>(record: T): { [Key in keyof T]?: Exclude<T[Key], undefined> } {
  return Object.fromEntries(Object.entries(record).filter(([, value]) => value !== undefined)) as { [Key in keyof T]?: Exclude<T[Key], undefined> };
}

function largestOf(values: ArrayLike<number>): number {
  let largest = 0;
  for (let index = 0; index < values.length; index += 1) {
    const size = Math.abs(values[index]);
    if (size > largest) largest = size;
  }
  return largest;
}
