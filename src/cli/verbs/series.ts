import type { Cabin } from '../../cabin/cabin.ts';
import type { Issue, Outcome } from '../../issue.ts';
import type { BuildPlan, CabinSeries, JointForecast, PartSeries, SeriesOptions } from '../../series/index.ts';
import type { Arguments, Terminal, Verb } from '../verb.ts';
import { hasErrors } from '../../issue.ts';
import { partNames } from '../../harmony/names.ts';
import { percentOfLimit } from '../../harmony/wording.ts';
import { fixed } from '../../report/number-text.ts';
import { buildWords, cabinSeries, partWords, slopeScale } from '../../series/index.ts';
import { judgeOptions, loadJudgeInput } from '../load-cabin.ts';
import { numberOption, readOptions } from '../plan-options.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { styled } from '../style.ts';
import { textTable, wrapped } from '../text-table.ts';
import { lastValue, usageIssue } from '../verb.ts';

export const series: Verb = {
  name: 'series',
  summary: 'Follow lots over time: trends, lots outside, the first joint to clash, and which lots to build together.',
  operands: [{ name: 'CABIN', about: 'a cabin (.cabin.json), or `-` for the standard input' }],
  options: {
    ...judgeOptions,
    part: { value: 'ID', about: 'only this part, its joints and its neighbours', multiple: true },
    joint: { value: 'ID', about: 'only this joint and its parts', multiple: true },
    confidence: { value: 'SHARE', about: 'of limits, trends and ranges; 0.95 where absent' },
    against: { value: 'WHAT', choices: ['lots', 'master'], about: 'chart lots against each other, or against the master; the lots where there are five, else the master' },
    'first-lots': { value: 'NUMBER', about: 'take the limits from so many of the first lots, and hold the later ones to them as further lots' },
    ahead: { value: 'DAYS', about: 'how far is looked ahead; 365 where absent' },
    'ahead-lots': { value: 'LOTS', about: 'the same for lots without a day; 12 where absent' },
    lots: { value: 'PART=LOT,LOT', about: 'lots of a part that can be built; all of them where absent', multiple: true },
  },
  detail: [
    'Lots are those of the chosen source of a part, of the kind of specimen that stands for it, in order of production and read under like conditions. Their T² under the first required light is held to the limit of a lot among its own (beta), of a further lot (F), or of a known covariance (chi-square).',
    'A trend is claimed from five lots on and where its slope is significant as one vector. A joint is given a day only where one of its parts has a trend; the range comes from how well the lines are known, without what a single lot scatters about them. Gloss that is to match is forecast in the same way where one of the parts has a trend in it, held to the limit of today\'s level; texture is not.',
    'Lots are built together so that the fewest clashes are to be expected, then the least over-use. Every lot counts the same, whatever its size.',
    'Exit: 0 done, 1 a joint is over its limit or will be within the time looked ahead, 2 bad input.',
  ],
  examples: [
    { command: 'adjoin series lots.cabin.json', about: 'every part with lots, every joint they touch' },
    { command: 'adjoin series lots.cabin.json --part shelf --first-lots 6 --confidence 0.99', about: 'one part, its later lots held to the limits of the first six' },
    { command: 'adjoin series lots.cabin.json --joint shelf--lid --lots shelf=L7,L8,L9 --json', about: 'which of the lots in stock to build together, as JSON' },
  ],
  async run(args, io) {
    const input = loadJudgeInput(args, io);
    const wanted = seriesOptions(args);
    if (input.value === undefined || wanted.value === undefined) return refused([...input.issues, ...wanted.issues], args.json);
    const { cabin, ruleBook, options } = input.value;
    const found = await cabinSeries(cabin, ruleBook, { ...options, ...wanted.value });
    if (hasErrors(found.issues)) return refused([...input.issues, ...found.issues], args.json);
    const exit = found.first === undefined ? 0 : 1;
    if (args.json) return done(jsonText(found), { exit, stderr: issueLines(input.issues) });
    return done(seriesText(cabin, found, io.terminal), { exit, stderr: issueLines([...input.issues, ...found.issues]) });
  },
};

function seriesOptions(args: Arguments): Outcome<SeriesOptions> {
  const issues: Issue[] = [];
  const confidence = numberOption(args, 'confidence', issues);
  if (confidence !== undefined && !(confidence > 0.5 && confidence < 1)) issues.push(usageIssue('bad-number', '--confidence', String(confidence), 'above 0.5 and below 1'));
  const base = numberOption(args, 'first-lots', issues, 1, true);
  const [aheadDays, aheadLots] = [numberOption(args, 'ahead', issues, 1), numberOption(args, 'ahead-lots', issues, 1)];
  const against = lastValue(args, 'against');
  const available: Record<string, string[]> = {};
  for (const text of args.values.get('lots') ?? []) {
    const at = text.indexOf('=');
    const lots = text.slice(at + 1).split(',').map((lot) => lot.trim()).filter((lot) => lot !== '');
    if (at <= 0 || lots.length === 0) issues.push(usageIssue('bad-list', '--lots', text, 'part=lot,lot'));
    else available[text.slice(0, at)] = [...(available[text.slice(0, at)] ?? []), ...lots];
  }
  return readOptions<SeriesOptions>({
    parts: args.values.get('part') ?? [], joints: args.values.get('joint') ?? [], available,
    ...(confidence === undefined ? {} : { confidence }), ...(base === undefined ? {} : { base }),
    ...(aheadDays === undefined ? {} : { aheadDays }), ...(aheadLots === undefined ? {} : { aheadLots }),
    ...(against === 'lots' || against === 'master' ? { reference: against } : {}),
  }, issues);
}

/** The series as a person reads it. */
export function seriesText(cabin: Cabin, found: CabinSeries, terminal: Terminal): string {
  const names = partNames(cabin.parts);
  const part = (id: string): string => names.get(id) ?? id;
  const joints = new Map(cabin.joints.map((joint) => [joint.id, joint.parts.map(part).join(' and ')]));
  const lines = (sentences: readonly string[]): string => sentences.flatMap((sentence) => wrapped(sentence, terminal.columns)).map((line) => `${line}\n`).join('');
  const heading = (text: string): string => `\n${styled(text, 'strong', terminal)}\n`;
  const silent = found.joints.filter(({ state }) => state === 'no trend' || state === 'too few lots' || state === 'not judged').length;
  const told = found.joints.filter(({ state }) => state === 'over its limit' || state === 'will clash' || state === 'stays within');
  return [
    lines(found.words),
    ...found.parts.map((own) => heading(part(own.part)) + lines(partWords(own)) + lotTable(own, terminal)),
    found.parts.length === 0 ? '' : heading('Joints if the lots go on as they went'),
    told.length === 0 ? '' : forecastTable(told, joints, terminal),
    silent === 0 ? '' : lines([`${silent} ${silent === 1 ? 'joint has' : 'joints have'} no forecast: no trend, too few lots, or colour is not judged.`]),
    ...[...found.pairs, ...found.sets].map((plan) => heading('Lots to build together') + lines([buildWords(plan, part)]) + buildTable(plan, part, terminal)),
  ].join('');
}

const lotTable = ({ lots, unit, trend }: PartSeries, terminal: Terminal): string => {
  const { factor, per } = slopeScale(unit);
  const table = textTable(
    [{ title: 'lot' }, { title: 'made' }, { title: 'L*', align: 'right' }, { title: 'a*', align: 'right' }, { title: 'b*', align: 'right' }, { title: 'spots', align: 'right' }, { title: 'T²', align: 'right' }, { title: 'limit', align: 'right' }, { title: 'as' }, { title: '' }],
    lots.map(({ id, producedOn, lab, spots, charted }) => ({
      cells: [id, producedOn ?? '', ...lab.map((entry) => fixed(entry, 2)), String(spots), fixed(charted?.statistic, 1), fixed(charted?.limit, 1), charted?.against ?? '', charted?.outside === true ? 'outside' : ''],
    })), terminal);
  const { slope, reach } = trend;
  return slope === undefined || reach === undefined ? table
    : `${table}slope ${per}: ${(['L*', 'a*', 'b*'] as const).map((axis, index) => `${axis} ${fixed(slope[index] * factor, 2)} ± ${fixed(reach[index] * factor, 2)}`).join(', ')}\n`;
};

const place = (of: JointForecast['when']): string => (of === undefined ? '' : of.day ?? `${of.ahead} lots on`);

const forecastTable = (joints: readonly JointForecast[], names: ReadonlyMap<string, string>, terminal: Terminal): string => textTable(
  [{ title: 'joint', most: 44 }, { title: 'check' }, { title: 'now', align: 'right' }, { title: 'over its limit' }, { title: 'earliest' }, { title: 'latest' }, { title: 'light' }],
  joints.map(({ joint, check, angle, state, now, when, there, earliest, latest }) => ({
    cells: [
      names.get(joint) ?? joint, check === 'gloss' ? `gloss ${angle ?? ''}°` : check, now === undefined ? '' : percentOfLimit(now.use), state === 'over its limit' ? 'already' : state === 'stays within' ? 'not in the time looked ahead' : place(when),
      place(earliest), state === 'will clash' && latest === undefined ? 'open' : place(latest), there?.light ?? now?.light ?? '',
    ],
  })), terminal);

const buildTable = ({ parts, sets, inOrder }: BuildPlan, part: (id: string) => string, terminal: Terminal): string => textTable(
  [{ title: 'set', align: 'right' }, ...parts.map((id) => ({ title: part(id), most: 18 })), { title: 'clashes', align: 'right' }, { title: 'in order', align: 'right' }, { title: 'clashes', align: 'right' }],
  sets.map(({ lots, clashes }, index) => ({
    cells: [String(index + 1), ...lots, fixed(clashes, 2), inOrder[index].lots.join(' '), fixed(inOrder[index].clashes, 2)],
  })), terminal);
