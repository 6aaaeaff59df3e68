import type { Content, Markup } from '../markup.ts';
import { data, html, named } from '../markup.ts';
import { counted, probability } from '../number-text.ts';
import { table, terms } from '../pieces.ts';
import { selfContainedPage } from '../self-contained-page.ts';
import type { DecidedJoint, RequestLine, RequestSheet } from './request-sheet.ts';

/** The sheets as one self-contained page to print or send, each supplier's on pages of its own. No sheet names another supplier. */
export function requestHtml(sheets: readonly RequestSheet[]): string {
  const [first] = sheets;
  const title = first === undefined ? 'Measurement request' : `Measurement request, ${first.cabin.name}, ${first.asOf}`;
  const only = sheets.length === 1 ? `, ${first.supplier.name}` : '';
  return selfContainedPage(title, `${title}${only}`, html('main', { class: 'requests' },
    sheets.length === 0 ? html('p', {}, 'No reading is asked for: no joint is open that readings could decide.') : sheets.map(sheetMarkup)));
}

function sheetMarkup(sheet: RequestSheet, place: number): Markup {
  const { cabin, supplier, lines } = sheet;
  const about = [cabin.name, cabin.colourway, cabin.phase && `phase ${cabin.phase}`, cabin.revision && `revision ${cabin.revision}`].filter((word) => word !== undefined && word !== '');
  const joints = new Set(lines.flatMap(({ decides }) => decides.flatMap(({ joint }) => joint ?? [])));
  const own = lines.flatMap(({ decides }) => decides.filter(({ joint }) => joint === undefined)).length;
  return html('article', { class: 'sheet', 'aria-labelledby': `sheet-${place + 1}` },
    html('p', { class: 'kind' }, 'Measurement request'),
    html('h1', { id: `sheet-${place + 1}` }, named(supplier.name)),
    html('p', { class: 'subtitle' }, about.map((word, index) => [index > 0 && ' · ', named(String(word))]), html('br', {}),
      html('span', { class: 'quiet' }, `Stage “${sheet.stage}”, as of ${sheet.asOf}. ${counted(lines.length, 'line')}, ${counted(newSpots(lines), 'new spot')}; they bear on ${counted(joints.size, 'open joint')}${own === 0 ? '' : ` and ${counted(own, 'open check')} of parts by themselves`}.`)),
    table<RequestLine>('What to measure, the most telling first', [
      { title: 'Request', cell: ({ id }) => html('code', {}, id) },
      { title: 'Part', cell: ({ partName }) => named(partName) },
      { title: 'Specimen', cell: ({ specimen, lot }) => [specimen === '' ? 'any part of the series tool' : named(specimen), lot !== undefined && html('span', { class: 'quiet' }, ', lot ', named(lot))] },
      { title: 'Reading', cell: reading },
      { title: 'New spots', unit: 'there', number: true, cell: ({ newSpots: fresh, have }) => [data(fresh.length, String(fresh.length)), html('span', { class: 'quiet' }, ` (${have})`)] },
      { title: 'Instrument', cell: ({ instrument }) => named(instrument) },
      { title: 'Decides', wide: true, cell: ({ decides }) => decides.map((joint, index) => [index > 0 && html('br', {}), decided(joint)]) },
    ], lines, 'requests'),
    terms([
      ['Spots', html('ul', { class: 'caution' }, lines.map(({ id, newSpots: fresh, rotations }) => html('li', {}, html('code', {}, id), ': name the spots ', named(fresh.join(', ')),
        rotations > 1 && `, each at ${rotations} rotations (${Array.from({ length: rotations }, (_, index) => `${(360 / rotations) * index}°`).join(', ')})`, '.')))],
      ['Where', 'Spread over the visible face, one spot within 30 mm of each joint named. Several flashes on one spot count as one spot. (common practice, no source)'],
      ['Spectra', 'Reflectance factors from 400 nm to 700 nm or wider, in steps of 10 nm or 20 nm, one row a spot and rotation; not averaged over spots.'],
      ['State', 'Instrument, serial number, day of its calibration, geometry, aperture, ultraviolet and day of measurement, for every row.'],
      ['Send back', 'The table that comes with this sheet, filled in; or any table of spectra or gloss with a column “request” that holds the ids above. The ids bring every row to its place. Take out rows that were not measured.'],
    ]));
}

const newSpots = (lines: readonly RequestLine[]): number => lines.reduce((sum, line) => sum + line.newSpots.length, 0);

function reading({ quantity, geometry, angle, rotations }: RequestLine): Content {
  if (quantity === 'gloss') return `Gloss at ${angle === undefined ? geometry : `${angle}°`}`;
  if (quantity === 'texture') return 'Areal texture';
  return `Spectrum, ${geometry}${rotations > 1 ? `, ${rotations} rotations` : ''}`;
}

const decided = ({ neighbour, check, chance, reason }: DecidedJoint): Content =>
  [`${check} against `, named(neighbour), chance === undefined ? '' : [', chance ', data(chance, probability(chance))], html('span', { class: 'quiet' }, `: ${reason}`)];
