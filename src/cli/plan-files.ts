import type { Arguments, OutputFile } from './verb.ts';
import { lastValue } from './verb.ts';

/** The files that options of a plan ask for, each made only where it is asked for. */
export const filesAsked = (args: Arguments, made: Readonly<Record<string, () => string>>): readonly OutputFile[] => Object.entries(made).flatMap(([option, content]) => {
  const path = lastValue(args, option);
  return path === undefined ? [] : [{ path, content: content() }];
});

/** What was written, for a person; empty where nothing was. */
export const writtenLines = (files: readonly OutputFile[]): string => (files.length === 0 ? '' : `\n${files.map(({ path }) => `Wrote ${path}\n`).join('')}`);
