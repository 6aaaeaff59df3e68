import { parseCabin } from '../cabin/parse-cabin.ts';
import { parseLocatedJson } from '../cabin/located-json.ts';
import { collectFaults } from '../cabin/schema/faults.ts';
import { isPlainObject } from '../cabin/schema/json-value.ts';
import type { Outcome } from '../issue.ts';
import { hasErrors } from '../issue.ts';
import { cabinReadings } from './cabin-readings.ts';
import type { FormatInput, FormatReader } from './format-reader.ts';
import { defined, withQuestions } from './reading-collector.ts';
import type { ReadingSet } from './reading-set.ts';
import { readingSetShape } from './reading-set-shape.ts';

/** The product's own JSON: a set of readings (`adjoin-readings`), or all readings of a cabin (`adjoin-cabin`). */
export const jsonReader: FormatReader = {
  id: 'json', label: 'Readings or cabin of this product (JSON)', extensions: ['.json'],
  sniff(text) {
    const start = text.slice(0, 4000);
    if (!/^\ufeff?\s*\{/u.test(start)) return /^\ufeff?\s*\[/u.test(start) ? 0.3 : 0;
    return /"format"\s*:\s*"adjoin-/u.test(start) ? 1 : 0.6;
  },
  read({ text, file, sha256 }: FormatInput): Outcome<ReadingSet> {
    const json = parseLocatedJson(text, file);
    if (json.value === undefined) return { value: undefined, issues: json.issues };
    if (isPlainObject(json.value) && json.value['format'] === 'adjoin-cabin') {
      const cabin = parseCabin(text, file);
      return { value: cabin.value && cabinReadings(cabin.value, { file, sha256 }), issues: cabin.issues };
    }
    const faults = collectFaults();
    const set = readingSetShape.read(json.value, faults);
    const issues = [...json.issues, ...json.locate(faults.list())];
    if (hasErrors(issues) || set === undefined) return { value: undefined, issues };
    const { format, version, created, conditions, records, lights } = set;
    return { value: withQuestions(defined({ format, version, reader: 'json', file, sha256, created, conditions, records, lights })), issues };
  },
};
