import type { Content } from '../markup.ts';
import type { ReportJoint, ReportPart } from '../model/report-model.ts';
import type { Column } from '../pieces.ts';
import type { Page } from '../page.ts';
import { data, html, named } from '../markup.ts';
import { fixed } from '../number-text.ts';
import { colourChip } from '../pictures.ts';
import { table } from '../pieces.ts';

interface Side {
  readonly role: 'standard' | 'trial';
  readonly part: ReportPart;
}

const areal = [['saUm', 'Sa', 'µm', 1], ['salMm', 'Sal', 'mm', 2], ['str', 'Str', '', 2]] as const;

/** What the two sides of a joint look like by themselves: colour under D65, gloss at each angle, texture. Columns that neither has are left out. */
export function sidesTable(page: Page, { result }: ReportJoint): Content {
  const sides = ([['standard', result.standard], ['trial', result.trial]] as const).flatMap(([role, id]): Side[] => {
    const part = page.part(id);
    return part === undefined ? [] : [{ role, part }];
  });
  const angles = ([20, 60, 85] as const).filter((angle) => sides.some(({ part }) => part.appearance?.gloss.some((gloss) => gloss.angle === angle)));
  const measured = areal.filter(([name]) => sides.some(({ part }) => part.appearance?.texture?.[name] !== undefined));
  return table<Side>(`The two sides by themselves; CIELAB under D65, ${page.model.observer}° observer`, [
    { title: 'Side', cell: ({ role, part }) => [colourChip(part.sample?.hex), named(part.name), html('span', { class: 'quiet' }, ` ${role}`)] },
    { title: 'Material', cell: ({ part }) => [named(part.material), part.grain !== undefined && html('span', { class: 'quiet' }, ' ', named(part.grain))] },
    { title: 'Supplier', cell: ({ part }) => named(part.supplier) },
    ...(['L*', 'a*', 'b*'] as const).map((title, axis): Column<Side> => ({ title, number: true, cell: ({ part }) => data(part.sample?.lab[axis], fixed(part.sample?.lab[axis], 2)) })),
    ...angles.map((angle): Column<Side> => ({ title: `${angle}°`, unit: 'GU', number: true, cell: ({ part }) => glossAt(part, angle) })),
    ...measured.map(([name, title, unit, decimals]): Column<Side> => ({ title, ...(unit === '' ? {} : { unit }), number: true, cell: ({ part }) => data(part.appearance?.texture?.[name], fixed(part.appearance?.texture?.[name], decimals)) })),
  ], sides, 'compact');
}

function glossAt({ appearance }: ReportPart, angle: number): Content {
  const mean = appearance?.gloss.find((gloss) => gloss.angle === angle)?.mean;
  return data(mean, fixed(mean, 2));
}
