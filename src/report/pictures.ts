import type { Content } from './markup.ts';
import type { ReportJoint } from './model/report-model.ts';
import type { Page } from './page.ts';
import type { SceneElement } from './scene.ts';
import type { CheckResult, Verdict } from '../harmony/judgement.ts';
import { max, min } from 'd3';
import { jointPath } from '../cabin/index.ts';
import { cabinMap } from './figures/cabin-map.ts';
import { jointStrip } from './figures/joint-strip.ts';
import { limitScale } from './figures/limit-scale.ts';
import { spectraPlot } from './figures/spectra-plot.ts';
import { mapNumbers } from './figures/map-numbers.ts';
import type { MapPlace } from './figures/map-place.ts';
import { printTheme } from './figures/theme.ts';
import { verdictLine } from './figures/verdict-line.ts';
import { figure } from './markup.ts';
import { drawing, element } from './scene.ts';

/** The marks of the verdicts, once in a page, for the words that use them. */
export function markDefinitions(): SceneElement {
  const mark = (id: string, verdict: 'holds' | 'open' | 'clashes', accepted: boolean): SceneElement =>
    element('symbol', { id, viewBox: '0 0 30 10' }, verdictLine([[1, 5], [29, 5]], { verdict, accepted }, printTheme, { scale: 0.9 }));
  return element('svg', { width: 0, height: 0, class: 'definitions', 'aria-hidden': 'true' },
    mark('mark-holds', 'holds', false), mark('mark-open', 'open', false), mark('mark-clashes', 'clashes', false), mark('mark-accepted', 'clashes', true));
}

/** How a map differs from that of the cabin as it is reported. */
export interface MapState {
  /** Joints with a number each, from 1. */
  readonly numbered?: readonly string[];
  /** Verdict to draw of a joint; a joint without one is left out. */
  readonly verdict?: (joint: string) => { readonly verdict: Verdict; readonly accepted: boolean } | undefined;
  /** Colour of a part that is another one, as `#rrggbb`. */
  readonly fill?: (part: string) => string | undefined;
  readonly withoutZones?: boolean;
}

/** The cabin unfolded, parts in their colours under D65, joints in the language of verdicts. */
export function mapPicture(page: Page, size: { readonly width: number; readonly height: number }, { numbered = [], verdict, fill, withoutZones = false }: MapState = {}): Content {
  const { cabin } = page.input;
  const material = new Map(page.model.parts.map((part) => [part.id, part.material]));
  const parts = cabin.parts.flatMap((part) => (part.outline === undefined ? [] : [{
    id: part.id, name: part.name, outline: part.outline, line: material.get(part.id) === 'thread',
    fill: fill?.(part.id) ?? page.part(part.id)?.sample?.hex,
  }]));
  const joints = page.model.joints.flatMap(({ joint, result, names }) => {
    const found = jointPath(cabin, joint);
    const shown = verdict === undefined ? result : verdict(joint.id);
    return found === undefined || shown === undefined || found.points.length < 2 ? [] : [{
      id: joint.id, kind: joint.kind, lead: found.kind === 'lead', path: found.points, verdict: shown.verdict, accepted: shown.accepted, label: `${names[0]} and ${names[1]}: ${shown.verdict}`,
    }];
  });
  if (parts.length === 0) return undefined;
  const title = `Map of the cabin with ${parts.length} parts and ${joints.length} joints; the tables name every joint and its verdict`;
  const zones = withoutZones ? [] : cabin.zones.map((zone) => ({ id: zone.id, name: zone.name, parts: cabin.parts.filter((part) => part.zone === zone.id).map((part) => part.id) }));
  const overlay = ({ toScreen }: MapPlace): readonly SceneElement[] => mapNumbers(numbered.flatMap((id, index) => {
    const joint = joints.find((one) => one.id === id);
    return joint === undefined ? [] : [{ number: index + 1, path: joint.path.map(toScreen) }];
  }), size, printTheme);
  return figure(cabinMap({ title, parts, joints, zones }, { ...size, overlay }, printTheme));
}

/** Height that lets the cabin fill a width, between a least and a most one. */
export function mapHeight({ input: { cabin } }: Page, width: number, [least, most]: readonly [number, number]): number {
  const points = cabin.parts.flatMap((part) => part.outline ?? []);
  const extentOf = (axis: 0 | 1): number => (max(points, (point) => point[axis]) ?? 0) - (min(points, (point) => point[axis]) ?? 0);
  return points.length < 2 ? least : Math.round(Math.min(most, Math.max(least, (width * extentOf(1)) / Math.max(1, extentOf(0)) + 24)));
}

/** The two sides of a joint meeting under a light. */
export function stripPicture(page: Page, entry: ReportJoint, light: string, size: { readonly width: number; readonly height: number }): Content {
  const { joint, result, names } = entry;
  const fills = [result.standard, result.trial].map((part) => page.sample(part, light)?.hex);
  const label = `${names[0]} above, ${names[1]} below, under ${light}${fills.includes(undefined) ? '; hatched where there is no colour under this light' : ''}`;
  return figure(drawing(size.width, size.height, label, jointStrip({
    fills: [fills[0], fills[1]], kind: joint.kind, gapMm: joint.gapMm, stepMm: joint.stepMm, viewMm: joint.viewMm,
  }, size, printTheme)));
}

/** Both spectra and their difference. */
export function spectraPicture(page: Page, entry: ReportJoint, size: { readonly width: number; readonly height: number }): Content {
  const side = (id: string, name: string) => {
    const spectrum = page.part(id)?.appearance?.spectrum;
    return spectrum && { name, ...spectrum, fill: page.sample(id, 'D65')?.hex };
  };
  const standard = side(entry.result.standard, entry.names[0]);
  const trial = side(entry.result.trial, entry.names[1]);
  if (!standard && !trial) return undefined;
  const missing = !standard ? entry.names[0] : !trial ? entry.names[1] : undefined;
  return figure(spectraPlot({ standard, trial, note: missing === undefined ? undefined : `no spectrum of ${missing}` }, size, printTheme));
}

/** A small square of a colour. */
export const colourChip = (hex: string | undefined): Content => hex !== undefined && figure(element('svg', { class: 'swatch', viewBox: '0 0 14 14', width: 14, height: 14, 'aria-hidden': 'true' },
  element('rect', { width: 14, height: 14, fill: hex })));

/** Limit use of a check or of one light on its scale. */
export function usePicture(check: Pick<CheckResult, 'limitUse' | 'limit' | 'uncertainty'> & { readonly verdict: string; readonly accepted?: boolean; readonly indicative?: boolean }): Content {
  const verdict = check.verdict === 'holds' || check.verdict === 'clashes' ? check.verdict : 'open';
  return check.limitUse === undefined ? undefined : figure(element('svg', { class: 'scale', viewBox: '0 0 110 14', width: 110, height: 14, 'aria-hidden': 'true' }, limitScale({
    limitUse: check.limitUse, verdict, accepted: check.accepted, indicative: check.indicative,
    uncertaintyUse: check.uncertainty !== undefined && check.limit ? check.uncertainty / Math.abs(check.limit) : undefined,
  }, { width: 110, height: 14, padding: 4 }, printTheme)));
}
