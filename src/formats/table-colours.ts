import { lchToLab } from '../colour/cielab.ts';
import type { Lab } from '../quantities.ts';
import type { ObserverDegrees } from '../readings/reading.ts';
import type { View } from './column.ts';
import type { FieldName } from './column-names.ts';
import { readLight, readObserver } from './condition-words.ts';
import type { DelimitedRow } from './delimited-text.ts';
import { defined } from './reading-collector.ts';
import type { FoundCielab, FoundDifference } from './reading-set.ts';
import type { RowReader } from './row-identity.ts';
import { readNumber } from './table-cells.ts';
import type { TableFaults } from './table-faults.ts';
import type { TableSource } from './table-source.ts';

const triples = {
  lab: ['L', 'a', 'b'], lch: ['L', 'C', 'h'], difference: ['dL', 'da', 'db'], standard: ['L1', 'a1', 'b1'], trial: ['L2', 'a2', 'b2'],
} as const satisfies Readonly<Record<string, readonly [FieldName, FieldName, FieldName]>>;
type TripleName = keyof typeof triples;
type Triple = readonly [number, number, number];

/** Columns of CIELAB values that belong together: under one light. */
interface ViewGroup {
  readonly view: View | undefined;
  readonly triples: ReadonlyMap<TripleName, Triple>;
}

export interface ColourLayout {
  readonly groups: readonly ViewGroup[];
  /** Columns that are read; the others are labels. */
  readonly used: ReadonlySet<number>;
}

/** Finds the columns of CIELAB coordinates and differences. Two of three columns are a fault, one alone is a label. */
export function colourLayout({ columns, table }: TableSource, faults: TableFaults): ColourLayout {
  const views = new Map<string, { view: View | undefined; at: Map<FieldName, number> }>();
  columns.forEach((column, index) => {
    if (column.kind !== 'field' || !colourFields.has(column.field)) return;
    const key = JSON.stringify(column.view ?? null);
    const group = views.get(key) ?? { view: column.view, at: new Map<FieldName, number>() };
    views.set(key, group);
    if (!group.at.has(column.field)) group.at.set(column.field, index);
    else if (column.view !== undefined) faults.add('duplicate-column', table.header.offsets[index] ?? 0, { expected: 'one column of a kind under each light', found: JSON.stringify(table.header.cells[index]?.slice(0, 60)) });
  });
  const used = new Set<number>();
  const groups = [...views.values()].flatMap(({ view, at }): ViewGroup[] => {
    const found = new Map<TripleName, Triple>();
    for (const name of ['lab', 'lch', 'difference', 'standard', 'trial'] as const) {
      if (name === 'lch' && found.has('lab')) continue;
      const indices = triples[name].map((field) => at.get(field));
      const [p, q, r] = indices;
      if (p !== undefined && q !== undefined && r !== undefined) found.set(name, [p, q, r]);
      else if (indices.filter((index) => index !== undefined).length === 2 && !isOtherTriple(name, at)) {
        const missing = triples[name].find((field) => !at.has(field));
        const beside = indices.find((index) => index !== undefined) ?? 0;
        faults.add('missing-column', table.header.offsets[beside] ?? 0, { expected: `a column for ${missing} beside ${triples[name].filter((field) => at.has(field)).join(' and ')}`, found: 'none' });
      }
    }
    for (const triple of found.values()) for (const index of triple) used.add(index);
    return found.size === 0 ? [] : [{ view, triples: found }];
  });
  return { groups, used };
}

const colourFields: ReadonlySet<FieldName> = new Set(Object.values(triples).flat());

/** L* with hue or chroma only is no fault where a* and b* are there, and the other way round. */
const isOtherTriple = (name: TripleName, at: ReadonlyMap<FieldName, number>): boolean =>
  (name === 'lab' || name === 'lch') && triples[name === 'lab' ? 'lch' : 'lab'].every((field) => at.has(field));

export interface RowColours {
  readonly colours: readonly (FoundCielab | FoundDifference)[];
  /** The standard of a pair that is given with absolute values. */
  readonly standards: readonly FoundCielab[];
}

const ranges = {
  lab: [{ min: 0, max: 120 }, { min: -200, max: 200 }, { min: -200, max: 200 }],
  lch: [{ min: 0, max: 120 }, { min: 0, max: 300 }, { min: -360, max: 720 }],
  difference: [{ min: -200, max: 200 }, { min: -200, max: 200 }, { min: -200, max: 200 }],
} as const;

/** The colours of a row. Where absolute values stand beside differences the absolute ones are taken and a note says so. */
export function rowColours({ table }: TableSource, row: DelimitedRow, layout: ColourLayout, read: RowReader, faults: TableFaults): RowColours {
  const colours: (FoundCielab | FoundDifference)[] = [];
  const standards: FoundCielab[] = [];
  for (const { view, triples: columns } of layout.groups) {
    const values = (name: TripleName): Lab | undefined => {
      const triple = columns.get(name);
      if (triple === undefined || triple.every((index) => (row.cells[index] ?? '') === '')) return undefined;
      const range = ranges[name === 'lch' || name === 'difference' ? name : 'lab'];
      const numbers = triple.map((index, at) => readNumber(table, row, index, range[at], faults) ?? 0);
      return [numbers[0], numbers[1], numbers[2]];
    };
    const lch = values('lch');
    const lab = values('lab') ?? (lch === undefined ? undefined : lchToLab(lch)) ?? values('trial');
    const standard = values('standard');
    const difference = values('difference');
    if (lab === undefined && difference === undefined && standard === undefined) continue;
    const seen = viewOf(view, row, read);
    if (standard !== undefined) standards.push(defined({ quantity: 'cielab', lab: standard, ...seen }));
    if (lab !== undefined) colours.push(defined({ quantity: 'cielab', lab, ...seen }));
    else if (difference !== undefined) colours.push(defined({ quantity: 'difference', difference, ...seen, master: read.text(row, 'master') }));
  }
  return { colours, standards };
}

function viewOf(view: View | undefined, row: DelimitedRow, read: RowReader): { light?: string; observer?: ObserverDegrees } {
  const stated = view ?? read.word(row, 'light', (text) => {
    const found = readLight(text);
    return found.light === undefined ? undefined : { light: found.light, observer: found.observer };
  }, 'the name of a light of CIE 15');
  const observer = stated?.observer ?? read.word(row, 'observer', readObserver, '2 or 10 degrees');
  return defined({ light: stated?.light, observer });
}
