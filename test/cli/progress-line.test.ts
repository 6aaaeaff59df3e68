import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { progressLine } from '../../src/cli/progress-line.ts';
import { runCommand } from '../../src/cli/router.ts';
import { bigCabin } from '../bench/big-cabin.ts';
import { plannedCabin } from '../plan/support/planned-cabin.ts';
import { memoryIo } from './memory-io.ts';

/** A terminal of so many columns as ECMA-48 has it: carriage return, line feed, "erase to the end of the line" (CSI K), and the next row where one is full. */
function screenOf(text: string, columns: number): readonly string[] {
  const rows = [''];
  let [row, column] = [0, 0];
  for (let at = 0; at < text.length; at++) {
    if (text.startsWith('\u001b[K', at)) {
      rows[row] = rows[row]!.slice(0, column);
      at += 2;
    } else if (text[at] === '\r') column = 0;
    else if (text[at] === '\n') {
      [row, column] = [row + 1, 0];
      rows[row] ??= '';
    } else {
      if (column === columns) {
        [row, column] = [row + 1, 0];
        rows[row] ??= '';
      }
      rows[row] = rows[row]!.slice(0, column).padEnd(column) + text[at] + rows[row]!.slice(column + 1);
      column++;
    }
  }
  return rows;
}

describe('what plans tell of themselves, on terminals wide and narrow', () => {
  test.each([80, 40, 12])('%i columns: one row that is overwritten and taken away', async (columns) => {
    const files = { 'a.cabin.json': serialiseCabin(plannedCabin(11, { parts: 5, sources: 2, scatter: 0.16 })) };
    const longest = new Set<number>();
    for (const words of [['mend', 'a.cabin.json'], ['choose', 'a.cabin.json', '--front', '--free-mix'], ['apportion', 'a.cabin.json', '--statistical', '--draws', '300'], ['apportion', 'a.cabin.json', '--draws', '300']]) {
      let written = '';
      let now = 0;
      const line = progressLine((text) => { written += text; }, () => (now += 1), () => columns);
      await runCommand(words, { ...memoryIo(files), progress: line.tell });
      const rows = screenOf(written, columns);
      expect(rows).toHaveLength(1);
      expect(rows[0]).toMatch(/^ *\d+ %/);
      for (const piece of written.split('\r\u001b[K')) longest.add(piece.length);
      line.end();
      expect(screenOf(written, columns)).toEqual(['']);
    }
    expect(Math.max(...longest)).toBeLessThan(columns);
    // Some of what is told would not fit into 40 columns, so that it is known to be cut there.
    if (columns <= 40) expect(Math.max(...longest)).toBe(columns - 1);
  });
});

const root = join(import.meta.dirname, '..', '..');
const folder = mkdtempSync(join(tmpdir(), 'adjoin-progress-'));
const cabin = join(folder, 'big.cabin.json');
writeFileSync(cabin, serialiseCabin(bigCabin({ parts: 60, joints: 150, seed: 3 })));
afterAll(() => rmSync(folder, { recursive: true }));

interface Ended {
  readonly code: number | null;
  readonly signal: string | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** Runs the program, its standard error claiming to be a terminal of 40 columns or not; interrupted at its first progress where asked. */
const program = (words: readonly string[], { terminal, interrupt = false, environment = {} }: { terminal: boolean; interrupt?: boolean; environment?: Record<string, string> }): Promise<Ended> =>
  new Promise((settle) => {
    const claims = 'data:text/javascript,Object.defineProperties(process.stderr,{isTTY:{value:true},columns:{value:40}})';
    const child = spawn(process.execPath, [...(terminal ? ['--import', claims] : []), '--import', 'tsx', join(root, 'src', 'cli', 'main.ts'), ...words], { cwd: root, env: { ...process.env, TERM: 'xterm', ...environment } });
    let [stdout, stderr] = ['', ''];
    child.stdout.setEncoding('utf8').on('data', (text: string) => { stdout += text; });
    child.stderr.setEncoding('utf8').on('data', (text: string) => {
      stderr += text;
      if (interrupt) child.kill('SIGINT');
    });
    child.on('close', (code, signal) => settle({ code, signal, stdout, stderr }));
  });

describe('as a process', () => {
  const words = ['apportion', cabin, '--statistical', '--draws', '20'];
  test('is drawn on the standard error of a terminal alone, without colour, and leaves it empty; what is printed is the same without', async () => {
    const [shown, silent, dumb] = await Promise.all([
      program(words, { terminal: true, environment: { NO_COLOR: '1' } }), program(words, { terminal: false }), program(words, { terminal: true, environment: { TERM: 'dumb' } }),
    ]);
    expect(shown.stderr).toContain('reckoning how often');
    expect(shown.stderr.replaceAll('\r\u001b[K', '')).not.toContain('\u001b');
    expect(screenOf(shown.stderr, 40)).toEqual(['']);
    expect([silent.stderr, dumb.stderr]).toEqual(['', '']);
    expect([shown.stdout, dumb.stdout]).toEqual([silent.stdout, silent.stdout]);
  });

  test('an interrupt ends it at once by its signal, which a shell tells as 130, and nothing is left of the file that was to be written', async () => {
    const out = join(folder, 'out', 'tolerances.cabin.json');
    const ended = await program([...words, '--out', out], { terminal: true, interrupt: true });
    expect([ended.code, ended.signal, ended.stdout]).toEqual([null, 'SIGINT', '']);
    expect(existsSync(out)).toBe(false);
    expect(readdirSync(folder).filter((name) => name.startsWith('.adjoin'))).toEqual([]);
  });
});
