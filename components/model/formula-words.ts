import { ruleConstants, ruleFunctions, ruleVariables } from '../../src/rules/index.ts';

/** A name that a formula may use, as the list under its field shows it. */
export interface FormulaWord {
  readonly name: string;
  /** What is written for it. */
  readonly written: string;
  readonly kind: 'variable' | 'function' | 'constant';
  readonly meaning: string;
}

const words: readonly FormulaWord[] = [
  ...ruleVariables.map(({ name, meaning }): FormulaWord => ({ name, written: name, kind: 'variable', meaning })),
  ...ruleFunctions.map(({ name, meaning }): FormulaWord => ({ name, written: `${name}(`, kind: 'function', meaning })),
  ...ruleConstants.map(({ name, meaning }): FormulaWord => ({ name, written: name, kind: 'constant', meaning })),
];

/** The beginning of a name before the caret, and where it begins. */
export function wordBefore(text: string, caret: number): { readonly from: number; readonly word: string } {
  const word = /[A-Za-z_]\w*$/.exec(text.slice(0, caret))?.[0] ?? '';
  return { from: caret - word.length, word };
}

/** Names that go on from what stands before the caret: those that begin so first, then those that hold it; all where nothing stands there. */
export function completions(text: string, caret: number): readonly FormulaWord[] {
  const word = wordBefore(text, caret).word.toLowerCase();
  const begins = words.filter(({ name }) => name.toLowerCase().startsWith(word));
  return [...begins, ...words.filter((one) => word !== '' && !begins.includes(one) && one.name.toLowerCase().includes(word))];
}

/** The text with the name in place of its beginning, and the caret behind it. */
export function completed(text: string, caret: number, word: FormulaWord): { readonly text: string; readonly caret: number } {
  const { from } = wordBefore(text, caret);
  const rest = /^\w*/.exec(text.slice(caret))?.[0].length ?? 0;
  const after = text.slice(caret + rest);
  const written = word.kind === 'function' && after.startsWith('(') ? word.name : word.written;
  return { text: text.slice(0, from) + written + after, caret: from + written.length };
}
