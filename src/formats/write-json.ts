import type { Outcome } from '../issue.ts';
import type { FormatWriter } from './format-writer.ts';
import { numberText } from './format-writer.ts';

/** Readings as the product's own JSON: everything that is known, a line a reading. Questions are left out, since they follow from the readings. */
export const jsonWriter: FormatWriter = {
  id: 'json', label: 'JSON', extension: '.json',
  write({ format, version, reader, file, sha256, created, conditions, records, lights }, options = {}): Outcome<string> {
    const members = Object.entries({ format, version, reader, file, sha256, created: options.created ?? created }).filter(([, value]) => value !== undefined);
    const lines = [
      ...members.map(([key, value]) => `  ${json(key)}: ${json(value)}`),
      ...Object.entries({ conditions, records, lights }).map(([key, list]) => `  ${json(key)}: [${list.map((item) => `\n    ${json(item)}`).join(',')}${list.length === 0 ? '' : '\n  '}]`),
    ];
    return { value: `{\n${lines.join(',\n')}\n}\n`, issues: [] };
  },
};

/** As JSON.stringify, with the sign of zero kept. */
function json(value: unknown): string {
  if (typeof value === 'number') return numberText(value);
  if (Array.isArray(value)) return `[${value.map(json).join(',')}]`;
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  return `{${Object.entries(value).filter(([, member]) => member !== undefined).map(([key, member]) => `${JSON.stringify(key)}:${json(member)}`).join(',')}}`;
}
