import type { JointStripInput } from '../../../src/report/figures/joint-strip.ts';
import { fixed } from '../../../src/report/number-text.ts';
import type { SurfaceSide } from '../../figures/surface/surface-side.ts';
import type { Gamut, PartColour } from '../../model/part-colours.ts';
import { screenStep } from '../../model/screen-step.ts';

/** What must be known of the colours on the large strip: steps of the screen, exaggeration, gamut. */
export function colourNotes(colours: readonly [PartColour, PartColour], shown: readonly [PartColour, PartColour], factor: number, gamut: Gamut): string[] {
  const notes: string[] = [];
  const [first, second] = colours;
  if (first.css !== undefined && second.css !== undefined) {
    const lightness = (first.lab[0] + second.lab[0]) / 2;
    notes.push(factor === 1
      ? `An 8-bit screen steps by about ${fixed(screenStep(lightness), 2)} in L* here (L* ${fixed(lightness, 0)}); `
        + 'what is smaller cannot be seen as it is.'
      : `The difference is multiplied by ${factor} about the mean of the pair in CIELAB. Neither side has its own colour now.`);
  }
  const outside = shown.filter((colour) => colour.css !== undefined && !colour.inGamut);
  if (outside.length > 0) {
    const error = Math.max(...outside.map((colour) => (colour.css === undefined ? 0 : colour.error)));
    const screen = gamut === 'srgb' ? 'sRGB' : 'Display P3';
    notes.push(`Outside what this screen can show (${screen}); the nearest colour is drawn, CIEDE2000 ${fixed(error, 1)} from the true one.`);
  }
  notes.push('The page cannot see the calibration of the screen: judge by the numbers.');
  return notes;
}

/** What the grain and the gloss of the picture stand on, and what they are not. */
export function surfaceNotes(
  sides: readonly [SurfaceSide, SurfaceSide], names: readonly [string, string], contrast: readonly [number, number] | undefined,
): string[] {
  const shown = sides.map((side, index) => ({ ...side, name: names[index] ?? '', contrast: contrast?.[index] ?? 1 })).filter(({ rgb }) => rgb !== undefined);
  if (shown.length === 0) return [];
  if (shown.every(({ grain, gloss }) => grain === undefined && gloss === undefined)) return ['Drawn plain and matt: there are no readings of texture or gloss.'];
  const listed = (of: (side: SurfaceSide) => boolean): string => shown.filter(of).map(({ name }) => name).join(' and ');
  const grains = shown.flatMap(({ grain }) => (grain === undefined ? [] : [grain]));
  const measured = listed(({ grain }) => grain?.kind === 'measured');
  const [plain, matt] = [listed(({ grain }) => grain === undefined), listed(({ gloss }) => gloss === undefined)];
  const from = grains.some(({ kind }) => kind === 'made') ? 'Sa, Sal, Str and gloss' : measured === '' ? 'gloss' : 'heights and gloss';
  const notes = [`Simulation from ${from}; not a photograph.`];
  if (grains.some((grain) => grain.kind === 'made' && grain.pattern !== 'random')) notes.push('The pattern of the grain is assumed; its depth, size and stretch are not.');
  if (measured !== '') notes.push(`Heights of ${measured} as measured.`);
  if (plain !== '') notes.push(`No texture reading of ${plain}: drawn plain.`);
  if (matt !== '') notes.push(`No gloss reading of ${matt}: drawn matt.`);
  for (const { name, contrast: share } of shown) {
    if (share < 0.995) notes.push(`Contrast of ${name} drawn at ${fixed(100 * share, 0)} %, since its lights would be beyond the white of the screen.`);
  }
  notes.push('Each side keeps its own colour in the mean wherever the lamp is.');
  return notes;
}

/** Whether the gap would take more of the picture than it is given. */
export const gapIsCut = (input: Pick<JointStripInput, 'kind' | 'gapMm'>, perMm: number, height: number): boolean =>
  input.kind === 'gap' && (input.gapMm ?? 0) * perMm > height / 3;
