import type { CommandResult, Io } from '../../src/cli/verb.ts';
import { createHash } from 'node:crypto';
import { runCommand } from '../../src/cli/router.ts';

const encoder = new TextEncoder();

/** A world of files in memory; `-` is the standard input. */
export function memoryIo(files: Readonly<Record<string, string | Uint8Array>> = {}, terminal: Io['terminal'] = { colour: false, columns: 100 }): Io {
  return {
    read: (path) => {
      const content = files[path];
      if (content === undefined) return { value: undefined, issues: [{ code: 'cannot-read', severity: 'error', file: path, found: 'no such file' }] };
      return { value: typeof content === 'string' ? encoder.encode(content) : content, issues: [] };
    },
    exists: (path) => path in files,
    sha256: (bytes) => createHash('sha256').update(bytes).digest('hex'),
    printPdf: () => Promise.resolve({ value: undefined, issues: [{ code: 'no-chromium', severity: 'error' }] }),
    terminal,
  };
}

/** A result whose files are text. */
export interface TextResult extends CommandResult {
  readonly files: readonly { readonly path: string; readonly content: string }[];
}

/** Runs a command line over files in memory. */
export async function run(words: readonly string[], files: Readonly<Record<string, string | Uint8Array>> = {}, terminal?: Io['terminal']): Promise<TextResult> {
  const result = await runCommand(words, memoryIo(files, terminal));
  return { ...result, files: result.files.map(({ path, content }) => ({ path, content: typeof content === 'string' ? content : new TextDecoder().decode(content) })) };
}

/** What `--json` printed. */
// The caller states the shape it then asserts.
export const parsed = <T>(result: CommandResult): T => JSON.parse(result.stdout) as T;
