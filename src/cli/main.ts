#!/usr/bin/env node
import { setFlagsFromString } from 'node:v8';
import { nodeIo, secondsNow } from './node-io.ts';
import { progressLine } from './progress-line.ts';
import { issueLines, jsonText } from './results.ts';
import { runCommand } from './router.ts';
import { asksForJson } from './read-arguments.ts';
import { wantsColour } from './style.ts';
import { overwritten, writeFiles } from './write-files.ts';

// A verb runs for a second at most: with the engine's usual budget a quarter of its processor time goes into optimising code that is
// then hardly used (measured on `check`: 2.0 s against 1.5 s).
setFlagsFromString('--interrupt-budget=400000');

// A reader such as `head` may close the pipe early; that is its right and no fault.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
  });
}

const words = process.argv.slice(2);
const json = asksForJson(words);
const terminal = {
  colour: wantsColour(process.env, process.stdout.isTTY === true),
  columns: Math.max(40, process.stdout.columns ?? 100),
};

const overwrites = process.stderr.isTTY === true && process.env['TERM'] !== 'dumb';
const line = overwrites ? progressLine((text) => process.stderr.write(text), secondsNow, () => process.stderr.columns ?? 80) : undefined;

try {
  const result = await runCommand(words, nodeIo(terminal, process.env['CHROMIUM'], line?.tell));
  line?.end();
  const issues = result.exit === 2 ? [] : overwritten(words, result.files) ?? writeFiles(result.files);
  if (issues.length) {
    process.exitCode = 2;
    if (json) process.stdout.write(jsonText({ issues }));
    else process.stderr.write(issueLines(issues));
  } else {
    process.exitCode = result.exit;
    process.stdout.write(result.stdout);
    process.stderr.write(result.stderr);
  }
} catch (error) {
  line?.end();
  process.exitCode = 3;
  process.stderr.write(`fault of the program: ${error instanceof Error ? error.stack ?? error.message : String(error)}\n`);
}
