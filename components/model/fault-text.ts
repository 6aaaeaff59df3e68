import type { Issue } from '../../src/issue.ts';

/** The argument of an action that an issue is about. */
export const argumentOf = ({ path = '' }: Issue): string => path.split(/[.[]/)[0] ?? '';

/** What is wrong with an entry, in a sentence. */
export const faultText = ({ code, found, expected, hint }: Issue): string =>
  [expected === undefined ? code.replaceAll('-', ' ') : `Expected ${expected}${found === undefined ? '' : `, found ${found}`}`, hint].filter(Boolean).join('. ');
