import { describeValue, plain } from '../cabin/schema/index.ts';
import type { Schema } from '../cabin/schema/index.ts';
import { checkExpression } from './expression.ts';
import type { Expression } from './rule-book.ts';

/**
 * A limit or factor of a book: a number, or a formula that passes `checkExpression`.
 * Every fault of a formula is told with the character it stands at and the formula itself.
 */
export const expression = (options: { readonly positive: boolean }): Schema<Expression> => {
  const expected = `a number or a formula${options.positive ? ' with results above 0' : ''}`;
  return plain(expected, (value, faults) => {
    if (typeof value !== 'number' && typeof value !== 'string') {
      faults.add('wrong-type', { expected, found: describeValue(value) });
      return undefined;
    }
    const { ok, issues } = checkExpression(value, options);
    if (ok) return value;
    for (const issue of issues) {
      const place = typeof value === 'string' ? ` at character ${issue.column ?? 1} of ${describeValue(value)}` : '';
      faults.add(issue.code, {
        found: `${issue.found ?? 'a fault'}${place}`,
        ...(issue.expected === undefined ? {} : { expected: issue.expected }),
        ...(issue.hint === undefined ? {} : { hint: issue.hint }),
      });
    }
    return undefined;
  });
};
