import { describe, expect, test } from 'vitest';
import type { Cabin, Source } from '../../src/cabin/cabin.ts';
import { runCommand } from '../../src/cli/router.ts';
import type { Issue } from '../../src/issue.ts';
import type { ChoicePlan } from '../../src/plan/index.ts';
import { memoryIo, parsed } from '../cli/memory-io.ts';
import { readCsv } from '../report/read-csv.ts';
import { plannedCabin } from './support/planned-cabin.ts';

/**
 * Worked by hand. Landed cost as the trade reckons it (common practice, no source): price, duty on the price, freight, packing and insurance to the line.
 * At 1,000 pieces a year, in EUR, one USD worth 0.9:
 *   near: 10.00 EUR a piece, tool 5,000, set-up 400               -> 10,000 + 5,000 + 400 = 15,400
 *   far:   8.00 USD a piece, duty 6.5 %, freight 1.20, tool 4,000 -> 0.9 x (8.00 x 1.065 + 1.20) x 1,000 + 0.9 x 4,000 = 8,748 + 3,600 = 12,348
 * Both suppliers ask nothing for themselves.
 */
const base = plannedCabin(1, { parts: 1, sources: 2 });
const [near, far] = base.parts[0].sources;
const plain = ({ id, specimens, material, surface }: Source, more: Partial<Source>): Source => ({ id, specimens, material, surface, supplier: 'tarn', status: 'approved', leadWeeks: 8, ...more });
const cabin: Cabin = {
  ...base, volume: 1000, planning: { currency: 'EUR', rates: { USD: 0.9 } },
  parts: [{ ...base.parts[0], sources: [
    plain(near, { piecePrice: 10, toolCost: 5000, setupCost: 400, currency: 'EUR' }),
    plain(far, { piecePrice: 8, dutyShare: 0.065, freightPerPiece: 1.2, toolCost: 4000, currency: 'USD' }),
  ] }],
};
const run = (document: Cabin, ...words: readonly string[]) => runCommand(['choose', 'a.json', ...words], memoryIo({ 'a.json': JSON.stringify(document) }));
const costWith = async (document: Cabin, source: string, ...words: readonly string[]): Promise<number> =>
  parsed<ChoicePlan>(await run(document, '--lock', `p0=${source}`, ...words, '--json')).sets[0].cost;

describe('landed cost', () => {
  test('of each source, by hand', async () => {
    expect(await costWith(cabin, near.id)).toBe(15_400);
    expect(await costWith(cabin, far.id)).toBe(12_348);
  });

  test('a rate that is given goes before the cabin\'s; another money to reckon in turns them round', async () => {
    expect(await costWith(cabin, far.id, '--rate', 'USD=1')).toBe(13_720);
    expect(await costWith(cabin, near.id, '--currency', 'USD', '--rate', 'EUR=1.1')).toBe(16_940);
    expect(parsed<ChoicePlan>(await run(cabin, '--currency', 'USD', '--rate', 'EUR=1.1', '--json')).currency).toBe('USD');
  });

  test('prices without a rate, or in several monies with none to reckon in, are refused', async () => {
    const codes = async (document: Cabin): Promise<readonly string[]> => {
      const result = await run(document, '--json');
      expect(result.exit).toBe(2);
      return parsed<{ readonly issues: readonly Issue[] }>(result).issues.filter(({ severity }) => severity === 'error').map(({ code }) => code);
    };
    expect(await codes({ ...cabin, planning: { currency: 'EUR' } })).toEqual(['no-rate']);
    expect(await codes({ ...cabin, planning: undefined })).toEqual(['mixed-currencies']);
  });

  test('the list to order by says how each came to be', async () => {
    const result = await run(cabin, '--csv', 'picks.csv', '--lock', `p0=${far.id}`);
    expect(result.files.map(({ path }) => path)).toEqual(['picks.csv']);
    const [row] = readCsv(String(result.files[0].content));
    const cell = (column: string): string => row[column] ?? '';
    expect(['source', 'currencyStated', 'priceStated', 'rate', 'cost', 'currency', 'leadWeeks'].map(cell)).toEqual([far.id, 'USD', '8', '0.9', '12348', 'EUR', '8']);
    expect(Number(cell('landedPiece'))).toBeCloseTo(8.748, 9);
    expect(cell('instead')).toContain('the part is locked to another source');
  });
});
