import { describe, expect, test } from 'vitest';
import { judge } from '../../src/harmony/index.ts';
import { prepareReport, reportCsv, reportHtml, reportModel } from '../../src/report/index.ts';
import { reportDecisions } from '../../src/report/model/decisions.ts';
import { builtInRuleBooks } from '../../src/rules/index.ts';
import { coloured } from '../harmony/compare/coloured.ts';
import { glosses, partOf, twoPartCabin } from '../support/two-part-cabin.ts';
import { readCsv } from './read-csv.ts';

const [book] = builtInRuleBooks;
const asked = { files: [], validation: [] };
const side = (l: number) => ({ readings: [...coloured([l, 0, -1]), ...glosses(2)], gloss60: null });
/** The second part is 3 darker: far outside any match. */
const clashing = twoPartCabin(side(30), side(27), {
  proposals: [
    { id: 'whole', date: '2026-02-20', shifts: [{ part: 'b', dL: 3 }], note: 'Lighter by the whole difference.' },
    { id: 'little', date: '2026-02-20', shifts: [{ part: 'b', dL: 0.2 }] },
  ],
});

describe('proposed changes', () => {
  test('are judged by the ordinary check: the whole difference mends the joint, a little of it does not', async () => {
    const { proposals } = reportModel(await prepareReport(clashing, book, asked));
    expect(proposals.map(({ proposal, verdict, noLongerClashing, nowClashing }) => [proposal.id, verdict, noLongerClashing, nowClashing]))
      .toEqual([['whole', 'holds', ['a-b'], []], ['little', 'clashes', [], []]]);
  });

  test('stand in the block of their joint, in short on the first page, and in the CSV', async () => {
    const input = await prepareReport(clashing, book, asked);
    const page = reportHtml(input);
    expect(page).toContain('<strong>Proposed mend</strong>');
    expect(page).toContain('Lighter by the whole difference.');
    expect(page).toContain('they mend 1 of 1 clash');
    expect(readCsv(reportCsv(input)).filter(({ row }) => row === 'proposal').map(({ id, subject, verdict }) => [id, subject, verdict])).toEqual([['a-b', 'whole', 'holds'], ['a-b', 'little', 'clashes']]);
  });
});

describe('sources compared', () => {
  const other = partOf('b', 'Panel B', side(30)).sources[0];
  const cabin = { ...clashing, parts: clashing.parts.map((part) => (part.id === 'b' && other !== undefined ? { ...part, sources: [...part.sources, { ...other, id: 'other', piecePrice: 4.2 }] } : part)) };

  test('each stands in the place of the chosen one: the verdicts are those of the cabin with that source', async () => {
    const { sources } = reportModel(await prepareReport(cabin, book, asked));
    expect(sources.map(({ part, sources: rows }) => [part, rows.map(({ source, chosen, clashes, holds }) => [source, chosen, clashes, holds])]))
      .toEqual([['b', [['b-source', true, 1, 0], ['other', false, 0, 1]]]]);
    const swapped = judge({ ...cabin, parts: cabin.parts.map((part) => (part.id === 'b' ? { ...part, source: 'other' } : part)) }, book);
    expect(swapped.summary).toMatchObject({ clashes: 0, holds: 1 });
    expect(reportHtml(await prepareReport(cabin, book, asked))).toContain('Another source taken by itself would give fewer clashes at ');
  });

  test('are left out where there is no choice', async () => {
    expect(reportHtml(await prepareReport(clashing, book, asked))).not.toContain('id="sources"');
  });
});

describe('decisions', () => {
  const decided = (expires: string) => {
    const joint = clashing.joints[0];
    const colour = judge(clashing, book).joints[0].checks.find(({ check }) => check === 'colour');
    const decision = { id: 'd', check: 'colour' as const, reason: 'Agreed.', role: 'design quality', date: '2026-02-01', expires, value: 9, ...(colour?.light === undefined ? {} : { light: colour.light }) };
    const cabin = { ...clashing, joints: [{ ...joint, decisions: [decision] }] };
    const judgement = judge(cabin, book);
    return reportDecisions(cabin, new Map(judgement.joints.map((one) => [one.id, one])), judgement.asOf)[0];
  };

  // As of 2026-03-01; 90 days later is 2026-05-30.
  test.each([['2026-05-30', 'in force', true], ['2026-05-31', 'in force', false], ['2026-02-28', 'expired', false]])('until %s is %s, expiring: %s', (expires, status, expiring) => {
    expect(decided(expires)).toMatchObject({ status, expiring });
  });
});
