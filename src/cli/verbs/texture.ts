import type { Issue, Outcome } from '../../issue.ts';
import type { ContrastSpectrum, MeasuredParameters, SurfaceMeasurement, Vanishing, VisibleDifference, VisibleTexture } from '../../texture/index.ts';
import type { SurfaceFile } from '../../formats/surface-file.ts';
import type { TextureJob } from '../texture-options.ts';
import type { Io, Terminal, Verb } from '../verb.ts';
import { readSurface } from '../../formats/surface-reader.ts';
import { hasErrors } from '../../issue.ts';
import { fixed } from '../../report/number-text.ts';
import {
  contrastSpectrumSteps, differenceVanishes, measureSurfaceSteps, renderHeightsSteps, runSteps, textureVanishes, visibleDifference, visibleTexture,
} from '../../texture/index.ts';
import { inputName } from '../read-input.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { textTable, wrapped } from '../text-table.ts';
import { textureJob, textureOptions } from '../texture-options.ts';
import { lastValue } from '../verb.ts';

export const texture: Verb = {
  name: 'texture',
  summary: 'Areal parameters and visible texture of a height map or a photograph, alone or as a pair.',
  operands: [{ name: 'FILE', about: 'height map (SDF, X3P, grid of numbers) or grey PNG photograph, or `-` for the standard input' }],
  options: textureOptions,
  detail: [
    'A height map gets the parameters of ISO 25178-2 over the surface that is left after the form, the S-filter and the L-filter (Gaussian, ISO 16610-61), and Ra, Rz and RSm of its rows (ISO 21920-2). Sal and Str are taken where the autocorrelation falls to 0.2; Str is 0 where it does not fall that far along some direction. Std is the direction of the lay from the rows (x) towards the columns (y).',
    'Visible texture is contrast of luminance, weighted by the sensitivity of the eye (Barten 2004) at the viewing distance and luminance; 1 is the threshold. A height map is first rendered as a matt surface under the lamp; a photograph must be in linear light and lit as the other one of a pair. A photograph has no heights and gets no parameters.',
    'A pair is told apart by channels of an octave and 45 degrees: strength is how much stronger one texture is, pattern what pitch and direction add. Below 1 a difference is not seen.',
    'Exit: 0 done, 2 bad input.',
  ],
  examples: [
    { command: 'adjoin texture door.sdf --form second-order --l-filter-mm 2.5', about: 'parameters and visible texture' },
    { command: 'adjoin texture door.x3p --with dash.x3p --view-mm 700 --json', about: 'the two told apart, in full precision' },
    { command: 'adjoin texture grain.png --mm-per-pixel 0.04 --transfer linear --flat-field card.png', about: 'a photograph' },
  ],
  run(args, io) {
    const issues: Issue[] = [];
    const job = textureJob(args, issues);
    const flat = lastValue(args, 'flat-field');
    const flatBytes = flat === undefined ? undefined : take(io.read(flat), issues);
    if (hasErrors(issues)) return refused(issues, args.json);
    const reading = { ...job.reading, flatField: flatBytes };
    const [first, second] = [args.operands[0], lastValue(args, 'with')]
      .map((path) => (path === undefined ? undefined : describe(path, io, { ...job, reading }, issues)));
    if (first === undefined || hasErrors(issues)) return refused(issues, args.json);
    const pair = second === undefined ? undefined : tellApart(first, second, job);
    const stderr = issueLines(issues);
    if (args.json) return done(jsonText({ ...blockJson(first, job), ...(second && { with: blockJson(second, job), difference: pair ?? null }) }), { stderr });
    return done(text([first, ...(second ? [second] : [])], pair, job, io.terminal), { stderr });
  },
};

function take<T>(outcome: Outcome<T>, issues: Issue[]): T | undefined {
  issues.push(...outcome.issues);
  return outcome.value;
}

interface Block {
  readonly name: string;
  readonly file: SurfaceFile;
  readonly measurement: Omit<SurfaceMeasurement, 'surface'> | undefined;
  readonly spectrum: ContrastSpectrum | undefined;
  readonly visible: VisibleTexture | undefined;
  readonly vanishes: Vanishing | undefined;
}

function describe(path: string, io: Io, job: TextureJob, issues: Issue[]): Block | undefined {
  const name = inputName(path);
  const bytes = take(io.read(path), issues);
  const file = bytes && take(readSurface(bytes, { ...job.reading, file: name }), issues);
  if (file === undefined) return undefined;
  const whole = file.kind === 'heights' ? runSteps(measureSurfaceSteps(file.map, job.measuring)) : undefined;
  issues.push(...(whole?.issues ?? []).map((issue) => ({ ...issue, file: name })));
  const luminance = file.kind === 'photograph' ? file.picture : whole && runSteps(renderHeightsSteps(whole.surface, job.lamp));
  const spectrum = luminance && runSteps(contrastSpectrumSteps(luminance));
  return {
    name, file, measurement: whole, spectrum,
    visible: spectrum && visibleTexture(spectrum, job.viewing), vanishes: spectrum && textureVanishes(spectrum, job.viewing),
  };
}

type Told = VisibleDifference & { readonly vanishes: Vanishing };

function tellApart(first: Block, second: Block, { viewing }: TextureJob): Told | undefined {
  if (first.spectrum === undefined || second.spectrum === undefined) return undefined;
  const both = [viewing, viewing] as const;
  return { ...visibleDifference(first.spectrum, second.spectrum, both), vanishes: differenceVanishes(first.spectrum, second.spectrum, both) };
}

const areal = [
  ['SaUm', 'saUm', 'Sa', 'µm', 3], ['SqUm', 'sqUm', 'Sq', 'µm', 3], ['Ssk', 'ssk', 'Ssk', '', 3], ['Sku', 'sku', 'Sku', '', 3],
  ['SpUm', 'spUm', 'Sp', 'µm', 2], ['SvUm', 'svUm', 'Sv', 'µm', 2], ['SzUm', 'szUm', 'Sz', 'µm', 2], ['SalMm', 'salMm', 'Sal', 'mm', 4],
  ['Str', 'str', 'Str', '', 3], ['StdDeg', 'stdDeg', 'Std', '°', 1], ['Sdq', 'sdq', 'Sdq', '', 4], ['Sdr', 'sdr', 'Sdr', '', 5],
] as const satisfies readonly (readonly [string, keyof MeasuredParameters, string, string, number])[];

const profile = [
  ['RaUm', 'raUm', 'Ra', 'µm', 3], ['RzUm', 'rzUm', 'Rz', 'µm', 2], ['RsmMm', 'rsmMm', 'RSm', 'mm', 4], ['VdiClass', 'vdiClass', 'VDI 3400', '', 1],
] as const satisfies readonly (readonly [string, keyof MeasuredParameters, string, string, number])[];

const sizeOf = (file: SurfaceFile) => (file.kind === 'heights' ? file.map : { ...file.picture, missing: file.picture.values.reduce((sum, value) => sum + (Number.isNaN(value) ? 1 : 0), 0) });

function blockJson({ file, measurement, spectrum, visible, vanishes }: Block, { viewing, lamp }: TextureJob) {
  const { width, height, spacingMm, missing } = sizeOf(file);
  const named = (list: typeof areal | typeof profile) => Object.fromEntries(list.map(([key, from]) => [key, measurement?.parameters[from] ?? null]));
  return {
    surface: { kind: file.kind, format: file.format, width, height, spacingMm, missing },
    parameters: named(areal),
    profile: measurement === undefined ? null : { ...named(profile), sectionMm: measurement.profiles?.sectionMm ?? null, sections: measurement.profiles?.sections ?? null },
    conditions: measurement === undefined ? null : { ...measurement.conditions, ...(measurement.strAtMost === undefined ? {} : { strAtMost: measurement.strAtMost }) },
    visible: visible === undefined || spectrum === undefined ? null : {
      ...visible, rmsContrast: spectrum.rmsContrast, vanishes, ...viewing, source: spectrum.source, ...(spectrum.source === 'rendered' ? { lamp } : {}),
    },
  };
}

function text(blocks: readonly Block[], pair: Told | undefined, { viewing, lamp }: TextureJob, terminal: Terminal): string {
  const cell = (value: number | undefined, decimals: number, unit: string): string => (value === undefined ? '–' : `${fixed(value, decimals)}${unit === '' || unit === '°' ? unit : ` ${unit}`}`);
  const rows: [string, ...string[]][] = [
    ['points', ...blocks.map(({ file }) => `${sizeOf(file).width} x ${sizeOf(file).height}`)],
    ['spacing', ...blocks.map(({ file }) => `${sizeOf(file).spacingMm.map((spacing) => Number(spacing.toPrecision(4))).join(' x ')} mm`)],
    ['missing', ...blocks.map(({ file }) => String(sizeOf(file).missing))],
    ...[...areal, ...profile].filter(([, from]) => blocks.some(({ measurement }) => measurement?.parameters[from] !== undefined))
      .map(([, from, label, unit, decimals]): [string, ...string[]] => [label, ...blocks.map(({ measurement }) => cell(measurement?.parameters[from], decimals, unit))]),
    ['visible contrast', ...blocks.map(({ visible }) => (visible === undefined ? '–' : `${fixed(visible.visibleContrast, 2)} ± ${fixed(visible.uncertainty, 2)}`))],
    ['pitch', ...blocks.map(({ visible }) => cell(visible?.pitchMm, 3, 'mm'))],
    ['lay', ...blocks.map(({ visible }) => (visible?.directionDeg === undefined ? '–' : `${fixed(visible.directionDeg, 0)}°, ${fixed(100 * visible.directionality, 0)} % one way`))],
    ['not seen from', ...blocks.map(({ vanishes }) => distance(vanishes))],
  ];
  const table = textTable([{ title: '' }, ...blocks.map(({ name }) => ({ title: name.slice(0, 40), align: 'right' as const }))], rows.map((cells) => ({ cells })), terminal);
  const seen = `Seen at ${fixed(viewing.viewMm, 0)} mm under ${fixed(viewing.illuminanceLx, 0)} lx, reflectance ${viewing.reflectance}, field ${fixed(viewing.fieldMm, 0)} mm; 1 is the threshold.`;
  const rendered = blocks.some(({ spectrum }) => spectrum?.source === 'rendered')
    ? ` Heights rendered as a matt surface, lamp ${fixed(lamp.elevationDeg, 0)}° above it from ${fixed(lamp.azimuthDeg, 0)}°.` : '';
  const apart = pair === undefined ? [] : ['', ...wrapped(
    `Difference ${fixed(pair.difference, 2)} (strength ${fixed(pair.strength, 2)}, pattern ${fixed(pair.pattern, 2)}; two fields of one texture differ by ${fixed(pair.chance, 2)} by chance, which is taken off): ${
      pair.difference < 1 ? 'not seen' : `seen, as far as ${distance(pair.vanishes)}`}.`, terminal.columns)];
  return `${table}\n${[...wrapped(seen + rendered, terminal.columns), ...apart].join('\n')}\n`;
}

function distance(vanishes: Vanishing | undefined): string {
  if (vanishes === undefined) return '–';
  if (vanishes.kind === 'never seen') return 'any distance';
  return vanishes.kind === 'beyond' ? `more than ${fixed(vanishes.viewMm / 1000, 0)} m` : `${fixed(vanishes.viewMm / 1000, 2)} m`;
}
