import type { BookRow, MaterialClass, Reachability } from '../../rules/index.ts';
import type { Content, Markup } from '../markup.ts';
import type { Page } from '../page.ts';
import { describeBook, glossRuleText, reachability } from '../../rules/index.ts';
import { data, html, named } from '../markup.ts';
import { probability } from '../number-text.ts';
import type { Column } from '../pieces.ts';
import { section, table } from '../pieces.ts';
import { basis } from './method.ts';

const given = (value: number | undefined): Content => (value === undefined ? '–' : data(value, String(value)));

const titles: Readonly<Partial<Record<BookRow['group'], string>>> = {
  combination: 'Unlike materials', intents: 'Intents', texture: 'Texture', kinds: 'Kinds of joint', caps: 'Caps of zones',
  rules: 'Rules for pairs', readings: 'Readings wanted', assumed: 'Assumed spreads',
};

/** The limits that were applied, each with its basis. */
export function ruleBookSection(page: Page): Markup {
  const { ruleBook: book } = page.model;
  const rows = describeBook(book);
  const used = new Set(page.model.parts.map((part) => part.material));
  return section('rule-book', 'Rule book',
    html('p', { class: 'lead' }, html('strong', {}, named(book.name)), '. ', book.note),
    table<MaterialClass>('Materials: limits of a match between two parts of the same material', [
      { title: 'Material', cell: (row) => [named(row.material), !used.has(row.material) && html('span', { class: 'quiet' }, ' not here')] },
      { title: 'Family', cell: (row) => named(row.family) },
      { title: 'Colour', number: true, cell: (row) => [given(row.colourLimit), row.advisory === true && html('span', { class: 'quiet' }, ' advisory')] },
      { title: 'kL', number: true, cell: (row) => given(row.kL) },
      { title: '|ΔL*| in the dark', number: true, cell: (row) => given(row.lightnessCap) },
      { title: 'Gloss', wide: true, cell: (row) => named(glossRuleText(row.gloss)) },
      { title: 'To its master', number: true, cell: (row) => given(row.masterColourLimit) },
      { title: 'Sd of one reading', unit: 'L* a* b*', steady: true, cell: (row) => row.readingSd.map(String).join(' ') },
      { title: 'Spots', number: true, cell: (row) => given(row.wanted.spots) },
    ], book.materials, 'compact'),
    materialBases(rows),
    (Object.keys(titles) as BookRow['group'][]).map((group) => {
      const members = rows.filter((row) => row.group === group);
      return members.length > 0 && table<BookRow>(titles[group] ?? group, [
        { title: 'Of', cell: (row) => named(row.subject) },
        { title: 'Value', cell: (row) => [named(row.name), ' ', html('strong', {}, named(row.value)), row.unit !== '' && ` ${row.unit}`] },
        { title: 'Basis', wide: true, cell: (row) => [basis(row.basis), row.caution !== undefined && html('span', { class: 'quiet' }, ` ${row.caution}`)] },
      ], members, 'compact');
    }),
    chances(reachability(book).rows));
}

/** How often identical parts would be called holding, by what the book assumes: what can be told at all with the readings it wants. */
const chances = (rows: readonly Reachability[]): Content => rows.length > 0 && [
  table<Reachability>('Chance that identical parts are called holding', [
    { title: 'Materials', cell: ({ materials: [first, second] }) => named(first === second ? first : `${first} + ${second}`) },
    { title: 'Spots', number: true, cell: ({ spots: [first, second] }) => (first === second ? String(first) : `${first} and ${second}`) },
    ...(['colour', 'gloss'] as const).flatMap((check) => (['oneInstrument', 'twoInstruments'] as const).map((instruments): Column<Reachability> => ({
      title: `${check === 'colour' ? 'Colour' : 'Gloss'}, ${instruments === 'oneInstrument' ? 'one' : 'two'}`, unit: instruments === 'oneInstrument' ? 'instrument' : 'instruments', number: true,
      cell: (row) => probability(row[check]?.[instruments]),
    }))),
  ], rows, 'compact'),
  html('p', { class: 'judged quiet' }, 'Computed from the assumed spreads and the readings wanted, by the guarded rule; two instruments are such without agreement sets.'),
];

/** Where the values of the materials come from: each basis once, with the values it stands for. */
function materialBases(rows: readonly BookRow[]): Content {
  const bases = new Map<string, Map<string, string[]>>();
  for (const row of rows.filter(({ group }) => group === 'materials')) {
    const values = bases.get(row.basis) ?? new Map<string, string[]>();
    bases.set(row.basis, values);
    values.set(row.name, [...(values.get(row.name) ?? []), row.subject]);
  }
  const total = new Set(rows.filter(({ group }) => group === 'materials').map((row) => row.subject)).size;
  return html('ul', { class: 'caution' }, [...bases].map(([text, values]) => html('li', {}, basis(text), ': ',
    [...values].map(([name, materials]) => (materials.length === total || materials.length > 4 ? name : `${name} of ${materials.join(', ')}`)).join('; '), '.')));
}
