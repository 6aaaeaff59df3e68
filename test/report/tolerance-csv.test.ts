import { csvParse } from 'd3';
import { expect, test } from 'vitest';
import { apportionCabin } from '../../src/plan/index.ts';
import { toleranceCsv } from '../../src/report/tolerance-csv.ts';
import { defaultBook } from '../../src/rules/default-book.ts';
import { plannedCabin } from '../plan/support/planned-cabin.ts';

/** Read back by an independent reader of CSV. */
test('a sheet holds the tolerances of one supplier in full precision, all suppliers together those of every part', async () => {
  const cabin = plannedCabin(3, { parts: 5, sources: 1, scatter: 0.03 });
  const plan = await apportionCabin(cabin, defaultBook, { draws: 20 });
  const all = csvParse(toleranceCsv(cabin, plan));
  expect(all.map((row) => row['id'])).toEqual(cabin.parts.map(({ id }) => id));
  plan.parts.forEach((part, index) => {
    expect(Number(all[index]!['radius'])).toBe(part.radius);
    expect(['L', 'a', 'b'].map((column) => Number(all[index]![column]))).toEqual([...part.target!]);
    expect(all[index]!['metric']!.split(' ').map(Number)).toEqual([...part.metric!]);
  });
  const [first] = plan.parts;
  const own = csvParse(toleranceCsv(cabin, plan, first!.supplier));
  expect(own.map((row) => row['id'])).toEqual(plan.parts.filter(({ supplier }) => supplier === first!.supplier).map(({ id }) => id));
});
