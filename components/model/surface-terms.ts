import { transferCurves } from '../../src/formats/surface-file.ts';
import type { TransferCurve } from '../../src/formats/surface-file.ts';
import { forms } from '../../src/texture/form.ts';
import type { Form } from '../../src/texture/form.ts';
import type { Options } from './source-terms.ts';

/** How a surface is measured and looked at, as an address has it. Lengths to measure by stay the text that was typed: a wrong one is shown, not lost. */
export interface SurfaceTerms {
  readonly form: Form;
  readonly of: 'part' | 'tool';
  readonly sFilter: string;
  readonly lFilter: string;
  readonly pitch: string;
  readonly transfer: TransferCurve | '';
  readonly capture: string;
  /** Viewing distance, 100 to 20,000 mm. */
  readonly viewMm: number;
  readonly illuminanceLx: number;
  /** Luminance factor of the part, above 0 to 1. */
  readonly reflectance: number;
  readonly specimen: string;
  readonly conditions: string;
  readonly spot: string;
  /** Name of the file; the file itself does not go into an address. */
  readonly file: string;
}

/** As a cabin is looked at where no joint says otherwise: 700 mm, 1000 lx, a dark part. Assumptions, no source. */
const usual = { viewMm: 700, illuminanceLx: 1000, percent: 5 };

const oneOf = <T extends string>(values: readonly T[], text: string | undefined): T | undefined => values.find((value) => value === text);

/** A length that was typed, mm: `undefined` for none, `NaN` for what is no length. */
export function typedLength(text: string): number | undefined {
  if (text.trim() === '') return undefined;
  const length = Number(text.replace(',', '.'));
  return length > 0 && Number.isFinite(length) ? length : Number.NaN;
}

/** A number of an address within its bounds; what is no number, or not above zero, gives the usual one. */
function within(text: string | undefined, otherwise: number, least: number, most: number): number {
  const value = text === undefined || text.trim() === '' ? Number.NaN : Number(text.replace(',', '.'));
  return value > 0 ? Math.min(most, Math.max(least, value)) : otherwise;
}

/** Terms of an address; what it does not name, or names wrongly, is as usual. */
export function surfaceTerms(options: Options): SurfaceTerms {
  const text = (name: string): string => options[name] ?? '';
  return {
    form: oneOf(forms, options['form']) ?? 'plane', of: options['of'] === 'tool' ? 'tool' : 'part', sFilter: text('s-filter'), lFilter: text('l-filter'), pitch: text('pitch'),
    transfer: oneOf(transferCurves, options['curve']) ?? '', capture: text('set-up'),
    viewMm: within(options['seen'], usual.viewMm, 100, 20_000), illuminanceLx: within(options['lux'], usual.illuminanceLx, 0.01, 200_000),
    reflectance: within(options['factor'], usual.percent, 0.01, 100) / 100,
    specimen: text('specimen'), conditions: text('conditions'), spot: text('spot') || '1', file: text('file'),
  };
}
