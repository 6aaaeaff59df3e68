import type { Instrument } from '../../readings/reading.ts';
import type { Content, Markup } from '../markup.ts';
import type { InputFile, ReportPart } from '../model/report-model.ts';
import type { Page } from '../page.ts';
import { issueText } from '../../issue.ts';
import { data, html, named } from '../markup.ts';
import { fixed } from '../number-text.ts';
import { pagedTable, section, table } from '../pieces.ts';
import { colourChip } from '../pictures.ts';

/** What the report rests on: files by hash, instruments with their dates, parts with the readings that stand for them, notes on the data. */
export function traceability(page: Page): Markup {
  const { model } = page;
  return section('traceability', 'What this rests on',
    table<InputFile>('Input files', [
      { title: 'File', cell: (file) => named(file.name) },
      { title: 'Role', cell: (file) => file.role },
      { title: 'SHA-256', wide: true, cell: (file) => html('code', {}, file.sha256) },
    ], model.files),
    model.instruments.length > 0 && table<Instrument>(`Instruments, as of ${model.asOf}`, [
      { title: 'Instrument', cell: (instrument) => named(instrument.name) },
      { title: 'Kind', cell: (instrument) => instrument.kind },
      { title: 'Serial', cell: (instrument) => named(instrument.serial ?? '–') },
      { title: 'Calibrated', cell: (instrument) => calibration(instrument, model.asOf) },
      { title: 'Agreement set', wide: true, cell: ({ agreement }) => (agreement === undefined
        ? html('em', { class: 'no-source' }, 'none: the book’s assumption is used') : `${agreement.date}, ${agreement.tiles} tiles`) },
    ], model.instruments),
    partsTable(page),
    model.issues.length > 0 && [html('h3', {}, 'Notes on the data'), html('ul', { class: 'caution' }, model.issues.map((issue) => html('li', {}, `${issue.severity}: ${issueText(issue)}`)))]);
}

function calibration({ calibratedOn, calibrationDays }: Instrument, asOf: string): Content {
  if (calibratedOn === undefined) return html('em', { class: 'no-source' }, 'not stated');
  const age = Math.round((Date.parse(asOf) - Date.parse(calibratedOn)) / 86_400_000);
  return [calibratedOn, calibrationDays !== undefined && age > calibrationDays && html('strong', {}, ` out of date by ${age - calibrationDays} days`)];
}

function partsTable(page: Page): Content {
  const zones = new Map(page.model.cabin.zones.map((zone) => [zone.id, zone.name]));
  return pagedTable<ReportPart>(`Parts and the readings that stand for them; CIELAB under D65, ${page.model.observer}° observer`, [
    { title: 'Part', cell: (part) => [colourChip(part.sample?.hex), named(part.name)] },
    { title: 'Zone', word: true, cell: (part) => named(zones.get(part.zone) ?? part.zone) },
    { title: 'Material', word: true, cell: (part) => [named(part.material), part.grain !== undefined && html('span', { class: 'quiet' }, ' ', named(part.grain))] },
    { title: 'Supplier', word: true, cell: (part) => named(part.supplier) },
    { title: 'Specimen', cell: ({ appearance }) => [named(appearance?.specimen ?? '–'), appearance?.borrowedFrom !== undefined && html('span', { class: 'quiet' }, ' from ', named(page.part(appearance.borrowedFrom)?.name ?? appearance.borrowedFrom))] },
    { title: 'Spots', number: true, cell: ({ appearance }) => String(appearance?.colourSpots ?? 0) },
    ...(['L*', 'a*', 'b*'] as const).map((title, axis) => ({ title, number: true, cell: ({ sample }: ReportPart) => data(sample?.lab[axis], fixed(sample?.lab[axis], 2)) })),
    { title: 'Gloss', unit: 'GU', number: true, cell: ({ appearance }) => (appearance?.gloss ?? []).map((gloss, index) => [index > 0 && ', ', data(gloss.mean, fixed(gloss.mean, 1)), html('span', { class: 'quiet' }, ` ${gloss.angle}°`)]) },
    { title: 'Texture', unit: 'Sa µm, Sal mm, Str', number: true, cell: texture },
  ], page.model.parts, 'compact');
}

/** Mean areal parameters, the height first. */
const texture = ({ appearance }: ReportPart): Content => {
  const { saUm, salMm, str } = appearance?.texture ?? {};
  if (saUm === undefined && salMm === undefined && str === undefined) return '–';
  return [data(saUm, fixed(saUm, 1)), ', ', data(salMm, fixed(salMm, 2)), ', ', data(str, fixed(str, 2))];
};
