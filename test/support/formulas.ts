import { provideMathjs } from '../../src/rules/mathjs-parser.ts';

// The page and the workers load the parser of formulas by themselves; a test of one module alone has no entry that would.
provideMathjs();
