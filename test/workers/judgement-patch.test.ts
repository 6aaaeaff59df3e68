import { expect, test } from 'vitest';
import { judgeCabin } from '../../src/harmony/judge.ts';
import { rejudge } from '../../src/harmony/rejudge.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { judgementPatch, patchJudgement } from '../../src/workers/judgement-patch.ts';
import { editsOf } from '../actions/random-edits.ts';
import { smallCabin } from '../support/small-cabin.ts';

test('a judgement followed through many edits by what is sent of each is the judgement of the last', () => {
  let judged = judgeCabin(smallCabin(), builtInRuleBooks[0]!);
  let followed = structuredClone(judged.judgement);
  let edits = 0;
  for (const cabin of editsOf(judged.context.cabin, Array.from({ length: 60 }, (_, index) => (index * 7919) % 5003))) {
    const next = rejudge(judged, cabin);
    followed = patchJudgement(followed, structuredClone(judgementPatch(judged.judgement, next.judgement)));
    judged = next;
    edits += 1;
  }
  expect(edits).toBeGreaterThan(10);
  expect(followed).toEqual(judged.judgement);
});
