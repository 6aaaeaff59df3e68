import { displayColour, labToXyz, lightByName, whitePoint } from '../../colour/index.ts';
import type { CabinComparison, JointChange, PartChange } from '../../harmony/compare/index.ts';
import type { Content } from '../markup.ts';
import type { Page } from '../page.ts';
import { data, html, named } from '../markup.ts';
import { counted, fixed, limitUseText, signed } from '../number-text.ts';
import { jointAnchor, pagedTable, verdictWord } from '../pieces.ts';
import { mapHeight, mapPicture } from '../pictures.ts';

/** Changed verdicts that have a number on the maps. */
const mostNumbers = 9;

/** The cabin before and now as two maps, and every joint whose verdict is another one with what changed at it. */
export function beforeAndNow(page: Page, compared: CabinComparison): Content {
  const changed = compared.joints.filter(({ kind }) => kind === 'verdict' || kind === 'new' || kind === 'gone').filter(({ kind, after }) => kind !== 'new' || after?.verdict !== 'holds');
  return [maps(page, compared, changed), changed.length > 0 && changeList(page, compared, changed)];
}

function maps(page: Page, { joints, parts, before, after }: CabinComparison, changed: readonly JointChange[]): Content {
  const size = { width: 400, height: mapHeight(page, 400, [150, 300]) };
  const [looks, changes] = [new Map(parts.map((part) => [part.part, part])), new Map(joints.map((joint) => [joint.id, joint]))];
  const numbered = changed.slice(0, mostNumbers).map(({ id }) => id);
  const stages = before.name === after.name && before.stage !== after.stage;
  const [then, now] = [
    mapPicture(page, size, { numbered, withoutZones: true, fill: (part) => hexBefore(looks.get(part)), verdict: (joint) => changes.get(joint)?.before }),
    mapPicture(page, size, { numbered, withoutZones: true, verdict: (joint) => changes.get(joint)?.after }),
  ];
  const gone = joints.filter(({ kind }) => kind === 'gone').length;
  return then && now && [
    html('div', { class: 'pair' },
      html('figure', {}, html('figcaption', {}, html('strong', {}, 'Before'), ': ', stages ? `stage “${before.stage}”` : named(before.name)), html('div', { class: 'mat' }, then)),
      html('figure', {}, html('figcaption', {}, html('strong', {}, 'Now'), ': ', stages ? `stage “${after.stage}”` : named(after.name)), html('div', { class: 'mat' }, now))),
    html('p', { class: 'judged quiet' }, `Colours under D65, ${page.model.observer}° observer. Saw: clashes; hollow saw: accepted; dashes: open; thin line: holds. `,
      numbered.length > 0 && 'Numbers as in the table below. ', gone > 0 && `${counted(gone, 'joint')} no longer there ${gone === 1 ? 'is' : 'are'} not drawn. `, 'Screens and paper are no proof of colour.'),
  ];
}

/** Colour before of a part that has another one now. */
function hexBefore(change: PartChange | undefined): string | undefined {
  const daylight = lightByName('D65');
  if (change?.colour === undefined || daylight === undefined) return undefined;
  const white = whitePoint(daylight, change.colour.observer);
  return displayColour(labToXyz(change.colour.from, white), white, 'srgb').hex;
}

function changeList(page: Page, { parts }: CabinComparison, changed: readonly JointChange[]): Content {
  const looks = new Map(parts.map((part) => [part.part, part]));
  return pagedTable<JointChange>('Joints of another verdict, and what changed at them', [
    { title: 'Joint', wide: true, cell: (change) => [changed.indexOf(change) < mostNumbers && html('strong', {}, `${changed.indexOf(change) + 1}  `), linked(page, change)] },
    { title: 'Before', cell: ({ before }) => (before === undefined ? html('span', { class: 'quiet' }, 'none') : verdictWord(before)) },
    { title: 'Now', cell: ({ after }) => (after === undefined ? html('span', { class: 'quiet' }, 'none') : verdictWord(after)) },
    { title: 'Limit use', steady: true, cell: ({ before, after }) => [data(before?.limitUse, limitUseText(before?.limitUse)), html('span', { class: 'quiet' }, ' to '), data(after?.limitUse, limitUseText(after?.limitUse))] },
    { title: 'Change', cell: (change) => clarity(page, change) },
    { title: 'What changed at it', wide: true, cell: (change) => partsOf(page, change, looks) },
  ], changed);
}

function linked(page: Page, { id, names, after }: JointChange): Content {
  const [place, words] = [page.place(id), [named(names[0]), ' and ', named(names[1])]];
  return place < 0 || after === undefined ? words : html('a', { href: `#${jointAnchor(place)}` }, words);
}

/** Whether the readings can tell the values before and now of the check that decides apart. */
function clarity(page: Page, { id, checks, kind }: JointChange): Content {
  if (kind !== 'verdict') return html('span', { class: 'quiet' }, kind);
  const decisive = checks.find(({ check }) => check === page.joint(id)?.leading?.check);
  if (decisive?.beyondUncertainty === true) return 'beyond the uncertainty';
  return html('span', { class: 'quiet' }, decisive?.beyondUncertainty === false ? 'within the uncertainty' : 'another light or criterion');
}

function partsOf(page: Page, { id }: JointChange, looks: ReadonlyMap<string, PartChange>): Content {
  const own = (page.joint(id)?.result.parts ?? []).flatMap((part) => looks.get(part) ?? []);
  if (own.length === 0) return html('span', { class: 'quiet' }, 'neither part: the rule, the joint or a decision');
  return own.map((change, index) => [index > 0 && html('br', {}), named(change.name), ': ', facts(change).map((fact, at) => [at > 0 && ', ', fact])]);
}

/** What is other of a part: who supplies it, its colour, gloss and texture. */
function facts({ before, after, colour, notCompared, gloss, texture }: PartChange): readonly Content[] {
  const moved: readonly Content[] = [
    ...(before !== undefined && after !== undefined && before.supplier !== after.supplier ? [['from ', named(before.supplier), ' to ', named(after.supplier)]] : []),
    ...(colour === undefined ? [] : [['ΔE00 ', data(colour.ciede2000, fixed(colour.ciede2000, 2)), ' under D65', colour.words.length > 0 && ` (${colour.words.join(', ')})`]]),
    ...gloss.map(({ angle, change }): Content => [data(change, signed(change, 2)), ` GU at ${angle}°`]),
    ...(texture === undefined ? [] : [['Sa ', data(texture.change, signed(texture.change, 2)), ' µm']]),
  ];
  if (moved.length > 0) return moved;
  return [before === undefined ? 'new' : after === undefined ? 'gone' : notCompared ?? 'another specimen'];
}
