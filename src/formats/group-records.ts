import type { ReadingRecord } from './reading-set.ts';

/** Readings of one row and specimen under the same conditions, no two of one kind. */
export function groupRecords(records: readonly ReadingRecord[]): ReadingRecord[][] {
  const open = new Map<string, ReadingRecord[]>();
  const groups: ReadingRecord[][] = [];
  for (const record of records) {
    const key = JSON.stringify({ ...record, data: undefined, line: undefined });
    const group = open.get(key);
    if (group !== undefined && !group.some((other) => other.data.quantity === record.data.quantity)) group.push(record);
    else {
      const fresh = [record];
      open.set(key, fresh);
      groups.push(fresh);
    }
  }
  return groups;
}
