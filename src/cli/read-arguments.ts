import type { Issue, Outcome } from '../issue.ts';
import type { Arguments, OptionSpec, Verb } from './verb.ts';
import { parseArgs } from 'node:util';
import { nearestName } from '../cabin/schema/nearest-name.ts';
import { usageIssue } from './verb.ts';

const common: Readonly<Record<string, OptionSpec>> = {
  json: { about: 'print one JSON document, numbers in full precision' },
  help: { about: 'print this help' },
};

/** Options of a verb with those that every verb has. */
export const optionsOf = (verb: Verb): Readonly<Record<string, OptionSpec>> => ({ ...verb.options, ...common });

/** Whether the words ask for JSON, known before they are checked so that usage faults can be JSON as well. */
export function asksForJson(words: readonly string[]): boolean {
  const end = words.indexOf('--');
  return (end < 0 ? words : words.slice(0, end)).includes('--json');
}

/** Checks the words after the verb against its list; all faults are listed, not the first only. */
export function readArguments(verb: Verb, words: readonly string[]): Outcome<Arguments> {
  const specs = optionsOf(verb);
  const issues: Issue[] = [];
  const operands: string[] = [];
  const switches = new Set<string>();
  const values = new Map<string, string[]>();
  const { tokens } = parseArgs({
    args: [...words],
    options: Object.fromEntries(Object.entries(specs).map(([name, spec]) =>
      [name, spec.value === undefined ? { type: 'boolean' as const } : { type: 'string' as const, multiple: true }])),
    strict: false, allowPositionals: true, tokens: true,
  });
  for (const token of tokens) {
    if (token.kind === 'positional') operands.push(token.value);
    if (token.kind !== 'option') continue;
    const spec = Object.hasOwn(specs, token.name) ? specs[token.name] : undefined;
    if (spec === undefined) {
      issues.push(unknownOption(verb, token.rawName));
    } else if (spec.value === undefined) {
      if (token.value === undefined) switches.add(token.name);
      else issues.push(usageIssue('value-not-wanted', token.rawName, token.value, 'a switch without a value'));
    } else if (token.value === undefined || (!token.inlineValue && token.value.startsWith('--'))) {
      issues.push(usageIssue('missing-value', token.rawName, undefined, `a value after it: ${token.rawName} ${spec.value}`));
    } else if (spec.choices && !spec.choices.includes(token.value)) {
      issues.push(usageIssue('unknown-value', token.rawName, token.value, `one of ${spec.choices.join(', ')}`, didYouMean(token.value, spec.choices)));
    } else if (values.has(token.name) && !spec.multiple) {
      issues.push(usageIssue('given-twice', token.rawName, token.value, 'the option once'));
    } else {
      values.set(token.name, [...(values.get(token.name) ?? []), token.value]);
    }
  }
  for (const missing of verb.operands.slice(operands.length).filter((operand) => !operand.optional)) {
    issues.push(usageIssue('missing-argument', missing.name, undefined, missing.about, `\`adjoin ${verb.name} --help\` shows the usage`));
  }
  for (const extra of operands.slice(verb.operands.length)) {
    issues.push(usageIssue('too-many-arguments', 'arguments', extra, verb.operands.length === 0 ? 'no argument' : `only ${verb.operands.map((operand) => operand.name).join(' ')}`));
  }
  return { value: issues.length ? undefined : { operands, switches, values, json: switches.has('json') }, issues };
}

function unknownOption(verb: Verb, rawName: string): Issue {
  const names = Object.keys(optionsOf(verb)).map((name) => `--${name}`);
  return usageIssue('unknown-option', rawName, undefined, `an option of \`adjoin ${verb.name}\``,
    didYouMean(rawName, names) ?? `\`adjoin ${verb.name} --help\` lists them`);
}

/** A hint with the nearest name, if one is near. */
export function didYouMean(word: string, names: readonly string[]): string | undefined {
  const near = nearestName(word, names);
  return near === undefined ? undefined : `Did you mean ${near}?`;
}
