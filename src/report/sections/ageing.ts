import type { AgedPart, Ageing } from '../../harmony/compare/index.ts';
import type { Exposure } from '../../cabin/cabin.ts';
import type { Content, Markup } from '../markup.ts';
import type { Page } from '../page.ts';
import { displayColour, labToXyz, lightByName, whitePoint } from '../../colour/index.ts';
import { data, figure, html, named } from '../markup.ts';
import { counted, fixed, signed } from '../number-text.ts';
import { jointAnchor, jointNames, pagedTable, section } from '../pieces.ts';
import { element } from '../scene.ts';
import { changeTable } from './change-table.ts';

/** Parts before and after exposure with their grey-scale grades, and what that does to the joints. */
export function ageing(page: Page): Content {
  const { ageing: stages } = page.model;
  return stages.length > 0 && section('ageing', 'Ageing',
    html('p', { class: 'lead' }, 'Each exposed specimen against an unexposed one of the same source, measured alike: CIELAB under D65 for the 10° observer, grade of change after ISO 105-A05 on the grey scale of ISO 105-A02, 5 for none. The joints are judged apart from that, in the geometry of their rule; the two are never chained.'),
    stages.map((stage) => aged(page, stage, stages.length > 1)));
}

function aged(page: Page, stage: Ageing, several: boolean): Content {
  const weak = stage.parts.filter(({ fast }) => !fast).length;
  const changed = stage.comparison.joints.filter(({ kind }) => kind !== 'same');
  return [
    several && html('h3', {}, named(stage.to)),
    html('p', { class: 'sentence' },
      `From “${stage.from}” to “${stage.to}”: ${counted(stage.parts.length, 'part is', 'parts are')} graded, `,
      weak === 0 ? `all at grade ${stage.wanted.grade} or better.` : `${weak} below grade ${stage.wanted.grade} (${stage.wanted.basis}).`,
      ' ', stage.holdThenClash.length === 0 ? 'No joint that holds before clashes after.' : [
        html('strong', {}, `${counted(stage.holdThenClash.length, 'joint holds', 'joints hold')} before and ${stage.holdThenClash.length === 1 ? 'clashes' : 'clash'} after: `),
        stage.holdThenClash.map((id, index) => [index > 0 && '; ', html('a', { href: `#${jointAnchor(page.place(id))}` }, jointNames(page.joint(id)))]), '.',
      ]),
    stage.exposures.length > 0 && html('p', { class: 'judged' }, html('span', { class: 'quiet' }, 'Exposure: '), stage.exposures.map((exposure, index) => [index > 0 && '; ', exposureText(exposure)]), '.'),
    stage.parts.length > 0 && gradeTable(stage),
    changed.length > 0 && changeTable(page, `Joints of which both sides were exposed, “${stage.from}” before and “${stage.to}” now`, changed),
    html('ul', { class: 'caution' },
      stage.notGraded.map(({ name, why }) => html('li', {}, named(name), ` is not graded: ${why}.`)),
      stage.notExposed.length > 0 && html('li', {}, `${counted(stage.notExposed.length, 'part has', 'parts have')} no specimen at this stage; ${counted(stage.notJudged.length, 'joint')} with such a part cannot be judged at it.`)),
  ];
}

const exposureText = ({ method, doseKjPerM2, hours }: Exposure): Content => [
  named(method ?? 'method not stated'), doseKjPerM2 !== undefined && [', ', data(doseKjPerM2, String(doseKjPerM2)), ' kJ/m²'], hours !== undefined && [', ', data(hours, String(hours)), ' h'],
];

const gradeTable = (stage: Ageing): Markup | Content => pagedTable<AgedPart>('Change of each part, the worst grade first; exposed minus unexposed', [
  { title: 'Part', cell: (part) => [swatch(part), named(part.name)] },
  { title: 'Specimens', cell: (part) => [named(part.unexposed), html('span', { class: 'quiet' }, ' to '), named(part.exposed)] },
  { title: 'Geometry', cell: ({ geometry }) => geometry },
  ...(['dL', 'da', 'db'] as const).map((axis) => ({
    title: { dL: 'ΔL*', da: 'Δa*', db: 'Δb*' }[axis], number: true, cell: ({ difference }: AgedPart): Content => data(difference[axis], signed(difference[axis], 2)),
  })),
  { title: 'ΔE*ab', number: true, cell: ({ cie76 }) => data(cie76, fixed(cie76, 2)) },
  { title: 'Grade', number: true, cell: ({ greyScale, fast }) => [html(fast ? 'span' : 'strong', {}, greyScale.grade), html('span', { class: 'quiet' }, ' ', data(greyScale.value, fixed(greyScale.value, 2)))] },
  { title: 'Gloss', unit: 'GU', number: true, cell: ({ gloss }) => (gloss.length === 0 ? '–' : gloss.map(({ angle, change }, index) => [index > 0 && ', ', data(change, signed(change, 2)), html('span', { class: 'quiet' }, ` ${angle}°`)])) },
  { title: 'Texture', unit: 'Sa, µm', number: true, cell: ({ texture }) => data(texture?.change, signed(texture?.change, 2)) },
  { title: 'It is now', cell: ({ words }) => (words.length === 0 ? 'hardly changed' : words.join(', ')) },
], stage.parts, 'compact');

/** Unexposed left, exposed right. */
function swatch({ from, to }: AgedPart): Content {
  const daylight = lightByName('D65');
  if (daylight === undefined) return undefined;
  const white = whitePoint(daylight, 10);
  const [before, after] = [from, to].map((lab) => displayColour(labToXyz(lab, white), white, 'srgb').hex);
  return figure(element('svg', { class: 'swatch pair', viewBox: '0 0 28 14', width: 28, height: 14, 'aria-hidden': 'true' },
    element('rect', { width: 14, height: 14, fill: before }), element('rect', { x: 14, width: 14, height: 14, fill: after })));
}
