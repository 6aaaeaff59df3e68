import type { Issue, Outcome } from '../issue.ts';
import type { ReadingSet } from './reading-set.ts';

export interface WriteOptions {
  /** Day or time of writing, given by the caller: writers have no clock, and the same input gives the same bytes. */
  readonly created?: string;
}

/** What every writer is. Warnings tell what the format cannot hold; with an error there is no text. */
export interface FormatWriter {
  readonly id: string;
  readonly label: string;
  /** Usual ending of the file's name. */
  readonly extension: string;
  write(set: ReadingSet, options?: WriteOptions): Outcome<string>;
}

/** Every digit of a double that is needed to read the same double again, and no more; the sign of zero is kept. */
export const numberText = (value: number): string => (Object.is(value, -0) ? '-0' : String(value));

/** The set without what only the product's own JSON can hold: textures that were only photographed. */
export const heldByTables = (set: ReadingSet): ReadingSet => {
  const records = set.records.filter(({ data }) => data.quantity !== 'texture' || Object.keys(data.parameters).length > 0);
  return records.length === set.records.length ? set : { ...set, records };
};

/** What stands in the way of writing readings in a format that others read. */
export function writeIssues(set: ReadingSet, label: string): Issue[] {
  const { lights } = set;
  const { records } = heldByTables(set);
  const visible = set.records.filter(({ data }) => data.quantity === 'texture' && data.visible !== undefined).length;
  const undeclared = records.filter(({ data }) => data.quantity === 'spectrum' && data.scaleUndeclared === true).length;
  return [
    ...(undeclared === 0 ? [] : [{
      code: 'scale-undeclared', severity: 'error' as const, found: `${undeclared} spectra of which nobody has said whether they are fractions or per cent`, expected: 'reflectance factors',
      hint: 'State the scale first; nothing is guessed.',
    }]),
    ...(records.length > 0 ? [] : [{ code: 'nothing-to-write', severity: 'error' as const, found: 'no reading', expected: `readings to write as ${label}` }]),
    ...(lights.length === 0 || records.length === 0 ? [] : [{ code: 'lights-not-held', severity: 'warning' as const, found: `${lights.length} lights`, expected: 'readings only', hint: `${label} is written without them.` }]),
    ...(visible === 0 ? [] : [{
      code: 'visible-texture-not-held', severity: 'warning' as const, found: `${visible} visible textures`, expected: 'parameters of textures', hint: `${label} is written without them; JSON holds them.`,
    }]),
  ];
}
