import type { ContrastSpectrum, MeasuredParameters, SurfaceMeasurement, TextureFeature, Vanishing, VisibleDifference, VisibleTexture } from '../texture/index.ts';
import type { FoundTexture } from '../formats/reading-set.ts';
import type { SurfaceFile } from '../formats/surface-file.ts';
import type { TextureJob } from './texture-options.ts';
import type { Terminal } from './verb.ts';
import { fixed } from '../report/number-text.ts';
import { countMissing } from '../texture/index.ts';
import { textTable, wrapped } from './text-table.ts';

/** One surface and all that was found of it. */
export interface SurfaceBlock {
  readonly name: string;
  readonly file: SurfaceFile;
  readonly measurement: SurfaceMeasurement | undefined;
  readonly spectrum: ContrastSpectrum | undefined;
  readonly visible: VisibleTexture | undefined;
  readonly vanishes: Vanishing | undefined;
  readonly data: FoundTexture | undefined;
}

export type Told = VisibleDifference & { readonly apart: readonly TextureFeature[]; readonly vanishes: Vanishing };

const areal = [
  ['SaUm', 'saUm', 'Sa', 'µm', 3], ['SqUm', 'sqUm', 'Sq', 'µm', 3], ['Ssk', 'ssk', 'Ssk', '', 3], ['Sku', 'sku', 'Sku', '', 3],
  ['SpUm', 'spUm', 'Sp', 'µm', 2], ['SvUm', 'svUm', 'Sv', 'µm', 2], ['SzUm', 'szUm', 'Sz', 'µm', 2], ['SalMm', 'salMm', 'Sal', 'mm', 4],
  ['Str', 'str', 'Str', '', 3], ['StdDeg', 'stdDeg', 'Std', '°', 1], ['Sdq', 'sdq', 'Sdq', '', 4], ['Sdr', 'sdr', 'Sdr', '', 5],
] as const satisfies readonly (readonly [string, keyof MeasuredParameters, string, string, number])[];

const profile = [
  ['RaUm', 'raUm', 'Ra', 'µm', 3], ['RzUm', 'rzUm', 'Rz', 'µm', 2], ['RsmMm', 'rsmMm', 'RSm', 'mm', 4], ['VdiClass', 'vdiClass', 'VDI 3400', '', 1],
] as const satisfies readonly (readonly [string, keyof MeasuredParameters, string, string, number])[];

const sizeOf = (file: SurfaceFile) => (file.kind === 'heights' ? file.map : { ...file.picture, missing: countMissing(file.picture.values) });

/** A surface as JSON, with the keys that callers rely on. */
export function surfaceJson({ file, measurement, spectrum, visible, vanishes }: SurfaceBlock, { viewing, lamp }: TextureJob) {
  const { width, height, spacingMm, missing } = sizeOf(file);
  const named = (list: typeof areal | typeof profile) => Object.fromEntries(list.map(([key, from]) => [key, measurement?.parameters[from] ?? null]));
  const profiles = measurement?.profiles;
  return {
    surface: { kind: file.kind, format: file.format, width, height, spacingMm, missing },
    parameters: named(areal),
    profile: measurement === undefined ? null : {
      ...named(profile), along: profiles?.axis ?? null, ...(profiles?.row === undefined ? {} : { row: profiles.row }), profiles: profiles?.profiles ?? 0,
      sectionMm: profiles?.sectionMm ?? null, sections: profiles?.sections ?? null,
    },
    conditions: measurement === undefined ? null : { ...measurement.conditions, ...(measurement.strAtMost === undefined ? {} : { strAtMost: measurement.strAtMost }) },
    visible: visible === undefined || spectrum === undefined ? null : {
      ...visible, rmsContrast: spectrum.rmsContrast, vanishes, ...viewing, source: spectrum.source, ...(spectrum.source === 'rendered' ? { lamp } : {}),
    },
  };
}

/** One surface or two as a person reads them. */
export function surfaceText(blocks: readonly SurfaceBlock[], pair: Told | undefined, { viewing, lamp }: TextureJob, terminal: Terminal): string {
  const cell = (value: number | undefined, decimals: number, unit: string): string => (value === undefined ? '–' : `${fixed(value, decimals)}${unit === '' || unit === '°' ? unit : ` ${unit}`}`);
  const rows: [string, ...string[]][] = [
    ['points', ...blocks.map(({ file }) => `${sizeOf(file).width} x ${sizeOf(file).height}`)],
    ['spacing', ...blocks.map(({ file }) => `${sizeOf(file).spacingMm.map((spacing) => Number(spacing.toPrecision(4))).join(' x ')} mm`)],
    ['missing', ...blocks.map(({ file }) => missingText(sizeOf(file)))],
    ...[...areal, ...profile].filter(([, from]) => blocks.some(({ measurement }) => measurement?.parameters[from] !== undefined))
      .map(([, from, label, unit, decimals]): [string, ...string[]] => [label, ...blocks.map(({ measurement }) => cell(measurement?.parameters[from], decimals, unit))]),
    ...(blocks.some(({ measurement }) => measurement?.profiles !== undefined) ? [['profiles', ...blocks.map(({ measurement }) => profilesText(measurement))] as [string, ...string[]]] : []),
    ['visible contrast', ...blocks.map(({ visible }) => (visible === undefined ? '–' : `${fixed(visible.visibleContrast, 2)} ± ${fixed(visible.uncertainty, 2)}`))],
    ['pitch', ...blocks.map(({ visible }) => cell(visible?.pitchMm, 3, 'mm'))],
    ['lay', ...blocks.map(({ visible }) => (visible?.directionDeg === undefined ? '–' : `${fixed(visible.directionDeg, 0)}°, ${fixed(100 * visible.directionality, 0)} % one way`))],
    ['not seen from', ...blocks.map(({ vanishes }) => distance(vanishes))],
  ];
  const table = textTable([{ title: '' }, ...blocks.map(({ name }) => ({ title: name.slice(0, 40), align: 'right' as const }))], rows.map((cells) => ({ cells })), terminal);
  const seen = `Seen at ${fixed(viewing.viewMm, 0)} mm under ${fixed(viewing.illuminanceLx, 0)} lx, reflectance ${viewing.reflectance}, field ${fixed(viewing.fieldMm, 0)} mm; 1 is the threshold.`;
  const rendered = blocks.some(({ spectrum }) => spectrum?.source === 'rendered')
    ? ` Heights rendered as a matt surface, lamp ${fixed(lamp.elevationDeg, 0)}° above it from ${fixed(lamp.azimuthDeg, 0)}°.` : '';
  const apart = pair === undefined ? [] : ['', ...wrapped(pairText(pair), terminal.columns)];
  return `${table}\n${[...wrapped(seen + rendered, terminal.columns), ...apart].join('\n')}\n`;
}

function missingText({ missing, width, height }: { readonly missing: number; readonly width: number; readonly height: number }): string {
  return missing === 0 ? '0' : `${missing} (${fixed((100 * missing) / (width * height), 1)} %)`;
}

function profilesText(measurement: SurfaceMeasurement | undefined): string {
  const profiles = measurement?.profiles;
  if (profiles === undefined) return '–';
  return profiles.row === undefined ? `${profiles.profiles} along ${profiles.axis}` : `row ${profiles.row}`;
}

function pairText(pair: Told): string {
  const parts = `strength ${fixed(pair.strength, 2)}, pattern ${fixed(pair.pattern, 2)}; two fields of one texture differ by ${fixed(pair.chance, 2)} by chance, which is taken off`;
  const seen = pair.difference < 1 ? 'not seen' : `seen, as far as ${distance(pair.vanishes)}, in ${pair.apart.join(' and ')}`;
  return `Difference ${fixed(pair.difference, 2)} ± ${fixed(pair.uncertainty, 2)} (${parts}): ${seen}.`;
}

function distance(vanishes: Vanishing | undefined): string {
  if (vanishes === undefined) return '–';
  if (vanishes.kind === 'never seen') return 'any distance';
  return vanishes.kind === 'beyond' ? `more than ${fixed(vanishes.viewMm / 1000, 0)} m` : `${fixed(vanishes.viewMm / 1000, 2)} m`;
}
