import type { Terminal, Verb } from './verb.ts';
import { optionsOf } from './read-arguments.ts';
import { styled } from './style.ts';
import { wrapped } from './text-table.ts';

const optionWord = (name: string, value: string | undefined): string => `--${name}${value === undefined ? '' : ` ${value}`}`;

/** Help of one verb: usage, arguments, options with their choices, detail, examples. */
export function verbHelp(verb: Verb, terminal: Terminal): string {
  const options = Object.entries(optionsOf(verb));
  const words = options.map(([name, spec]) => optionWord(name, spec.value));
  const width = Math.max(...words.map((word) => word.length), ...verb.operands.map((operand) => operand.name.length)) + 4;
  const columns = Math.min(terminal.columns, 100);
  const entry = (word: string, about: string): string => {
    const [first, ...rest] = wrapped(about, columns - width);
    return [`  ${word.padEnd(width - 2)}${first}`, ...rest.map((line) => ' '.repeat(width) + line)].join('\n');
  };
  const usage = ['adjoin', verb.name, ...verb.operands.map((operand) => (operand.optional ? `[${operand.name}]` : operand.name)), '[options]'].join(' ');
  const title = (text: string): string => styled(text, 'strong', terminal);
  const blocks = [
    `${usage}\n\n${wrapped(verb.summary, columns).join('\n')}`,
    ...(verb.operands.length ? [`${title('Arguments')}\n${verb.operands.map((operand) => entry(operand.name, operand.about)).join('\n')}`] : []),
    `${title('Options')}\n${options.map(([, spec], index) => entry(words[index],
      `${spec.about}${spec.choices ? ` (${spec.choices.join(', ')})` : ''}${spec.multiple ? '; may be repeated' : ''}`)).join('\n')}`,
    ...verb.detail.map((paragraph) => paragraph.split('\n').flatMap((line) => (line.startsWith('  ') ? [line] : wrapped(line, columns))).join('\n')),
    ...(verb.examples.length
      ? [`${title('Examples')}\n${verb.examples.map((example) => `  ${example.command}\n      ${example.about}`).join('\n')}`] : []),
  ];
  return `${blocks.join('\n\n')}\n`;
}

/** The list of verbs. */
export function generalHelp(verbs: readonly { readonly name: string; readonly summary: string }[], terminal: Terminal): string {
  const width = Math.max(...verbs.map((verb) => verb.name.length)) + 4;
  const columns = Math.min(terminal.columns, 100);
  const lines = verbs.map((verb) => {
    const [first, ...rest] = wrapped(verb.summary, columns - width);
    return [`  ${verb.name.padEnd(width - 2)}${first}`, ...rest.map((line) => ' '.repeat(width) + line)].join('\n');
  });
  return [
    'adjoin VERB [arguments] [options]',
    '',
    ...wrapped('Says where two neighbouring parts of a vehicle cabin clash in colour, gloss or texture, by how much, under which light, and whether the readings are good enough to say so.', columns),
    '',
    styled('Verbs', 'strong', terminal),
    ...lines,
    '',
    ...wrapped('`adjoin VERB --help` explains a verb. Every verb takes --json; a FILE may be `-` for the standard input.', columns),
    ...wrapped('Exit: 0 done, 1 the answer is no (an unaccepted clash, a failed check of the formulas), 2 bad input or usage, 3 a fault of the program.', columns),
    '',
  ].join('\n');
}
