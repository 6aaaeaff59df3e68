import type { Issue, Outcome } from '../issue.ts';

/** 0 done, 1 the answer is no (a clash, a failed validation), 2 bad input or usage, 3 a fault of the program. */
export type ExitCode = 0 | 1 | 2 | 3;

export interface OutputFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** What a verb asks the runner to do; the runner alone writes. Files are written before anything is printed. */
export interface CommandResult {
  readonly exit: ExitCode;
  readonly stdout: string;
  readonly stderr: string;
  readonly files: readonly OutputFile[];
}

/** What stdout can show. */
export interface Terminal {
  readonly colour: boolean;
  readonly columns: number;
}

/** All that a verb may know of the world outside. */
export interface Io {
  /** Bytes of a file; `-` is the standard input. */
  readonly read: (path: string) => Outcome<Uint8Array>;
  readonly exists: (path: string) => boolean;
  readonly sha256: (bytes: Uint8Array) => string;
  /** A self-contained page as PDF; an issue where nothing on the machine can print one. */
  readonly printPdf: (page: string) => Promise<Outcome<Uint8Array>>;
  readonly terminal: Terminal;
  /** Seconds since any fixed moment: what a plan's limit of time is kept by. */
  readonly clock?: () => number;
  /** Tells how far a long piece of work is, where someone looks on. */
  readonly progress?: (share: number, doing: string) => void;
}

export interface OptionSpec {
  readonly about: string;
  /** Word for the value in help; a switch has none. */
  readonly value?: string;
  readonly choices?: readonly string[];
  readonly multiple?: boolean;
}

export interface Operand {
  readonly name: string;
  readonly about: string;
  readonly optional?: boolean;
}

/** The command line of one verb after it was checked against the verb's own list. */
export interface Arguments {
  readonly operands: readonly string[];
  readonly switches: ReadonlySet<string>;
  readonly values: ReadonlyMap<string, readonly string[]>;
  readonly json: boolean;
}

export interface Verb {
  readonly name: string;
  readonly summary: string;
  readonly operands: readonly Operand[];
  readonly options: Readonly<Record<string, OptionSpec>>;
  /** Paragraphs of help below the options; lines that begin with two spaces are kept as they are. */
  readonly detail: readonly string[];
  readonly examples: readonly { readonly command: string; readonly about: string }[];
  readonly run: (args: Arguments, io: Io) => CommandResult | Promise<CommandResult>;
}

/** The last value given for an option, if any. */
export const lastValue = (args: Arguments, option: string): string | undefined => args.values.get(option)?.at(-1);

/** A fault of the command line itself. */
export const usageIssue = (code: string, path: string, found: string | undefined, expected: string, hint?: string): Issue => ({
  code, severity: 'error', path, expected,
  ...(found === undefined ? {} : { found }),
  ...(hint === undefined ? {} : { hint }),
});
