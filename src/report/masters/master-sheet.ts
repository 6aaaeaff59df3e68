import type { Cabin } from '../../cabin/cabin.ts';
import type { Lch } from '../../quantities.ts';
import type { Light } from '../../colour/index.ts';
import type { CheckResult } from '../../harmony/judgement.ts';
import type { JudgedCabin } from '../../harmony/judge.ts';
import { driftSentence } from '../../harmony/master-drift.ts';
import type { MasterEntry, MasterPart } from '../../harmony/master-overview.ts';
import { labToLch } from '../../colour/index.ts';
import { masterOverview } from '../../harmony/master-overview.ts';
import { spectraPlot } from '../figures/spectra-plot.ts';
import { printTheme } from '../figures/theme.ts';
import type { Content, Markup } from '../markup.ts';
import { data, figure, html, named } from '../markup.ts';
import { counted, fixed } from '../number-text.ts';
import { table, terms } from '../pieces.ts';
import type { Sample } from '../sample.ts';
import { lightOf, sampleUnder } from '../sample.ts';
import { element } from '../scene.ts';
import { selfContainedPage } from '../self-contained-page.ts';

/**
 * A master on one page for a supplier: its colour under the lights that are judged, spectrum, gloss and texture, its dates and drift, and what the
 * supplier's parts are held to. With a `supplier` (id) only that supplier's parts are listed, without one all; neighbours and verdicts are never shown.
 * Undefined where the cabin has no such master.
 */
export function masterSheetHtml(judged: JudgedCabin, master: string, supplier?: string): string | undefined {
  const entry = masterOverview(judged).masters.find((candidate) => candidate.master === master);
  if (entry === undefined) return undefined;
  const { cabin } = judged.context;
  const title = `${entry.name}${entry.issue === undefined ? '' : `, issue ${entry.issue}`}`;
  return selfContainedPage(title, `${title}, ${cabin.name}, as of ${judged.context.asOf}`, sheetMarkup(judged, entry, supplier));
}

interface ColourRow extends Sample {
  readonly lch: Lch;
}

function sheetMarkup(judged: JudgedCabin, entry: MasterEntry, supplier: string | undefined): Markup {
  const { cabin, asOf, book } = judged.context;
  const rows = coloursOf(cabin, entry, book.lights.filter(({ standing }) => standing === 'required').map(({ light }) => light));
  const parts = entry.parts.filter((part) => supplier === undefined || part.supplier === supplier);
  const about = [cabin.name, cabin.colourway, cabin.phase && `phase ${cabin.phase}`].filter((word) => word !== undefined && word !== '');
  return html('main', { class: 'one-page' },
    html('p', { class: 'kind' }, 'Master'),
    html('h1', {}, named(entry.name)),
    html('p', { class: 'subtitle' }, about.map((word, index) => [index > 0 && ' · ', named(String(word))]), html('br', {}),
      html('span', { class: 'quiet' }, named(entry.master), `${entry.issue === undefined ? '' : `, issue ${entry.issue}`}, as of ${asOf}`)),
    picture(entry, rows),
    terms([
      ['State', stateText(entry)],
      ['Measured', `${counted(entry.spots, 'spot')}${entry.geometry === undefined ? '' : `, ${entry.geometry}`}${entry.lastMeasured === undefined ? '' : `, last on ${entry.lastMeasured}`}`],
      entry.gloss.length === 0 && entry.texture?.saUm === undefined ? undefined : ['Surface', surfaceText(entry)],
      entry.drifts.length === 0 ? undefined : ['Drift', entry.drifts.map((drift) => html('p', {}, driftSentence(drift)))],
    ]),
    rows.length > 0 && table<ColourRow>(`Colour of the master, ${book.observer}° observer`, [
      { title: 'Light', cell: ({ light }) => named(light) },
      ...(['L*', 'a*', 'b*'] as const).map((title, axis) => ({ title, number: true, cell: ({ lab }: ColourRow) => data(lab[axis], fixed(lab[axis], 2)) })),
      ...(['C*ab', 'hab'] as const).map((title, axis) => ({ title, number: true, cell: ({ lch }: ColourRow) => data(lch[axis + 1], fixed(lch[axis + 1], axis === 0 ? 2 : 1)) })),
    ], rows, 'compact'),
    parts.length > 0 && table<readonly MasterPart[]>('Held to it; a part within these limits may still clash with its neighbours', [
      { title: 'Parts', wide: true, cell: (alike) => alike.map(({ name }, index) => [index > 0 && '; ', named(name)]) },
      { title: 'Colour limit', unit: 'D65', number: true, cell: ([{ colour }]) => data(colourLimit(colour), fixed(colourLimit(colour), 2)) },
      { title: 'Formula', cell: ([{ colour }]) => named(colour?.formula ?? '–') },
      { title: 'Gloss limit', unit: 'GU', number: true, cell: ([{ gloss }]) => data(gloss?.limit, fixed(gloss?.limit, 2)) },
      { title: 'Basis', wide: true, cell: ([{ colour }]) => colour?.basis ?? '–' },
    ], heldAlike(parts)),
    spectrumTable(entry),
    html('ul', { class: 'caution' },
      html('li', {}, 'Screens and paper are no proof of colour: the physical master decides, in the light booth under agreed conditions (ISO 3668).'),
      html('li', {}, 'Compare readings of one geometry only. Limits left out are agreed between the parties.')));
}

/** Parts with the same limits are one row. */
function heldAlike(parts: readonly MasterPart[]): (readonly MasterPart[])[] {
  const rows = new Map<string, MasterPart[]>();
  for (const part of parts) {
    const key = JSON.stringify([colourLimit(part.colour), part.colour?.formula, part.gloss?.limit, part.colour?.basis]);
    rows.set(key, [...(rows.get(key) ?? []), part]);
  }
  return [...rows.values()];
}

function surfaceText({ gloss, texture }: MasterEntry): Content {
  const { saUm, salMm, str } = texture ?? {};
  return [
    gloss.map(({ angle, mean }, index) => [index > 0 && ', ', data(mean, fixed(mean, 1)), ` GU at ${angle}°`]),
    saUm !== undefined && [gloss.length > 0 && '; ', 'Sa ', data(saUm, fixed(saUm, 1)), ' µm'],
    salMm !== undefined && [', Sal ', data(salMm, fixed(salMm, 2)), ' mm'],
    str !== undefined && [', Str ', data(str, fixed(str, 2))],
  ];
}

const colourLimit = (colour: CheckResult | undefined): number | undefined => colour?.lights.find(({ light }) => light === 'D65')?.limit ?? colour?.limit;

function coloursOf(cabin: Cabin, entry: MasterEntry, lights: readonly string[]): ColourRow[] {
  const observer = entry.lab?.observer ?? 10;
  const appearance = {
    part: '', source: '', specimen: entry.master, colourSpots: entry.spots, gloss: [],
    ...(entry.spectrum === undefined ? {} : { spectrum: entry.spectrum }), ...(entry.lab === undefined ? {} : { cielab: entry.lab }),
  };
  return lights.map((name) => lightOf(cabin, name)).filter((light): light is Light => light !== undefined).flatMap((light) => {
    const sample = sampleUnder(appearance, light, observer);
    return sample === undefined ? [] : [{ ...sample, lch: labToLch(sample.lab) }];
  });
}

function picture(entry: MasterEntry, rows: readonly ColourRow[]): Content {
  const fill = rows.find(({ light }) => light === 'D65')?.hex;
  if (entry.spectrum === undefined && fill === undefined) return undefined;
  const patch = fill && html('figure', { class: 'mat strips' }, figure(element('svg', { class: 'sample', viewBox: '0 0 300 125', width: 300, height: 125, role: 'img', 'aria-label': 'The master under D65, as far as sRGB can show it' },
    element('rect', { width: 300, height: 125, fill }))));
  const plot = entry.spectrum && html('figure', { class: 'spectra' }, figure(spectraPlot({ standard: { name: entry.name, ...entry.spectrum, fill }, trial: undefined, alone: true }, { width: 380, height: 180 }, printTheme)));
  return html('div', { class: 'evidence' }, patch, plot);
}

function stateText({ state, producedOn, expires, remeasure, parent, children }: MasterEntry): Content {
  const days = (left: number): string => (left >= 0 ? `in ${counted(left, 'day')}` : `${counted(-left, 'day')} ago`);
  const words = [
    state, producedOn && `made on ${producedOn}`, expires && `expires on ${expires.on} (${days(expires.days)})`, remeasure && `to be measured again on ${remeasure.on} (${days(remeasure.days)})`,
    parent && `made after master ${parent}`, children.length > 0 && `later masters made after it: ${children.join(', ')}`,
  ].filter((word) => typeof word === 'string' && word !== '');
  return words.join('; ');
}

/** The numbers behind the curve, ten to a row, so that they can be typed where no file can be sent. */
function spectrumTable({ spectrum }: MasterEntry): Content {
  if (spectrum === undefined) return undefined;
  const { startNm, stepNm, values } = spectrum;
  const rows = Array.from({ length: Math.ceil(values.length / 10) }, (_, row) => row * 10);
  return table<number>(`Reflectance factor in steps of ${stepNm} nm`, [
    { title: 'From', unit: 'nm', cell: (row) => String(startNm + row * stepNm) },
    ...Array.from({ length: 10 }, (_, column) => ({
      title: `+${column * stepNm}`, number: true, cell: (row: number): Content => (row + column < values.length ? data(values[row + column], values[row + column].toFixed(4)) : ''),
    })),
  ], rows, 'compact');
}
