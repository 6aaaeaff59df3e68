import type { Cabin } from '../../cabin/cabin.ts';
import type { Issue } from '../../issue.ts';
import type { MaterialReach, MendOptions, MendPlan } from '../../plan/index.ts';
import type { Arguments, Terminal, Verb } from '../verb.ts';
import { hasErrors } from '../../issue.ts';
import { mendProposalNote, withMendProposals } from '../../actions/mend-proposals.ts';
import { serialiseCabin } from '../../cabin/serialise-cabin.ts';
import { cabinAsMet, mendCabin } from '../../plan/index.ts';
import { mendCaution, mendCsv } from '../../report/mend-card-text.ts';
import { fixed } from '../../report/number-text.ts';
import { judgeOptions, loadJudgeInput } from '../load-cabin.ts';
import { filesAsked, writtenLines } from '../plan-files.ts';
import { numberOption, pairsOption } from '../plan-options.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { styled } from '../style.ts';
import { textTable, wrapped } from '../text-table.ts';
import { usageIssue } from '../verb.ts';
import { workWatch } from '../work-watch.ts';

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
    'part-reach': { value: 'PART=L,A,B,GLOSS', about: 'how far one part can be taken; it goes before its material', multiple: true },
    release: { value: 'PART', about: 'let a part change that the cabin locks against a mend', multiple: true },
    reach: { value: 'MATERIAL=L,A,B,GLOSS', about: 'how far a material can be taken up or down: CIELAB units and gloss units', multiple: true },
    'time-limit': { value: 'SECONDS', about: 'for the whole plan; what the cabin says where absent, else 60' },
    'release-frozen': { about: 'let carry-over parts change as well' },
    out: { value: 'FILE', about: 'write the cabin with the plan kept as proposals at its joints' },
    'as-met': { value: 'FILE', about: 'write the cabin as it would be with every target met, for `check`; it says of itself that it is not measured' },
    csv: { value: 'FILE', about: 'write the cards as a table' },
  },
  detail: [
    'A shift is of dL*, da*, db* under D65 and of gloss. The spectrum it implies is the smoothest change of reflectance that gives it, so that every light of the rule is judged again by the ordinary check. It is a target to the supplier, not a forecast of a recipe.',
    'How far a material can be taken is an assumption without a source, until the cabin or --reach says what its supplier says. The gloss of a grained moulding changes in steps, with its tool.',
    'Reach, cost of a part, locks and time allowed are kept in the cabin; what is given here goes before them. Locks add up.',
    'Where the proof is not reached in time, what at least must change is given, with the gap to the plan that was met. Where there is no plan within reach, the joints that make it so are named: none of them can be left out.',
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
    const timeAsked = numberOption(args, 'time-limit', usage);
    const costs = Object.fromEntries(Object.entries(pairsOption(args, 'cost', usage)).map(([part, money]) => [part, money.trim() === '' ? NaN : Number(money)]));
    const [reach, partReach] = [reachOption(args, 'reach', 'material', usage), reachOption(args, 'part-reach', 'part', usage)];
    if (input.value === undefined || usage.length > 0) return refused([...input.issues, ...usage], args.json);
    const { cabin, ruleBook, options } = input.value;
    const terms: MendOptions = {
      ...options, locked: args.values.get('lock') ?? [], released: args.values.get('release') ?? [], except: args.values.get('except') ?? [],
      aim: args.switches.has('cheapest') ? 'cheapest' : 'fewest', releaseFrozen: args.switches.has('release-frozen'), costs, reach, partReach,
      timeLimitS: timeAsked ?? cabin.planning?.timeLimitS ?? usualTimeLimitS,
    };
    const plan = await mendCabin(cabin, ruleBook, terms, workWatch(io));
    if (hasErrors(plan.issues)) return refused([...input.issues, ...plan.issues], args.json);
    const exit = plan.feasible ? 0 : 1;
    const files = filesAsked(args, {
      out: () => serialiseCabin(withMendProposals(cabin, plan.changes, plan.mended, mendProposalNote)),
      'as-met': () => serialiseCabin(cabinAsMet(cabin, ruleBook, plan, terms)),
      csv: () => mendCsv(cabin, plan.feasible ? plan.cards : plan.withoutBlockers?.cards ?? []),
    });
    if (args.json) return done(jsonText(plan), { exit, files, stderr: issueLines(input.issues) });
    return done(mendText(cabin, plan, io.terminal) + writtenLines(files), { exit, files, stderr: issueLines([...input.issues, ...plan.issues]) });
  },
};

/** Seconds where neither the command line nor the cabin says. */
const usualTimeLimitS = 60;

/** `material=L,a,b,gloss` or the same of a part, any number of times. */
function reachOption(args: Arguments, option: string, what: string, issues: Issue[]): Readonly<Record<string, MaterialReach>> {
  return Object.fromEntries(Object.entries(pairsOption(args, option, issues)).flatMap(([material, text]): (readonly [string, MaterialReach])[] => {
    const numbers = text.split(',').map((each) => (each.trim() === '' ? NaN : Number(each)));
    if (numbers.length === 4 && numbers.every((each) => Number.isFinite(each) && each >= 0)) return [[material, { L: numbers[0], a: numbers[1], b: numbers[2], gloss: numbers[3] }]];
    issues.push(usageIssue('bad-list', `--${option}`, `${material}=${text}`, `four numbers of at least 0 after the ${what}: L*, a*, b* and gloss`, `For example ${what === 'part' ? 'armrest' : 'moulded'}=2.5,1.5,1.5,1`));
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
    ...cards.map((card) => heading(`Card: ${card.parts.map((part) => names.get(part) ?? part).join(', ')}`) + lines([...card.sentences, `${card.basis}.`])),
    cards.length === 0 ? '' : `\n${lines([mendCaution])}`,
  ].join('');
}
