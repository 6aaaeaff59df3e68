import type { ReadingRecord } from './reading-set.ts';

/** CIELAB values and differences have light and observer of their own, which a row states once. */
const kindOf = ({ data: { quantity } }: ReadingRecord): string => (quantity === 'difference' ? 'cielab' : quantity);

/** Readings of one row and specimen under the same conditions, no two of one kind. */
export function groupRecords(records: readonly ReadingRecord[]): ReadingRecord[][] {
  const open = new Map<string, ReadingRecord[]>();
  const groups: ReadingRecord[][] = [];
  for (const record of records) {
    const key = JSON.stringify({ ...record, data: undefined, line: undefined });
    const group = open.get(key);
    if (group !== undefined && !group.some((other) => kindOf(other) === kindOf(record))) group.push(record);
    else {
      const fresh = [record];
      open.set(key, fresh);
      groups.push(fresh);
    }
  }
  return groups;
}
