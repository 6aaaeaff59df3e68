import { createHash } from 'node:crypto';
import type { SourceFile } from '../../../src/cabin/cabin.ts';

/** Keeps the rows of the files that a session would have written, so that every reading names its file and row. */
export interface FileLog {
  row(file: string, day: string, cells: readonly (string | number)[]): { readonly file: string; readonly row: number };
  files(): SourceFile[];
}

export function fileLog(): FileLog {
  const texts = new Map<string, string[]>();
  return {
    row(file, day, cells) {
      const rows = texts.get(file) ?? [`day;specimen;spot;values`];
      texts.set(file, rows);
      rows.push([day, ...cells].join(';'));
      return { file, row: rows.length };
    },
    files: () =>
      [...texts].map(([id, rows]) => ({
        id,
        name: `${id}.csv`,
        sha256: createHash('sha256')
          .update(`${rows.join('\n')}\n`)
          .digest('hex'),
      })),
  };
}
