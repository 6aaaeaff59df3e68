import type { CabinSeries, PartSeries, SeriesLot } from '../../series/index.ts';
import { partWords, slopeScale } from '../../series/index.ts';
import { partNames } from '../../harmony/names.ts';
import type { Content } from '../markup.ts';
import type { Page } from '../page.ts';
import { lotPanels } from '../figures/lot-panels.ts';
import { printTheme } from '../figures/theme.ts';
import { data, figure, html, named } from '../markup.ts';
import { confidenceText, fixed, signed } from '../number-text.ts';
import { colourChip } from '../pictures.ts';
import { pagedTable } from '../pieces.ts';
import { lightOf, sampleUnder } from '../sample.ts';

export const partName = (page: Page, id: string): string => partNames(page.input.cabin.parts).get(id) ?? id;

/** Colour of a lot under the light that its series is looked at in. */
export function lotHex(page: Page, { part, source, light }: PartSeries, { spectrum, lab }: SeriesLot): string | undefined {
  const lamp = lightOf(page.input.cabin, light);
  const { observer } = page.input.judgement;
  return lamp && sampleUnder({ part, source, specimen: undefined, colourSpots: 1, gloss: [], ...(spectrum === undefined ? { cielab: { lab, light, observer } } : { spectrum }) }, lamp, observer)?.hex;
}

/** The lots of one part: in words, as charts, as a table. */
export function partLotsBlock(page: Page, found: CabinSeries, part: PartSeries): Content {
  const colours = part.lots.map((lot) => lotHex(page, part, lot));
  const gloss = new Map(part.gloss?.lots.map(({ id, mean }) => [id, mean]) ?? []);
  const [title, ...rest] = partWords(part);
  return html('div', { class: 'lots' },
    html('h4', {}, named(partName(page, part.part)), html('span', { class: 'against' }, ` ${title.replace(/\.$/, '')}`)),
    html('p', { class: 'further' }, rest.join(' ')),
    html('figure', {}, figure(lotPanels(part, colours, 680, printTheme, { chart: 120, axis: 68 })),
      html('figcaption', {}, `Lots in order of production${part.unit === 'day' ? ' over the days they were made' : ''}. Ring: outside the limit of T². Line and band: the trend with its range at ${confidenceText(found.confidence)}, dotted where none is claimed.`)),
    pagedTable<SeriesLot>([`Lots of `, named(partName(page, part.part)), ` under ${part.light}, ${page.model.observer}° observer`], [
      { title: 'Lot', cell: (lot) => [colourChip(lotHex(page, part, lot)), named(lot.id)] },
      { title: 'Made', steady: true, cell: ({ producedOn }) => producedOn ?? '–' },
      { title: 'Spots', number: true, cell: ({ spots }) => data(spots, String(spots)) },
      ...([0, 1, 2] as const).map((axis) => ({ title: ['L*', 'a*', 'b*'][axis], number: true, cell: ({ lab }: SeriesLot): Content => data(lab[axis], fixed(lab[axis], 2)) })),
      ...(part.gloss === undefined ? [] : [{ title: `${part.gloss.angle}°`, unit: 'GU', number: true, cell: ({ id }: SeriesLot): Content => data(gloss.get(id), fixed(gloss.get(id), 2)) }]),
      { title: 'T²', number: true, cell: ({ charted }) => data(charted?.statistic, fixed(charted?.statistic, 1)) },
      { title: 'Limit', number: true, cell: ({ charted }) => data(charted?.limit, fixed(charted?.limit, 1)) },
      { title: 'Held to', cell: ({ charted }) => (charted === undefined ? '–' : held[charted.against]) },
      { title: 'It is', cell: ({ charted, words }) => (charted === undefined ? '–' : charted.outside ? [html('strong', {}, 'outside'), words.length > 0 && `, ${words.join(', ')}`] : 'inside') },
    ], part.lots, 'compact'),
    slopeText(part));
}

const held = { 'own lot': 'these lots', 'new lot': 'the first lots', known: 'the master' } as const;

/** Slopes with half of their interval, where a line could be drawn. */
function slopeText({ trend, gloss, unit }: PartSeries): Content {
  const { factor, per } = slopeScale(unit);
  const { slope, reach } = trend;
  const told = [
    ...(slope === undefined || reach === undefined ? [] : (['L*', 'a*', 'b*'] as const).map((axis, index) => `${axis} ${signed(slope[index] * factor, 2)} ± ${fixed(reach[index] * factor, 2)}`)),
    ...(gloss?.slope === undefined || gloss.reach === undefined ? [] : [`gloss at ${gloss.angle}° ${signed(gloss.slope[0] * factor, 2)} ± ${fixed(gloss.reach[0] * factor, 2)} GU`]),
  ];
  return told.length > 0 && html('p', { class: 'judged' }, html('span', { class: 'quiet' }, `Slope ${per}: `), told.join(', '), '.');
}

/** Parts of which there is little to tell, one row each. */
export const otherLots = (page: Page, { parts }: CabinSeries, others: readonly PartSeries[]): Content => others.length > 0 && pagedTable<PartSeries>(others.length === parts.length ? 'Lots of each part' : 'Lots of the other parts', [
  { title: 'Part', cell: ({ part }) => named(partName(page, part)) },
  { title: 'Lots', number: true, cell: ({ lots }) => String(lots.length) },
  { title: 'First', steady: true, cell: ({ lots }) => lotText(lots[0]) },
  { title: 'Latest', steady: true, cell: ({ lots }) => lotText(lots[lots.length - 1]) },
  { title: 'In words', wide: true, cell: (part) => partWords(part).slice(1).join(' ') },
], others, 'compact');

const lotText = ({ id, producedOn }: SeriesLot): Content => [named(id), producedOn !== undefined && html('span', { class: 'quiet' }, html('br', {}), producedOn)];
