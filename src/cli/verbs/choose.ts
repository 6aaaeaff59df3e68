import type { Cabin } from '../../cabin/cabin.ts';
import type { Issue, Outcome } from '../../issue.ts';
import type { ChoicePlan, ChooseOptions, ChosenSet, FreeMix } from '../../plan/index.ts';
import type { Arguments, Terminal, Verb } from '../verb.ts';
import { hasErrors } from '../../issue.ts';
import { serialiseCabin } from '../../cabin/serialise-cabin.ts';
import { chooseSources, freeMix, withPicks } from '../../plan/index.ts';
import { pickListCsv } from '../../report/pick-list-csv.ts';
import { fixed } from '../../report/number-text.ts';
import { judgeOptions, loadFurtherCabins, loadJudgeInput } from '../load-cabin.ts';
import { filesAsked, writtenLines } from '../plan-files.ts';
import { listsOption, numberOption, pairsOption, readOptions } from '../plan-options.ts';
import { done, issueLines, jsonText, refused } from '../results.ts';
import { styled } from '../style.ts';
import { textTable, wrapped } from '../text-table.ts';
import { lastValue, usageIssue } from '../verb.ts';
import { workWatch } from '../work-watch.ts';

/** Points of the front that are printed. */
const frontPoints = 20;

export const choose: Verb = {
  name: 'choose',
  summary: 'Choose one source for each part: fewest clashes, then least over-use, then least cost.',
  operands: [{ name: 'CABIN', about: 'a cabin (.cabin.json), or `-` for the standard input' }],
  options: {
    ...judgeOptions,
    budget: { value: 'MONEY', about: 'most that one year may cost: pieces at the volume, tools and set-ups' },
    'max-lead': { value: 'WEEKS', about: 'longest lead time; a source that states none is then left out' },
    'max-suppliers': { value: 'NUMBER', about: 'most suppliers in all' },
    lock: { value: 'PART=SOURCE', about: 'keep a part on a source', multiple: true },
    share: { value: 'PART,PART', about: 'parts that one supplier must serve', multiple: true },
    'share-source': { value: 'PART,PART', about: 'parts that must stand by the source of one id', multiple: true },
    without: { value: 'SUPPLIER', about: 'leave a supplier out: what if it drops out', multiple: true },
    volume: { value: 'PIECES', about: 'pieces a year; the cabin\'s own where absent' },
    'series-paid': { about: 'tools and set-ups of sources in series are paid, and these have no lead time' },
    'release-frozen': { about: 'let carry-over parts change as well' },
    best: { value: 'NUMBER', about: 'how many sets, the best first; 3 where absent' },
    front: { about: `the front of cost and harmony, ${frontPoints} points of it at most` },
    'free-mix': { about: 'what comes of running all approved sources at once' },
    'mix-with': { value: 'CABIN', about: 'mix another colourway with it: what both carry over must hold in both; asks for the free mix', multiple: true },
    'time-limit': { value: 'SECONDS', about: 'for the whole plan; what the cabin says where absent, else 60' },
    currency: { value: 'CODE', about: 'money to reckon in, three capital letters (ISO 4217); what the cabin says where absent' },
    rate: { value: 'CODE=NUMBER', about: 'what one unit of another currency is worth in it; the cabin\'s own where absent', multiple: true },
    out: { value: 'FILE', about: 'write the cabin with the best set taken over' },
    csv: { value: 'FILE', about: 'write the best set as a list to order by: prices as stated and landed, lead times, and why each other source was not picked' },
  },
  detail: [
    'Clashes come first: a joint that clashes counts 1, an open one its probability of clashing, one that a decision accepts nothing. Then over-use of limits, weighted by what a customer sees and by length in metres. Then cost: yearly volume x landed piece (price, duty, freight), tools, set-ups, and once for each supplier its own set-up.',
    'Prices in several currencies are reckoned in one, at the rates that the cabin or --rate states.',
    'A part is carried over where a colourway marks it so, and its id and approved sources are the same in both.',
    'A module is served by one supplier. Carry-over parts stay as they are. Where the proof is not reached in time, the bound and the gap are given.',
    'Exit: 0 done, 1 no set is allowed, 2 bad input.',
  ],
  examples: [
    { command: 'adjoin choose shuttle.cabin.json', about: 'the best set, the next two, and why each other source was not picked' },
    { command: 'adjoin choose shuttle.cabin.json --budget 13000000 --max-suppliers 8 --front', about: 'within limits, with the front of cost and harmony' },
    { command: 'adjoin choose shuttle.cabin.json --without orvandel --json', about: 'what if a supplier drops out' },
    { command: 'adjoin choose slate.cabin.json --mix-with chalk.cabin.json', about: 'the sources that may run at once in both colourways' },
  ],
  async run(args, io) {
    const input = loadJudgeInput(args, io);
    const wanted = chooseOptions(args);
    if (input.value === undefined || wanted.value === undefined) return refused([...input.issues, ...wanted.issues], args.json);
    const { cabin, ruleBook, options } = input.value;
    const further = loadFurtherCabins(args, 'mix-with', io, input.value);
    const read = [...input.issues, ...further.issues];
    if (further.value === undefined) return refused(read, args.json);
    const mixed = [input.value, ...further.value];
    const plan = await chooseSources(cabin, ruleBook, { ...options, ...wanted.value }, workWatch(io));
    if (hasErrors(plan.issues)) return refused([...read, ...plan.issues], args.json);
    const mix = args.switches.has('free-mix') || mixed.length > 1 ? await freeMix(mixed.map((each) => each.cabin), mixed.map((each) => each.ruleBook), options) : undefined;
    if (mix !== undefined && hasErrors(mix.issues)) return refused([...read, ...mix.issues], args.json);
    const exit = plan.feasible ? 0 : 1;
    const [best] = plan.sets;
    const files = best === undefined ? [] : filesAsked(args, { out: () => serialiseCabin(withPicks(cabin, best.picks)), csv: () => pickListCsv(cabin, plan, best, wanted.value) });
    if (args.json) return done(jsonText(chooseJson(plan, mix)), { exit, files, stderr: issueLines(read) });
    return done(choiceText(cabin, plan, mix, io.terminal, mixed.map((each) => each.cabin)) + writtenLines(files), { exit, files, stderr: issueLines([...read, ...plan.issues, ...(mix?.issues ?? [])]) });
  },
};

function chooseOptions(args: Arguments): Outcome<ChooseOptions> {
  const issues: Issue[] = [];
  const timeLimitS = numberOption(args, 'time-limit', issues);
  const shares = (option: string, what: 'supplier' | 'source') => listsOption(args, option, issues).map((parts) => ({ parts, what }));
  const currency = lastValue(args, 'currency');
  if (currency !== undefined && !/^[A-Z]{3}$/u.test(currency)) issues.push(usageIssue('bad-currency', '--currency', currency, 'three capital letters (ISO 4217)'));
  const rates = Object.fromEntries(Object.entries(pairsOption(args, 'rate', issues)).map(([code, text]) => {
    if (!/^[A-Z]{3}$/u.test(code)) issues.push(usageIssue('bad-currency', '--rate', code, 'three capital letters (ISO 4217) before the rate'));
    if (!(Number(text) > 0) || !Number.isFinite(Number(text))) issues.push(usageIssue('bad-number', '--rate', text, 'a number above 0'));
    return [code, Number(text)];
  }));
  const value: ChooseOptions = {
    ...(currency === undefined ? {} : { currency }), ...(Object.keys(rates).length === 0 ? {} : { rates }),
    budget: numberOption(args, 'budget', issues),
    maxLeadWeeks: numberOption(args, 'max-lead', issues),
    maxSuppliers: numberOption(args, 'max-suppliers', issues, 1, true),
    volume: numberOption(args, 'volume', issues),
    locked: pairsOption(args, 'lock', issues),
    shares: [...shares('share', 'supplier'), ...shares('share-source', 'source')],
    without: args.values.get('without') ?? [],
    seriesPaid: args.switches.has('series-paid'),
    releaseFrozen: args.switches.has('release-frozen'),
    best: numberOption(args, 'best', issues, 1, true) ?? 3,
    front: args.switches.has('front') ? frontPoints : undefined,
    ...(timeLimitS === undefined ? {} : { timeLimitS }),
  };
  return readOptions(value, issues);
}

/** The plan as the command line prints it in JSON. */
export const chooseJson = (plan: ChoicePlan, mix: FreeMix | undefined): object => ({
  feasible: plan.feasible, proved: plan.proved, method: plan.method, bound: plan.bound, gap: plan.gap, sets: plan.sets,
  front: plan.front?.sets ?? [], frontSize: plan.front?.of, swaps: plan.swaps, notPicked: plan.notPicked, dropOuts: plan.dropOuts, present: plan.present, after: plan.after,
  volume: plan.volume, currency: plan.currency, words: plan.words, issues: plan.issues, ...(mix === undefined ? {} : { freeMix: mix }),
});

/** The plan as a person reads it. */
export function choiceText(cabin: Cabin, plan: ChoicePlan, mix: FreeMix | undefined, terminal: Terminal, mixed: readonly Cabin[] = [cabin]): string {
  const parts = new Map(cabin.parts.map((part) => [part.id, part]));
  const suppliers = new Map(cabin.suppliers.map((supplier) => [supplier.id, supplier.name]));
  const heading = (text: string): string => `\n${styled(text, 'strong', terminal)}\n`;
  const lines = (sentences: readonly string[]): string => sentences.flatMap((sentence) => wrapped(sentence, terminal.columns)).map((line) => `${line}\n`).join('');
  const supplierOf = (part: string, source: string): string => {
    const id = parts.get(part)?.sources.find((each) => each.id === source)?.supplier ?? source;
    return suppliers.get(id) ?? id;
  };
  const changes = plan.sets.slice(0, 1).flatMap((set) => set.changed.map((part) => ({
    cells: [parts.get(part)?.name ?? part, supplierOf(part, plan.present.picks[part]), supplierOf(part, set.picks[part]), set.picks[part]],
  })));
  const row = (name: string, set: ChosenSet) => ({ cells: [name, fixed(set.clashes, 2), String(set.clashing.length), String(set.open.length), fixed(set.overUse, 2), fixed(set.cost, 0), String(set.leadWeeks), String(set.suppliers.length), String(set.changed.length)] });
  const sets = (rows: readonly { readonly cells: readonly string[] }[]): string => textTable([
    { title: 'set' }, { title: 'clashes', align: 'right' }, { title: 'clashing', align: 'right' }, { title: 'open', align: 'right' }, { title: 'over-use', align: 'right' },
    { title: `cost ${plan.currency}`.trim(), align: 'right' }, { title: 'lead weeks', align: 'right' }, { title: 'suppliers', align: 'right' }, { title: 'changed', align: 'right' },
  ], rows, terminal);
  return [
    lines(plan.words),
    heading('Sets'),
    sets([row('as it is', plan.present), ...plan.sets.map((set, index) => row(index === 0 ? 'best' : `next ${index}`, set))]),
    changes.length === 0 ? '' : heading('Parts that change in the best set') + textTable([{ title: 'part' }, { title: 'from' }, { title: 'to' }, { title: 'source' }], changes, terminal),
    plan.front === undefined ? '' : heading(`Front of cost and harmony${plan.front.of === undefined ? '' : `, ${plan.front.sets.length} of ${plan.front.of} points`}`)
      + sets(plan.front.sets.map((set, index) => row(`${index + 1}${set.proved ? '' : ' (not proved)'}`, set))),
    plan.notPicked.length === 0 ? '' : heading('Why the others were not picked') + lines(plan.notPicked.map(({ sentence }) => sentence)),
    plan.dropOuts.length === 0 ? '' : heading('If a supplier drops out') + lines(plan.dropOuts.map(({ sentence }) => sentence)),
    mix === undefined ? '' : heading('All approved sources at once') + lines(mix.words) + harmTable(mix, mixed, terminal),
  ].join('');
}

/** Sources of the mix that are listed by their harm. */
const mostHarm = 10;

function harmTable(mix: FreeMix, cabins: readonly Cabin[], terminal: Terminal): string {
  const harmful = mix.harm.filter(({ harm }) => harm > 0).slice(0, mostHarm);
  if (harmful.length === 0) return '';
  const perCent = (share: number): string => fixed(100 * share, 1);
  const several = mix.cabins.length > 1;
  return `\n${textTable([
    { title: 'part' }, { title: 'supplier' }, { title: 'source' }, ...(several ? [{ title: 'cabins' }] : []), { title: 'volume %', align: 'right' as const }, { title: 'clash with it %', align: 'right' as const }, { title: 'without it %', align: 'right' as const }, { title: 'saves %', align: 'right' as const },
  ], harmful.map((one) => {
    const cabin = cabins.find(({ id }) => id === one.cabins[0]);
    const part = cabin?.parts.find(({ id }) => id === one.part);
    const supplier = part?.sources.find(({ id }) => id === one.source)?.supplier ?? '';
    const name = cabin?.suppliers.find(({ id }) => id === supplier)?.name ?? supplier;
    return { cells: [part?.name ?? one.part, name, one.source, ...(several ? [one.cabins.map((id) => cabins.find((each) => each.id === id)?.colourway ?? id).join(', ')] : []), perCent(one.share), perCent(one.with), perCent(one.without), perCent(one.harm)] };
  }), terminal)}`;
}
