const formula = /^'*[\s\u00a0\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20\t\r\n]/u;
const escaped = /^''*[\s\u00a0\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20\t\r\n]/u;

/**
 * Text that a spreadsheet would run as a formula (it begins with `=`, `+`, `-`, `@`, their wide forms, a tab or a line break,
 * behind blanks as well) with an apostrophe in front, and the way back. `remove(add(text))` is the text, whatever it is.
 */
export const inertText = {
  add: (text: string): string => (formula.test(text) ? `'${text}` : text),
  remove: (text: string): string => (escaped.test(text) ? text.slice(1) : text),
};
