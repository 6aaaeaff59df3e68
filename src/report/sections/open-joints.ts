import type { MeasurementRequest } from '../../harmony/judgement.ts';
import type { Content } from '../markup.ts';
import type { Page } from '../page.ts';
import { data, html, named } from '../markup.ts';
import { counted, probability } from '../number-text.ts';
import { jointAnchor, pagedTable, section } from '../pieces.ts';
import { jointBlock } from './joint-block.ts';
import { jointList } from './joint-list.ts';
import { proposalNotes } from './proposals.ts';

/** Joints the data cannot decide, why, and the readings that would. */
export function openJoints(page: Page): Content {
  const { model } = page;
  const entries = model.joints.filter(({ result }) => result.verdict === 'open');
  if (entries.length === 0 && model.requests.length === 0) return undefined;
  return section('open', 'Open joints and what would decide them',
    html('p', { class: 'lead' }, 'A joint is open where the readings cannot say with the confidence asked for whether it holds, or may not be compared. It is neither good nor bad.'),
    requestSheets(page),
    jointList(page, entries, (entry) => jointBlock(page, entry, proposalNotes(page, entry.id), entry.requests.length > 0 && html('ul', { class: 'notes' }, entry.requests.map((request) => html('li', {}, requestText(page, request)))))));
}

const requestText = (page: Page, request: MeasurementRequest): Content => [
  html('strong', {}, 'Would decide it: '), spotsText(request), ' on ', named(page.part(request.part)?.name ?? request.part), ', specimen ', named(request.specimen),
  `, ${request.geometry}; chance `, data(request.chance, probability(request.chance)), '. ', sentence(request.reason),
];

/** New spots beside those there are, or the same ones read anew under the conditions asked for. */
const spotsText = ({ spots, have }: MeasurementRequest): string =>
  (spots > have ? `${counted(spots, 'spot')} in all (${have} there now)` : `${counted(spots, 'spot')} read anew`);

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? '' : '.'}`;

function requestSheets(page: Page): Content {
  const { requests } = page.model;
  const suppliers = new Map(page.input.cabin.suppliers.map((supplier) => [supplier.id, supplier.name]));
  const groups = new Map<string, MeasurementRequest[]>();
  for (const request of requests) {
    const rows = groups.get(request.supplier) ?? [];
    groups.set(request.supplier, rows);
    rows.push(request);
  }
  return [...groups].map(([supplier, rows]): Content => pagedTable<MeasurementRequest>(['Readings asked of ', named(suppliers.get(supplier) ?? supplier)], [
    { title: 'Part', cell: (row) => named(page.part(row.part)?.name ?? row.part) },
    { title: 'Specimen', cell: (row) => named(row.specimen) },
    { title: 'Reading', cell: (row) => `${row.quantity}, ${row.geometry}` },
    { title: 'Spots', unit: '(there)', number: true, cell: (row) => [data(row.spots, String(row.spots)), html('span', { class: 'quiet' }, ` (${row.have})`)] },
    { title: 'Instrument', cell: (row) => named(page.model.instruments.find((instrument) => instrument.id === row.instrument)?.name ?? row.instrument) },
    { title: 'Decides', cell: (row) => (row.joint === undefined ? row.check === 'cap' ? 'the cap of its zone' : 'its own master' : html('a', { href: `#${jointAnchor(page.place(row.joint))}` }, named(row.joint))) },
    { title: 'Chance', number: true, cell: (row) => data(row.chance, probability(row.chance)) },
    { title: 'Because', wide: true, cell: (row) => sentence(row.reason) },
  ], rows, 'requests'));
}
