import type { UserLight } from '../cabin/cabin.ts';
import { questionsOf } from './reading-questions.ts';
import type { FoundConditions, ReadingRecord, ReadingSet } from './reading-set.ts';

/** Gathers what a reader finds; equal conditions are kept once. */
export interface ReadingCollector {
  /** Index of these conditions in the set. */
  conditions(found: FoundConditions): number;
  add(record: ReadingRecord): void;
  addLight(light: UserLight): void;
  readonly count: number;
  finish(about: Pick<ReadingSet, 'reader' | 'file' | 'sha256' | 'created'>): ReadingSet;
}

export function collectReadings(): ReadingCollector {
  const indices = new Map<string, number>();
  const conditions: FoundConditions[] = [];
  const records: ReadingRecord[] = [];
  const lights: UserLight[] = [];
  return {
    conditions(found) {
      const { instrument, serial, calibratedOn, geometry, apertureMm, uv, aspecularDeg, backing, temperatureC } = found;
      const key = JSON.stringify([instrument, serial, calibratedOn, geometry, apertureMm, uv, aspecularDeg, backing, temperatureC]);
      const known = indices.get(key);
      if (known !== undefined) return known;
      indices.set(key, conditions.length);
      return conditions.push(defined(found)) - 1;
    },
    add: (record) => { records.push(record); },
    addLight: (light) => { lights.push(light); },
    get count() {
      return records.length + lights.length;
    },
    finish: (about) => withQuestions({ format: 'adjoin-readings', version: 1, ...defined(about), conditions, records, lights }),
  };
}

/** The set with the questions that it leaves open. */
export const withQuestions = (set: Omit<ReadingSet, 'questions'>): ReadingSet => ({ ...set, questions: questionsOf(set) });

/** The object without its members that are undefined. */
export const defined = <T extends object>(value: T): T => Object.fromEntries(Object.entries(value).filter(([, member]) => member !== undefined)) as T;
