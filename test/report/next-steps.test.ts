import { describe, expect, test } from 'vitest';
import { prepareReport, reportCsv, reportHtml, reportModel } from '../../src/report/index.ts';
import { builtInRuleBooks } from '../../src/rules/index.ts';
import { demoCabin } from '../demo-data/demo-cabins.ts';
import { readCsv } from './read-csv.ts';

const [book] = builtInRuleBooks;
const asked = { files: [], validation: [] };
const slate = reportModel(await prepareReport(demoCabin('shuttle-slate'), book, asked));
const step = (joint: string) => slate.nextSteps.find((one) => one.joint === joint);
/** Planted troubles, from the readme of the demo data. */
const [dash, lid, console, shroud] = ['upper-dash--door-roll-left', 'mid-dash-right--glovebox-lid', 'console-frame--console-lid', 'knee-panel--column-shroud'];

describe('who is to act', () => {
  test('every clash without a decision in force has a step, no other joint has one', () => {
    expect(slate.nextSteps.map(({ joint }) => joint).toSorted()).toEqual([dash, lid, console, shroud].toSorted());
  });

  test('a part that is off its own master is brought back by its supplier', () => {
    expect(step(lid)?.act).toEqual([{ part: 'glovebox-lid', supplier: 'Orvandel Mouldings', because: 'off its master' }]);
    expect(step(lid)?.sentences[0]).toMatch(/^Glove box lid is off its own master \(\d+ % of that limit\): Orvandel Mouldings brings it back first\.$/);
    expect(step(lid)?.sentences).toContain('The decision that accepted it is void.');
  });

  test('two that are inside their masters move by agreement, a near miss by its targets', () => {
    expect(step(dash)?.act.map(({ part, because }) => [part, because])).toEqual([['door-roll-left', 'inside its master'], ['upper-dash', 'inside its master']]);
    // Planted within 60 and 70 % of their masters' limit.
    expect(step(dash)?.sentences[0]).toContain('(70 % and 60 %)');
    expect(step(console)?.sentences[0]).toContain('the targets themselves stand too close');
    expect(step(console)?.sentences).toContain('The decision that accepted it expired on 2026-04-30.');
  });

  test('texture has no master: both suppliers agree', () => {
    expect(step(shroud)?.sentences[0]).toBe('No master speaks of it: Orvandel Mouldings and Tulvering Plastics agree which side moves.');
  });

  test('another source is named only where judging the part by it leaves fewer clashes', () => {
    for (const { joint, sentences } of slate.nextSteps) {
      const parts = slate.joints.find(({ id }) => id === joint)?.result.parts ?? [];
      const better = slate.sources.filter(({ part, sources }) => parts.some((id) => id === part) && sources.some((other) => other.clashes < (sources.find(({ chosen }) => chosen)?.clashes ?? 0)));
      expect(sentences.filter((sentence) => sentence.includes(' instead: of its '))).toHaveLength(better.length);
    }
  });

  test('the first page, the block of the joint and the CSV say the same', async () => {
    const input = await prepareReport(demoCabin('shuttle-slate'), book, asked);
    const page = reportHtml(input);
    const rows = readCsv(reportCsv(input)).filter(({ row }) => row === 'next step');
    for (const { joint, act, sentences } of slate.nextSteps) {
      expect(page.split(sentences[0]).length - 1).toBe(2);
      expect(rows.filter(({ id }) => id === joint).map(({ subject, supplier, sentence }) => [subject, supplier, sentence])).toEqual(act.map(({ part, supplier }) => [part, supplier, sentences.join(' ')]));
    }
  });

  test('a cabin whose clashes are all accepted has none to act', async () => {
    const cabin = demoCabin('shuttle-slate');
    const judged = reportModel(await prepareReport(cabin, book, asked));
    const joints = cabin.joints.map((joint) => {
      const checks = judged.joints.find(({ id }) => id === joint.id)?.result.checks.filter(({ verdict, standing }) => verdict === 'clashes' && standing !== 'advisory') ?? [];
      return checks.length === 0 ? joint : {
        ...joint, decisions: checks.map((check, index) => ({
          id: `all-${joint.id}-${index}`, check: check.check, reason: 'Agreed for this test.', role: 'design quality', date: '2026-05-01', expires: '2026-12-31', value: check.check === 'near-miss' ? 0 : 99,
          ...(check.light === undefined ? {} : { light: check.light }), ...(check.criterion === undefined ? {} : { criterion: check.criterion }),
        })),
      };
    });
    const input = await prepareReport({ ...cabin, joints }, book, asked);
    expect(reportModel(input).summary).toMatchObject({ clashes: 0, accepted: 5 });
    expect(reportModel(input).nextSteps).toEqual([]);
    const text = reportHtml(input).replace(/<style>[\s\S]*?<\/style>/, '').replace(/<[^>]+>/g, ' ');
    expect(text).toContain('No joint clashes beyond the 5 that were accepted.');
    expect(text).not.toContain('Who acts');
  });
});
