import type { Cabin } from '../../cabin/cabin.ts';
import type { Issue } from '../../issue.ts';
import type { ApportionPlan } from '../../plan/index.ts';
import type { Terminal, Verb } from '../verb.ts';
import { hasErrors } from '../../issue.ts';
import { withToleranceTargets } from '../../actions/tolerance-targets.ts';
import { serialiseCabin } from '../../cabin/serialise-cabin.ts';
import { apportionCabin, quantileSource } from '../../plan/index.ts';
import { fixed } from '../../report/number-text.ts';
import { toleranceCsv } from '../../report/tolerance-csv.ts';
import { judgeOptions, loadJudgeInput } from '../load-cabin.ts';
import { filesAsked, writtenLines } from '../plan-files.ts';
import { numberOption, pairsOption } from '../plan-options.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { styled } from '../style.ts';
import { textTable, wrapped } from '../text-table.ts';
import { lastValue, usageIssue } from '../verb.ts';
import { workWatch } from '../work-watch.ts';

export const apportion: Verb = {
  name: 'apportion',
  summary: 'Turn the limits of joints into tolerances of parts, as large and as even as can be.',
  operands: [{ name: 'CABIN', about: 'a cabin (.cabin.json), or `-` for the standard input' }],
  options: {
    ...judgeOptions,
    'worst-case': { about: 'any two parts in tolerance hold; so where neither is asked' },
    statistical: { about: 'tolerances add by squares, for parts that are normal about their targets' },
    confidence: { value: 'SHARE', about: 'by squares: share of the cabins in which a joint is to hold; 0.95 where absent' },
    'in-tolerance': { value: 'SHARE', about: 'by squares: share of the parts that the suppliers keep in tolerance; 0.95 where absent' },
    about: { value: 'WHAT', choices: ['master', 'present'], about: 'lay tolerances about the masters where recorded (so where absent), or about the parts as they are' },
    capability: { value: 'SUPPLIER=SHARE', about: 'how much tolerance a supplier needs beside the others, 1 being as much', multiple: true },
    'most-radius': { value: 'NUMBER', about: 'no radius is larger; 3 where absent' },
    out: { value: 'FILE', about: 'write the cabin with the tolerances as the limits of its parts against their recorded masters, where that is tighter than now' },
    csv: { value: 'FILE', about: 'write the sheets of all suppliers as a table' },
    draws: { value: 'NUMBER', about: 'cabins drawn to check the tolerances; 2000 where absent' },
  },
  detail: [
    'A tolerance is an ellipsoid in CIELAB under D65 by the rule\'s local metric at the target, of a radius in units of the formula, and a band of gloss. The smallest radius is made as large as can be, then the next, and so on.',
    'By squares, how often a joint is outside its limits is reckoned over all its lights, its caps and its gloss together, for parts that are normal and independent; tolerances grow until a joint has what it is allowed, less 4 % of it for the error of reckoning.',
    'Worst case is confirmed by a search on the boundaries of the tolerances, both ways by drawing cabins. Quantiles by squares: ' + quantileSource + '. Tolerances are of true colours: what measuring adds comes on top.',
    'Exit: 0 done, 1 the targets of some joint are outside its limits, 2 bad input.',
  ],
  examples: [
    { command: 'adjoin apportion shuttle.cabin.json', about: 'a tolerance for each part, by supplier' },
    { command: 'adjoin apportion shuttle.cabin.json --statistical --confidence 0.99', about: 'by squares, for joints that hold in 99 of 100 cabins' },
    { command: 'adjoin apportion shuttle.cabin.json --statistical --capability haddesk=2 --json', about: 'by squares, with twice the tolerance for a supplier, as JSON' },
  ],
  async run(args, io) {
    const input = loadJudgeInput(args, io);
    const usage: Issue[] = [];
    if (args.switches.has('worst-case') && args.switches.has('statistical')) usage.push(usageIssue('given-together', '--statistical', undefined, 'one of --worst-case and --statistical'));
    if (!args.switches.has('statistical')) {
      for (const option of ['confidence', 'in-tolerance']) if (args.values.has(option)) usage.push(usageIssue('given-alone', `--${option}`, lastValue(args, option), '--statistical beside it'));
    }
    const [confidence, inTolerance] = [numberOption(args, 'confidence', usage), numberOption(args, 'in-tolerance', usage)];
    const draws = numberOption(args, 'draws', usage, 1, true);
    const mostRadius = numberOption(args, 'most-radius', usage);
    const shares = Object.fromEntries(Object.entries(pairsOption(args, 'capability', usage)).map(([supplier, share]) => [supplier, Number(share)]));
    if (input.value === undefined || usage.length > 0) return refused([...input.issues, ...usage], args.json);
    const { cabin, ruleBook, options } = input.value;
    const plan = await apportionCabin(cabin, ruleBook, {
      ...options, shares, rule: args.switches.has('statistical') ? 'statistical' : 'worst case', about: lastValue(args, 'about') === 'present' ? 'present' : 'master',
      ...(confidence === undefined ? {} : { confidence }), ...(inTolerance === undefined ? {} : { inTolerance }), ...(draws === undefined ? {} : { draws }), ...(mostRadius === undefined ? {} : { mostRadius }),
    }, workWatch(io));
    if (hasErrors(plan.issues)) return refused([...input.issues, ...plan.issues], args.json);
    const exit = plan.targetsClash.length > 0 ? 1 : 0;
    const files = filesAsked(args, { out: () => serialiseCabin(withToleranceTargets(cabin, plan)), csv: () => toleranceCsv(cabin, plan) });
    if (args.json) return done(jsonText(plan), { exit, files, stderr: issueLines(input.issues) });
    return done(apportionText(cabin, plan, io.terminal) + writtenLines(files), { exit, files, stderr: issueLines([...input.issues, ...plan.issues]) });
  },
};

/** The plan as a person reads it: what it says, then a sheet for each supplier. */
export function apportionText(cabin: Cabin, plan: ApportionPlan, terminal: Terminal): string {
  const names = new Map(cabin.parts.map((part) => [part.id, part.name]));
  const parts = new Map(plan.parts.map((part) => [part.id, part]));
  const lines = plan.words.flatMap((sentence) => wrapped(sentence, terminal.columns)).map((line) => `${line}\n`).join('');
  const sheets = plan.sheets.map((sheet) => `\n${styled(sheet.name, 'strong', terminal)}\n${textTable(
    [{ title: 'part' }, { title: 'radius', align: 'right' }, { title: 'formula' }, { title: 'L*', align: 'right' }, { title: 'a*', align: 'right' }, { title: 'b*', align: 'right' }, { title: 'about' }, { title: 'gloss ±', align: 'right' }, { title: 'held by', most: 44 }],
    sheet.parts.map((id) => {
      const part = parts.get(id)!;
      const [L, a, b] = part.target ?? [];
      return { cells: [names.get(id) ?? id, fixed(part.radius, 2), part.formula, fixed(L, 2), fixed(a, 2), fixed(b, 2), part.about, fixed(part.glossBand, 2), part.heldBy[0] ?? ''] };
    }), terminal)}`);
  return [lines, ...sheets].join('');
}
