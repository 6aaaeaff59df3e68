import type { Cabin } from '../cabin/cabin.ts';
import type { Issue, Outcome } from '../issue.ts';
import type { InputFile } from '../report/index.ts';
import type { RuleBook } from '../rules/rule-book.ts';
import type { Arguments, Io } from './verb.ts';
import { parseCabin } from '../cabin/index.ts';
import { nearestName } from '../cabin/schema/nearest-name.ts';
import { hasErrors } from '../issue.ts';
import { builtInRuleBooks, parseRuleBook, restoreRuleBook, ruleBookById } from '../rules/index.ts';
import { readInput } from './read-input.ts';
import { provideMathjs } from '../rules/mathjs-parser.ts';
import { lastValue, usageIssue } from './verb.ts';

provideMathjs();

/** A cabin with the book to judge it by and how it is to be judged. */
export interface JudgeInput {
  readonly cabin: Cabin;
  readonly ruleBook: RuleBook;
  readonly files: readonly InputFile[];
  readonly options: { readonly stage?: string; readonly asOf?: string; readonly strict?: boolean };
}

/** Options that `check` and `report` share. */
export const judgeOptions = {
  rules: { value: 'RULEBOOK', about: 'rule book: a file, or the id of a built-in one; the one that the cabin names where absent' },
  stage: { value: 'NAME', about: 'stage that is judged, for example new or light-exposed; the one that the cabin names where absent' },
  'as-of': { value: 'DATE', about: 'day that decisions and calibrations are judged on, YYYY-MM-DD; the cabin\'s own where absent' },
} as const;

/** Reads cabin and rule book and checks the options against them; all faults of all files are listed. */
export function loadJudgeInput(args: Arguments, io: Io): Outcome<JudgeInput> {
  const [path] = args.operands;
  const rules = lastValue(args, 'rules');
  const cabin = loadDocument(path, io, parseCabin);
  const issues: Issue[] = [...cabin.issues];
  if (path === '-' && rules === '-') issues.push(usageIssue('stdin-twice', '--rules', '-', 'the standard input for one of the two files only'));
  const book: Outcome<Loaded<RuleBook>> = rules === undefined
    ? bookOfCabin(cabin.value?.value)
    : loadBook(rules, io);
  issues.push(...book.issues);
  const stage = lastValue(args, 'stage');
  const asOf = lastValue(args, 'as-of');
  if (asOf !== undefined && !isDate(asOf)) issues.push(usageIssue('bad-date', '--as-of', asOf, 'a day of the calendar as YYYY-MM-DD'));
  if (stage !== undefined && cabin.value) issues.push(...stageIssues('--stage', stage, cabin.value.value));
  if (!cabin.value || !book.value || hasErrors(issues)) return { value: undefined, issues };
  const files: InputFile[] = [{ role: 'cabin', name: cabin.value.name, sha256: cabin.value.sha256 }];
  if (book.value.sha256 !== '') files.push({ role: 'rule book', name: book.value.name, sha256: book.value.sha256 });
  return {
    value: { cabin: cabin.value.value, ruleBook: book.value.value, files, options: { stage, asOf, strict: args.switches.has('strict') } },
    issues,
  };
}

/** Options that name what a cabin is compared with. */
export const againstOptions = {
  against: { value: 'CABIN', about: 'compare with another cabin, as it was before: joints better, worse, changed, new and gone' },
  'against-stage': { value: 'NAME', about: 'compare with that stage, of the same cabin where --against is absent' },
} as const;

export interface Against {
  readonly cabin?: Cabin;
  readonly stage?: string;
  readonly files: readonly InputFile[];
}

/** What the cabin is compared with; no value and no issue where nothing was asked for. */
export function loadAgainst(args: Arguments, io: Io, own: Cabin): Outcome<Against> {
  const [path, stage] = [lastValue(args, 'against'), lastValue(args, 'against-stage')];
  if (path === undefined && stage === undefined) return { value: undefined, issues: [] };
  if (path === '-' && args.operands[0] === '-') return { value: undefined, issues: [usageIssue('stdin-twice', '--against', '-', 'the standard input for one of the two files only')] };
  const other = path === undefined ? undefined : loadDocument(path, io, parseCabin);
  const issues = [...(other?.issues ?? [])];
  if (path !== undefined && other?.value === undefined) return { value: undefined, issues };
  const cabin = other?.value?.value;
  if (stage !== undefined) issues.push(...stageIssues('--against-stage', stage, cabin ?? own));
  if (hasErrors(issues)) return { value: undefined, issues };
  const files: InputFile[] = other?.value === undefined ? [] : [{ role: 'compared cabin', name: other.value.name, sha256: other.value.sha256 }];
  return { value: { ...(cabin === undefined ? {} : { cabin }), ...(stage === undefined ? {} : { stage }), files }, issues };
}

/** Further cabins that an option names, each with the book to judge it by: the one that `--rules` gives, else its own. All faults of all files are listed. */
export function loadFurtherCabins(args: Arguments, option: string, io: Io, own: JudgeInput): Outcome<readonly Pick<JudgeInput, 'cabin' | 'ruleBook'>[]> {
  const issues: Issue[] = [];
  const found: Pick<JudgeInput, 'cabin' | 'ruleBook'>[] = [];
  for (const path of args.values.get(option) ?? []) {
    if (path === '-' && args.operands[0] === '-') {
      issues.push(usageIssue('stdin-twice', `--${option}`, '-', 'the standard input for one of the two files only'));
      continue;
    }
    const cabin = loadDocument(path, io, parseCabin);
    issues.push(...cabin.issues);
    if (cabin.value === undefined) continue;
    const book: Outcome<Pick<Loaded<RuleBook>, 'value'>> = lastValue(args, 'rules') === undefined ? bookOfCabin(cabin.value.value) : { value: { value: own.ruleBook }, issues: [] };
    issues.push(...book.issues);
    if (book.value !== undefined) found.push({ cabin: cabin.value.value, ruleBook: book.value.value });
  }
  return { value: hasErrors(issues) ? undefined : found, issues };
}

interface Loaded<T> {
  readonly value: T;
  readonly name: string;
  /** Empty for what did not come from a file of its own. */
  readonly sha256: string;
}

function loadDocument<T>(path: string, io: Io, parse: (text: string, file?: string) => Outcome<T>): Outcome<Loaded<T>> {
  const input = readInput(path, io);
  if (input.value === undefined) return { value: undefined, issues: input.issues };
  const { name, text, sha256 } = input.value;
  const parsed = parse(text, name);
  const issues = [...input.issues, ...parsed.issues];
  return { value: parsed.value === undefined ? undefined : { value: parsed.value, name, sha256 }, issues };
}

/** A built-in book by its id, else a file. */
function loadBook(rules: string, io: Io): Outcome<Loaded<RuleBook>> {
  const builtIn = ruleBookById(rules);
  if (builtIn) return { value: { value: builtIn, name: builtIn.id, sha256: '' }, issues: [] };
  const ids = builtInRuleBooks.map((book) => book.id);
  if (rules !== '-' && !io.exists(rules)) {
    const near = nearestName(rules, ids);
    return { value: undefined, issues: [usageIssue('unknown-rule-book', '--rules', rules, `a file, or one of ${ids.join(', ')}`, near === undefined ? undefined : `Did you mean ${near}?`)] };
  }
  return loadDocument(rules, io, parseRuleBook);
}

function bookOfCabin(cabin: Cabin | undefined): Outcome<Loaded<RuleBook>> {
  const wanted = cabin?.ruleBook;
  if (typeof wanted === 'object') {
    const restored = restoreRuleBook(wanted);
    const issues = restored.issues.map((issue) => ({ ...issue, path: issue.path ? `ruleBook.${issue.path}` : 'ruleBook' }));
    return { value: restored.value && { value: restored.value, name: restored.value.id, sha256: '' }, issues };
  }
  const book = wanted === undefined ? builtInRuleBooks[0] : ruleBookById(wanted);
  if (book) return { value: { value: book, name: book.id, sha256: '' }, issues: [] };
  const ids = builtInRuleBooks.map((candidate) => candidate.id);
  return {
    value: undefined,
    issues: [{
      code: 'unknown-rule-book', severity: 'error', path: 'ruleBook', found: String(wanted), expected: `one of ${ids.join(', ')}`,
      hint: 'Name a rule book with --rules',
    }],
  };
}

function stageIssues(option: string, stage: string, cabin: Cabin): Issue[] {
  const stages = new Set(['new', ...(cabin.stage === undefined ? [] : [cabin.stage])]);
  for (const source of cabin.parts.flatMap((part) => part.sources)) {
    for (const specimen of source.specimens) if (specimen.exposure) stages.add(specimen.exposure.stage);
    for (const named of Object.keys(source.standsBy ?? {})) stages.add(named);
  }
  if (stages.has(stage)) return [];
  const near = nearestName(stage, stages);
  return [usageIssue('unknown-stage', option, stage, `one of ${[...stages].join(', ')}`, near === undefined ? undefined : `Did you mean ${near}?`)];
}

/** Whether the text is a day of the calendar, `YYYY-MM-DD`. */
export function isDate(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const time = Date.parse(`${text}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(text);
}

