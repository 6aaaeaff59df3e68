import type { MathNode } from 'mathjs';

type Parse = (text: string) => MathNode;

let parse: Parse | undefined;

/** The parser of formulas, once it was provided: the page loads it after its first picture, everything else has it from the start. */
export const formulaParser = (): Parse | undefined => parse;

export function provideParser(given: Parse): void {
  parse = given;
}
