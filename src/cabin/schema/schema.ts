import type { Faults } from './faults.ts';

/**
 * What a value must be. Schemas are built from small ones by the functions of this folder and walked by `read`.
 */
export interface Schema<T> {
  /** What is expected, in words that follow "expected". */
  readonly expected: string;
  /**
   * The value brought to its shape, or undefined. Every fault is added to `faults` at its path. After an error the
   * result may lack the members that were faulty, so it serves only to look for further faults.
   */
  read(value: unknown, faults: Faults): T | undefined;
  /** The same value with the keys of its objects in the order of the schema; nothing is checked, dropped or filled in. */
  arrange(value: unknown): unknown;
}

/** A schema whose values have no keys to arrange. */
export const plain = <T>(expected: string, read: Schema<T>['read']): Schema<T> => ({ expected, read, arrange: (value) => value });

/** A schema with a further check of values that passed it. */
export const refine = <T>(schema: Schema<T>, check: (value: T, faults: Faults) => void): Schema<T> => ({
  ...schema,
  read(value, faults) {
    const before = faults.errors();
    const result = schema.read(value, faults);
    if (result !== undefined && faults.errors() === before) check(result, faults);
    return result;
  },
});
