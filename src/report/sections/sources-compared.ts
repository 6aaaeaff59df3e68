import type { ComparedPart, ComparedSource } from '../model/compared-sources.ts';
import type { Content } from '../markup.ts';
import type { Column } from '../pieces.ts';
import type { Page } from '../page.ts';
import { data, html, named } from '../markup.ts';
import { mendCaution } from '../mend-card-text.ts';
import { counted, fixed, limitUseText } from '../number-text.ts';
import { pagedTable, section } from '../pieces.ts';
import { colourChip } from '../pictures.ts';

interface Row {
  readonly part: ComparedPart;
  readonly source: ComparedSource;
  readonly first: boolean;
}

/** Parts that more than one source can serve: each source in the place of the one that was chosen. */
export function sourcesCompared(page: Page): Content {
  const { sources: parts } = page.model;
  if (parts.length === 0) return undefined;
  const better = parts.filter(({ sources }) => {
    const chosen = sources.find((source) => source.chosen);
    return chosen !== undefined && sources.some((source) => source.clashes < chosen.clashes);
  });
  const rows = parts.flatMap((part) => part.sources.map((source, index): Row => ({ part, source, first: index === 0 })));
  return section('sources', 'Sources compared',
    html('p', { class: 'lead' }, `${counted(parts.length, 'part')} may come from more than one source. Each source is judged at the joints of its part, all other parts as they are; a set of sources is chosen by a plan, not by this table. `,
      better.length === 0 ? 'No other source taken by itself would give fewer clashes.' : ['Another source taken by itself would give fewer clashes at ', better.map(({ name }, index) => [index > 0 && (index === better.length - 1 ? ' and ' : ', '), named(name)]), '.']),
    pagedTable<Row>('Sources of each part, the one it stands by marked', [
      { title: 'Part', cell: ({ part, first }) => (first ? named(part.name) : html('span', { class: 'quiet' }, named(part.name))) },
      { title: 'Supplier', word: true, cell: ({ source }) => [html(source.chosen ? 'strong' : 'span', {}, named(source.supplier)), html('span', { class: 'quiet' }, source.chosen ? ' chosen' : ` ${source.status}`)] },
      { title: 'Colour', unit: 'L*, a*, b*, D65', steady: true, cell: ({ source: { sample } }) => (sample === undefined ? '–' : [colourChip(sample.hex), sample.lab.map((value, axis) => [axis > 0 && ', ', data(value, fixed(value, 1))])]) },
      { title: 'Gloss', unit: 'GU', number: true, cell: ({ source }) => (source.appearance.gloss.length === 0 ? '–' : source.appearance.gloss.map((gloss, index) => [index > 0 && ', ', data(gloss.mean, fixed(gloss.mean, 1)), html('span', { class: 'quiet' }, ` ${gloss.angle}°`)])) },
      { title: 'Texture', unit: 'Sa, µm', number: true, cell: ({ source }) => data(source.appearance.texture?.saUm, fixed(source.appearance.texture?.saUm, 1)) },
      ...counts,
      { title: 'Most use', number: true, cell: ({ source }) => data(source.worstUse, limitUseText(source.worstUse)) },
      { title: 'Piece', number: true, cell: ({ source }) => [data(source.piecePrice, fixed(source.piecePrice, 2)), source.piecePrice !== undefined && source.currency !== undefined && html('span', { class: 'quiet' }, ' ', named(source.currency))] },
      { title: 'Weeks', number: true, cell: ({ source }) => data(source.leadWeeks, source.leadWeeks === undefined ? '–' : String(source.leadWeeks)) },
    ], rows, 'compact'),
    html('ul', { class: 'caution' }, html('li', {}, mendCaution)));
}

const counts: readonly Column<Row>[] = (['clashes', 'open', 'holds'] as const).map((verdict) => ({
  title: { clashes: 'Clash', open: 'Open', holds: 'Hold' }[verdict], number: true,
  cell: ({ source }) => [data(source[verdict], String(source[verdict])), verdict === 'clashes' && source.accepted > 0 && html('span', { class: 'quiet' }, ' +', data(source.accepted, String(source.accepted)), ' accepted')],
}));
