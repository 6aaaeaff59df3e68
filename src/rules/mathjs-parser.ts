import { create, parseDependencies } from 'mathjs/number';
import { formulaParser, provideParser } from './formula-parser.ts';

/**
 * Lets formulas be parsed by a private instance with the parser alone: it holds no function that an expression could call, and its import
 * and config faces stay unreachable because nothing but its `parse` leaves it.
 */
export function provideMathjs(): void {
  if (formulaParser() === undefined) provideParser(create(parseDependencies, {}).parse);
}
