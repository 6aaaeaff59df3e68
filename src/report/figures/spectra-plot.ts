import { line, scaleLinear } from 'd3';
import { drawing, element } from '../scene.ts';
import type { SceneElement } from '../scene.ts';
import type { FigureTheme } from './theme.ts';

export interface PlottedSpectrum {
  readonly name: string;
  readonly startNm: number;
  readonly stepNm: number;
  /** Reflectance factors, 0..1. */
  readonly values: readonly number[];
  /** Colour of the chip beside the name. */
  readonly fill?: string;
}

export interface SpectraPlotInput {
  readonly standard: PlottedSpectrum | undefined;
  readonly trial: PlottedSpectrum | undefined;
  /** There is no second side to compare with: no room is kept for the difference. */
  readonly alone?: boolean;
  /** Why there is nothing to plot for a side. */
  readonly note?: string;
}

interface Frame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

const at = ({ startNm, stepNm, values }: PlottedSpectrum): [number, number][] => values.map((value, i) => [startNm + i * stepNm, value]);

/** Trial minus standard at the wavelengths both have on one grid; empty where the grids do not share points. */
export function spectralDifference(standard: PlottedSpectrum, trial: PlottedSpectrum): [nm: number, difference: number][] {
  const base = new Map(at(standard));
  return at(trial).flatMap(([nm, value]): [number, number][] => {
    const under = base.get(nm);
    return under === undefined ? [] : [[nm, value - under]];
  });
}

/**
 * Reflectance of both sides over wavelength, standard solid and trial dashed, and below it their difference
 * (trial minus standard) on its own scale, both in per cent.
 */
export function spectraPlot(input: SpectraPlotInput, size: { readonly width: number; readonly height: number }, theme: FigureTheme): SceneElement {
  const { width, height } = size;
  const sides = [input.standard, input.trial].filter((side) => side !== undefined);
  const nm = sides.flatMap((side) => [side.startNm, side.startNm + side.stepNm * (side.values.length - 1)]);
  const x = scaleLinear([Math.min(400, ...nm), Math.max(700, ...nm)], [40, width - 10]);
  const stacked = stacks(input, width);
  const upper: Frame = { left: 40, right: width - 10, top: stacked ? 64 : 50, bottom: input.alone === true ? height - 22 : Math.round(height * 0.64) };
  const lower: Frame = { left: 40, right: width - 10, top: Math.round(height * 0.64) + 26, bottom: height - 22 };
  const top = Math.max(0.02, ...sides.flatMap((side) => side.values));
  const y = scaleLinear([0, top * 1.08], [upper.bottom, upper.top]).nice(4);
  const difference = input.standard && input.trial ? spectralDifference(input.standard, input.trial) : [];
  const reach = Math.max(0.002, ...difference.map(([, value]) => Math.abs(value)));
  const dy = scaleLinear([-reach * 1.1, reach * 1.1], [lower.bottom, lower.top]);
  const wavelengths = x.ticks(Math.max(3, Math.floor(width / 90)));
  const label = `Reflectance of ${sides.map((side) => side.name).join(' and ') || 'neither side'} over wavelength${input.alone === true ? '' : ', and their difference'}`;
  return drawing(
    width,
    height,
    label,
    grid(y, upper, y.ticks(4), percent(y.ticks(4)), theme),
    input.alone === true ? undefined : grid(dy, lower, [-reach, 0, reach], signedPercent([-reach, 0, reach]), theme),
    wavelengths.map((tick, i) => (i === wavelengths.length - 1
      ? text(Math.min(width - 2, x(tick) + 24), height - 6, `${tick} nm`, 'end', theme)
      : text(x(tick), height - 6, String(tick), 'middle', theme))),
    text(upper.left, upper.top - 8, 'reflectance factor, %', 'start', theme),
    input.standard ? curve(at(input.standard), x, y, theme.ink, undefined) : undefined,
    input.trial ? curve(at(input.trial), x, y, theme.ink, '5 3') : undefined,
    difference.length > 1 ? curve(difference, x, dy, theme.ink, undefined) : undefined,
    legend(input, theme, width, stacked),
    input.alone === true ? undefined : text(upper.left, lower.top - 8, 'difference, trial minus standard, %', 'start', theme),
  );
}

type Scale = (value: number) => number;

const percent = (ticks: readonly number[]): string[] => ticks.map((tick) => String(Number((tick * 100).toPrecision(6))));
const signedPercent = (ticks: readonly number[]): string[] =>
  ticks.map((tick) => (tick === 0 ? '0' : `${tick < 0 ? '\u2212' : '+'}${Math.abs(tick * 100).toPrecision(2)}`));

const text = (x: number, y: number, content: string, anchor: string, theme: FigureTheme): SceneElement =>
  element('text', { x, y, 'font-size': 11, 'text-anchor': anchor, fill: theme.quiet }, content);

function grid(y: Scale, frame: Frame, ticks: readonly number[], names: readonly string[], theme: FigureTheme): SceneElement[] {
  return ticks.flatMap((tick, i) => [
    element('line', {
      x1: frame.left, y1: y(tick), x2: frame.right, y2: y(tick),
      stroke: tick === 0 ? theme.quiet : theme.faint, 'stroke-width': tick === 0 ? 1 : 0.75,
    }),
    text(frame.left - 6, y(tick) + 4, names[i] ?? '', 'end', theme),
  ]);
}

function curve(points: readonly [number, number][], x: Scale, y: Scale, stroke: string, dashes: string | undefined): SceneElement {
  const path = line<[number, number]>((point) => x(point[0]), (point) => y(point[1])).digits(2);
  return element('path', {
    d: path([...points]) ?? '', fill: 'none', stroke, 'stroke-width': 1.5, 'stroke-dasharray': dashes, 'stroke-linejoin': 'round',
  });
}

/** Width of the place of one of two names beside each other, px. */
const halfOf = (width: number): number => Math.min(260, (width - 50) / 2);
const lettersIn = (room: number): number => Math.max(6, Math.floor(room / 5.6));

/** Names that do not fit beside each other stand one under the other. */
const stacks = ({ standard, trial, note }: SpectraPlotInput, width: number): boolean =>
  [standard?.name ?? note ?? '', trial?.name ?? (standard === undefined ? '' : note ?? '')].some((name) => name.length > lettersIn(halfOf(width) - 56));

function legend(input: SpectraPlotInput, theme: FigureTheme, width: number, stacked: boolean): SceneElement[] {
  const half = halfOf(width);
  return [input.standard, input.trial].flatMap((side, i) => {
    const [left, top, room] = stacked ? [40, 15 * i, width - 60] : [40 + i * half, 0, half - 10];
    if (side === undefined) return input.note === undefined ? [] : [text(left, top + 16, shortened(input.note, room), 'start', theme)];
    return [
      element('line', {
        x1: left, y1: top + 12, x2: left + 26, y2: top + 12, stroke: theme.ink, 'stroke-width': 1.5, 'stroke-dasharray': i === 1 ? '5 3' : undefined,
      }),
      side.fill === undefined
        ? undefined
        : element('rect', {
            class: 'sample', x: left + 31, y: top + 6, width: 12, height: 12, fill: side.fill, stroke: theme.ink, 'stroke-width': 0.75,
          }),
      text(left + (side.fill === undefined ? 32 : 49), top + 16, shortened(side.name, room - 46), 'start', theme),
    ].filter((part) => part !== undefined);
  });
}

/** A name that fits `room` px at 11 px type, at some 5.6 px a letter. */
const shortened = (name: string, room: number): string => {
  const letters = lettersIn(room);
  return name.length <= letters ? name : `${name.slice(0, letters - 1)}…`;
};
