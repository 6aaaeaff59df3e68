import { afterEach, describe, expect, test, vi } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { answerReport } from '../../src/workers/answer-report.ts';
import { ReportBridge } from '../../src/workers/report-bridge.ts';
import type { ReportRequest } from '../../src/workers/report-protocol.ts';
import { mostInPiece, weightUpTo } from '../../src/workers/value-pieces.ts';
import { bigCabin } from '../bench/big-cabin.ts';

const bridges: ReportBridge[] = [];
const bridge = (): ReportBridge => {
  const made = new ReportBridge();
  bridges.push(made);
  return made;
};
afterEach(() => {
  vi.restoreAllMocks();
  for (const one of bridges.splice(0)) one.end();
});

/** So large that it goes in some ten pieces. */
const cabin = bigCabin({ parts: 500, joints: 60, seed: 9 });
const edited: Cabin = { ...cabin, name: 'Edited', joints: cabin.joints.toSpliced(5, 1), parts: cabin.parts.with(3, { ...cabin.parts[3], name: 'Other' } as Cabin['parts'][number]) };
const report = (of: Cabin): ReportRequest => ({ kind: 'report', cabin: of, file: 'big.cabin.json', formats: ['json', 'csv'] });

/** What every message to a worker weighs. */
function weighed(): number[] {
  const weights: number[] = [];
  const { postMessage } = Worker.prototype;
  vi.spyOn(Worker.prototype, 'postMessage').mockImplementation(function weighing(this: Worker, ...given: unknown[]) {
    weights.push(weightUpTo(given[0], 100 * mostInPiece));
    (postMessage as (...all: unknown[]) => void).apply(this, given);
  });
  return weights;
}

describe('reports and comparisons in a worker', () => {
  test('a report of a cabin that went there in pieces is the report of that cabin; after an edit its change alone goes there', async () => {
    const one = bridge();
    const weights = weighed();
    expect(await one.ask(report(cabin))).toEqual(await answerReport(report(cabin)));
    expect(weights.length).toBeGreaterThan(5);
    expect(Math.max(...weights)).toBeLessThan(1.1 * mostInPiece);
    weights.length = 0;
    expect(await one.ask(report(edited))).toEqual(await answerReport(report(edited)));
    expect(weights.reduce((sum, weight) => sum + weight, 0)).toBeLessThan(mostInPiece / 2);
  });

  test('a cabin that is compared is read there, comes to the page whole, and does not go back', async () => {
    const one = bridge();
    const weights = weighed();
    const read = await one.ask({ kind: 'read', text: new Blob([serialiseCabin(edited)]), file: 'other.cabin.json' });
    if (read.kind !== 'read') throw new Error(read.kind);
    expect(read.cabin).toEqual(JSON.parse(serialiseCabin(edited)));
    expect(weights).toHaveLength(1);
    const request: ReportRequest = { kind: 'compare', cabin, against: { cabin: read.cabin } };
    expect(await one.ask(request)).toEqual(await answerReport(request));
    weights.length = 0;
    // Both are known now.
    expect(await one.ask(request)).toMatchObject({ kind: 'compared' });
    expect(weights).toHaveLength(1);
  });

  test('what is left off is rejected, and what is asked next is answered by a worker that knows nothing yet; an idle one keeps what it knows', async () => {
    const one = bridge();
    const never = one.ask(report(cabin));
    const gone = expect(never).rejects.toThrow('enough');
    one.stop(new DOMException('enough', 'AbortError'));
    await gone;
    expect(await one.ask(report(cabin))).toMatchObject({ kind: 'written' });
    const weights = weighed();
    one.stop();
    expect(await one.ask(report(cabin))).toMatchObject({ kind: 'written' });
    expect(weights).toHaveLength(1);
  });
});
