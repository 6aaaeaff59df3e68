import type { Cabin } from '../../cabin/cabin.ts';
import type { Issue } from '../../issue.ts';
import type { MaterialReach, MendPlan } from '../../plan/index.ts';
import type { Arguments, Terminal, Verb } from '../verb.ts';
import { hasErrors } from '../../issue.ts';
import { mendCabin } from '../../plan/index.ts';
import { fixed } from '../../report/number-text.ts';
import { judgeOptions, loadJudgeInput } from '../load-cabin.ts';
import { numberOption, pairsOption } from '../plan-options.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { styled } from '../style.ts';
import { textTable, wrapped } from '../text-table.ts';
import { usageIssue } from '../verb.ts';

export const mend: Verb = {
  name: 'mend',
  summary: 'Find the fewest parts to change, and the least shifts, so that every joint holds.',
  operands: [{ name: 'CABIN', about: 'a cabin (.cabin.json), or `-` for the standard input' }],
  options: {
    ...judgeOptions,
    lock: { value: 'PART', about: 'a part that stays as it is', multiple: true },
    except: { value: 'JOINT', about: 'a joint that is left as it is', multiple: true },
    fewest: { about: 'as few parts as can be; so where neither is asked' },
    cheapest: { about: 'the cheapest set of parts by the set-ups and tools their sources state' },
    cost: { value: 'PART=MONEY', about: 'what a change of a part costs in all, in place of the set-up and tool that its source states', multiple: true },
    reach: { value: 'MATERIAL=L,A,B,GLOSS', about: 'how far a material can be taken up or down: CIELAB units and gloss units', multiple: true },
    'time-limit': { value: 'SECONDS', about: 'for each mixed-integer program; 60 where absent' },
    'release-frozen': { about: 'let carry-over parts change as well' },
  },
  detail: [
    'A shift is of dL*, da*, db* under D65 and of gloss. The spectrum it implies is the smoothest change of reflectance that gives it, so that every light of the rule is judged again by the ordinary check. It is a target to the supplier, not a forecast of a recipe.',
    'How far a material can be taken is an assumption without a source, until --reach says what its supplier says. The gloss of a grained moulding changes in steps, with its tool.',
    'Where the proof is not reached in time, what at least must change is given. Where there is no plan within reach, the joints that make it so are named: none of them can be left out.',
    'Exit: 0 a plan, 1 none within reach, 2 bad input.',
  ],
  examples: [
    { command: 'adjoin mend shuttle.cabin.json', about: 'a card for each part to change' },
    { command: 'adjoin mend shuttle.cabin.json --lock upper-dash --cheapest --json', about: 'with a part kept, by cost, as JSON' },
    { command: 'adjoin mend shuttle.cabin.json --reach leather=1,0.5,0.5,0', about: 'with a leather that can be taken less far' },
  ],
  async run(args, io) {
    const input = loadJudgeInput(args, io);
    const both = args.switches.has('fewest') && args.switches.has('cheapest');
    const usage: Issue[] = both ? [usageIssue('given-together', '--cheapest', undefined, 'one of --fewest and --cheapest')] : [];
    const timeLimitS = numberOption(args, 'time-limit', usage) ?? usualTimeLimitS;
    const costs = Object.fromEntries(Object.entries(pairsOption(args, 'cost', usage)).map(([part, money]) => [part, money.trim() === '' ? NaN : Number(money)]));
    const reach = reachOption(args, usage);
    if (input.value === undefined || usage.length > 0) return refused([...input.issues, ...usage], args.json);
    const { cabin, ruleBook, options } = input.value;
    const plan = await mendCabin(cabin, ruleBook, {
      ...options, locked: args.values.get('lock') ?? [], except: args.values.get('except') ?? [],
      aim: args.switches.has('cheapest') ? 'cheapest' : 'fewest', releaseFrozen: args.switches.has('release-frozen'), costs, reach, timeLimitS,
    });
    if (hasErrors(plan.issues)) return refused([...input.issues, ...plan.issues], args.json);
    const exit = plan.feasible ? 0 : 1;
    if (args.json) return done(jsonText(plan), { exit, stderr: issueLines(input.issues) });
    return done(mendText(cabin, plan, io.terminal), { exit, stderr: issueLines([...input.issues, ...plan.issues]) });
  },
};

/** Seconds for each program where nothing else is asked. */
const usualTimeLimitS = 60;

/** `material=L,a,b,gloss`, any number of times. */
function reachOption(args: Arguments, issues: Issue[]): Readonly<Record<string, MaterialReach>> {
  return Object.fromEntries(Object.entries(pairsOption(args, 'reach', issues)).flatMap(([material, text]): (readonly [string, MaterialReach])[] => {
    const numbers = text.split(',').map((each) => (each.trim() === '' ? NaN : Number(each)));
    if (numbers.length === 4 && numbers.every((each) => Number.isFinite(each) && each >= 0)) return [[material, { L: numbers[0], a: numbers[1], b: numbers[2], gloss: numbers[3] }]];
    issues.push(usageIssue('bad-list', '--reach', `${material}=${text}`, 'four numbers of at least 0 after the material: L*, a*, b* and gloss', 'For example moulded=2.5,1.5,1.5,1'));
    return [];
  }));
}

/** The plan as a person reads it: what it says, a table of the shifts, and a card for each part. */
export function mendText(cabin: Cabin, plan: MendPlan, terminal: Terminal): string {
  const names = new Map(cabin.parts.map((part) => [part.id, part.name]));
  const lines = (sentences: readonly string[], indent = ''): string => sentences.flatMap((sentence) => wrapped(sentence, terminal.columns, indent)).map((line) => `${line}\n`).join('');
  const heading = (text: string): string => `\n${styled(text, 'strong', terminal)}\n`;
  const { changes, cards } = plan.feasible ? plan : plan.withoutBlockers ?? { changes: [], cards: [] };
  const after = plan.feasible ? plan.after : plan.withoutBlockers?.after;
  const counts = [{ name: 'now', summary: plan.before }, ...(after === undefined ? [] : [{ name: 'after', summary: after }])];
  return [
    lines(plan.words),
    heading('The ordinary check'),
    textTable([{ title: '' }, { title: 'holds', align: 'right' }, { title: 'open', align: 'right' }, { title: 'clashes', align: 'right' }, { title: 'accepted', align: 'right' }],
      counts.map(({ name, summary }) => ({ cells: [name, String(summary.holds), String(summary.open), String(summary.clashes), String(summary.accepted)] })), terminal),
    changes.length === 0 ? '' : heading('Changes') + textTable(
      [{ title: 'part' }, { title: 'dL*', align: 'right' }, { title: 'da*', align: 'right' }, { title: 'db*', align: 'right' }, { title: 'dGloss', align: 'right' }],
      changes.map(({ part, dL, da, db, dGloss }) => ({ cells: [names.get(part) ?? part, fixed(dL, 2), fixed(da, 2), fixed(db, 2), fixed(dGloss, 2)] })), terminal),
    ...cards.map((card) => heading(`Card: ${card.parts.map((part) => names.get(part) ?? part).join(', ')}`) + lines(card.sentences)),
  ].join('');
}
