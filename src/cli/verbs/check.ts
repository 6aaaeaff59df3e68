import type { CheckResult, JointResult, Judgement } from '../../harmony/judgement.ts';
import type { Cabin } from '../../cabin/cabin.ts';
import type { Emphasis } from '../style.ts';
import type { Terminal, Verb } from '../verb.ts';
import { checkJson, judge } from '../../harmony/index.ts';
import { hasErrors } from '../../issue.ts';
import { leadingCheck } from '../../report/model.ts';
import { counted, coverageText, decimalsOf, fixed, limitUseText, probability } from '../../report/number-text.ts';
import { worstFirst } from '../../report/worst-first.ts';
import { judgeOptions, loadJudgeInput } from '../load-cabin.ts';
import { printable } from '../printable.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { styled } from '../style.ts';
import { textTable, wrapped } from '../text-table.ts';

export const check: Verb = {
  name: 'check',
  summary: 'Judge every joint of a cabin and print what clashes, what is open and why.',
  operands: [{ name: 'CABIN', about: 'a cabin (.cabin.json), or `-` for the standard input' }],
  options: {
    ...judgeOptions,
    strict: { about: 'exit 1 also where a joint is open' },
  },
  detail: [
    'Prints every joint, the worst first, each with its sentence, the specimens it was judged on, the probability of all its checks together and how many had data; then the parts that break a cap or their master\'s tolerance, runs that drift, and the counts. Differences are trial minus standard. Limit use is value / limit; 100 % is at the limit.',
    'holds: inside every limit with the confidence that the rule book asks for. clashes: outside with that confidence. open: the data cannot decide, or may not be compared; the reason is given.',
    'Exit: 0 no unaccepted clash, 1 an unaccepted clash (with --strict also: something is open), 2 bad input.',
  ],
  examples: [
    { command: 'adjoin check shuttle.cabin.json', about: 'the verdicts by the rule book that the cabin names' },
    { command: 'adjoin check shuttle.cabin.json --rules house.rules.json --as-of 2031-03-01', about: 'by another book, on a given day' },
    { command: 'adjoin check - --json < shuttle.cabin.json', about: 'all numbers, as JSON' },
  ],
  run(args, io) {
    const input = loadJudgeInput(args, io);
    if (input.value === undefined) return refused(input.issues, args.json);
    const { cabin, ruleBook, options } = input.value;
    const judgement = judge(cabin, ruleBook, options);
    if (hasErrors(judgement.issues)) return refused([...input.issues, ...judgement.issues], args.json);
    const exit = judgement.summary.clashes > 0 || (options.strict === true && judgement.summary.open > 0) ? 1 : 0;
    if (args.json) return done(jsonText(checkJson(judgement)), { exit, stderr: issueLines(input.issues) });
    return done(verdictText(cabin, judgement, io.terminal), { exit, stderr: issueLines([...input.issues, ...judgement.issues]) });
  },
};

const emphasisOf = (joint: JointResult): Emphasis | undefined =>
  (joint.verdict === 'clashes' ? (joint.accepted ? 'strong' : 'alarm') : joint.verdict === 'open' ? 'caution' : undefined);

/** The verdicts as a person reads them. */
export function verdictText(cabin: Cabin, judgement: Judgement, terminal: Terminal): string {
  const names = new Map(cabin.parts.map((part) => [part.id, part.name]));
  const name = (id: string): string => names.get(id) ?? id;
  const heading = [cabin.name, cabin.colourway, cabin.phase && `phase ${cabin.phase}`].filter(Boolean).join(', ');
  const table = textTable([
    { title: 'verdict', most: 24 }, { title: 'use', align: 'right' }, { title: 'joint', most: 44 }, { title: 'check' }, { title: 'light' }, { title: 'value', align: 'right' }, { title: 'limit', align: 'right' }, { title: 'of', most: 24 }, { title: 'within', align: 'right' },
  ], worstFirst(judgement.joints).map((joint) => {
    const leading = leadingCheck(joint);
    return { cells: cells(joint, leading), emphasis: emphasisOf(joint), below: joint.sentence, grounds: groundsText(joint, name) };
  }), terminal);
  return [
    `${styled(printable(heading), 'strong', terminal)}\n`,
    `${wrapped(`Stage ${printable(judgement.stage)}, as of ${judgement.asOf}, ${judgement.observer} degree observer. Rule book ${printable(judgement.ruleBook)}. ${capital(judgement.decisionRule)}.`, terminal.columns).join('\n')}\n\n`,
    table,
    partText(judgement, name, terminal),
    runText(judgement, name, terminal),
    `\n${headline(judgement, terminal)}`,
  ].join('');
}

function cells(joint: JointResult, leading: CheckResult | undefined): string[] {
  const decimals = decimalsOf(leading?.unit ?? '');
  return [
    joint.verdict === 'clashes' && joint.accepted ? 'clashes, accepted' : joint.verdict,
    limitUseText(leading?.limitUse), joint.id, leading?.check ?? '', leading?.light ?? '',
    fixed(leading?.value, decimals), fixed(leading?.limit, decimals), leading === undefined ? '' : quantity(leading), probability(leading?.withinProbability),
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What a joint was judged on, how sure all its checks are together, and how many of them had data. */
function groundsText({ judgedOn, totalProbability, coverage, lotProbability, checks }: JointResult, name: (id: string) => string): string {
  const side = ({ part, kind, specimen, lot, borrowedFrom }: JointResult['judgedOn'][number]): string => (specimen === '' ? `${name(part)}: nothing` : [
    `${name(part)}: ${kind} ${specimen}`, lot === undefined ? 'lot not stated' : `lot ${lot}`, ...(borrowedFrom === undefined ? [] : [`borrowed from ${name(borrowedFrom)}`]),
  ].join(', '));
  const judged = checks.some((check) => check.verdict !== 'not applicable' && check.check !== 'conditions');
  return [
    `Judged on ${judgedOn.map(side).join('; ')}.`,
    ...(judged ? [`All checks together: ${probability(totalProbability)} within; ${coverage.withData} of ${coverage.wanted} with data.`] : []),
    ...(lotProbability === undefined ? [] : [`Colour of pairs from any of the lots: ${probability(lotProbability)} within.`]),
  ].join(' ');
}

/** What the value is: its criterion where that decides, else the formula; with the unit. */
const quantity = ({ criterion, formula, unit }: CheckResult): string =>
  [unit, criterion !== undefined && criterion !== 'ΔE' ? criterion : formula].filter((word) => word !== undefined && word !== '').join(' ');

function partText(judgement: Judgement, name: (id: string) => string, terminal: Terminal): string {
  const rows = judgement.parts.flatMap((part) => part.checks
    .filter((result) => result.verdict === 'clashes' || result.verdict === 'open')
    .map((result) => ({
      cells: [result.verdict, limitUseText(result.limitUse), name(part.id), result.check, result.light ?? '', fixed(result.value, decimalsOf(result.unit)), fixed(result.limit, decimalsOf(result.unit)), quantity(result)],
      emphasis: result.verdict === 'clashes' ? 'alarm' as const : 'caution' as const,
      below: result.sentence,
    })));
  if (rows.length === 0) return '';
  return `\n${styled('Parts against their masters and caps', 'strong', terminal)}\n${textTable([
    { title: 'verdict' }, { title: 'use', align: 'right' }, { title: 'part' }, { title: 'check' }, { title: 'light' }, { title: 'value', align: 'right' }, { title: 'limit', align: 'right' }, { title: 'of' },
  ], rows, terminal)}`;
}

function runText(judgement: Judgement, name: (id: string) => string, terminal: Terminal): string {
  const rows = judgement.runs.filter((run) => run.verdict !== 'holds').map((run) => ({
    cells: [run.verdict, limitUseText(run.limitUse), name(run.parts[0] ?? ''), name(run.parts.at(-1) ?? ''), run.light ?? '', fixed(run.value, 2), fixed(run.limit, 2), run.criterion ?? run.formula],
    emphasis: run.verdict === 'clashes' ? 'alarm' as const : 'caution' as const,
    below: run.sentence,
  }));
  if (rows.length === 0) return '';
  return `\n${styled('Drift along runs', 'strong', terminal)}\n${textTable([
    { title: 'verdict' }, { title: 'use', align: 'right' }, { title: 'from' }, { title: 'to' }, { title: 'light' }, { title: 'value', align: 'right' }, { title: 'limit', align: 'right' }, { title: 'of' },
  ], rows, terminal)}`;
}

/** What the simple decision rule would say of the same values. */
function simpleCounts({ joints }: Judgement): string {
  const of = (verdict: JointResult['simple']): number => joints.filter((joint) => joint.simple === verdict).length;
  return `${of('clashes')} clash, ${of('open')} open, ${of('holds')} hold`;
}

/** Counts, coverage and the expected number of wrong holds. */
function headline(judgement: Judgement, terminal: Terminal): string {
  const { summary } = judgement;
  const sentences = [
    `${counted(summary.clashes, 'joint clashes', 'joints clash')} (${summary.accepted} more accepted), ${counted(summary.open, 'is open', 'are open')}, ${counted(summary.holds, 'holds', 'hold')}.`,
    `By value against limit alone: ${simpleCounts(judgement)}. Of the joints that hold, ${counted(summary.nothingJudged, 'has', 'have')} nothing to judge: all that is wanted of them is free.`,
    `Expected number of holding joints that in truth do not: ${fixed(summary.expectedWrongHolds, 1)}. Checks with data of checks wanted: ${coverageText(summary.coverage)}.`,
    ...(summary.visual.joints > 0 ? [`Numbers and booth agree on ${summary.visual.agree} of ${summary.visual.joints} joints.`] : []),
    ...(judgement.requests.length > 0 ? [`${counted(judgement.requests.length, 'set of readings is', 'sets of readings are')} asked for, ${judgement.requests.reduce((sum, request) => sum + Math.max(0, request.spots - request.have), 0)} more spots in all; \`adjoin report\` prints the sheet for each supplier.`] : []),
  ];
  return sentences.flatMap((sentence, index) => wrapped(sentence, terminal.columns).map((line) => (index === 0 ? styled(line, 'strong', terminal) : line))).join('\n').concat('\n');
}
