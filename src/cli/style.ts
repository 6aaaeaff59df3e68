import type { Terminal } from './verb.ts';

export type Emphasis = 'strong' | 'quiet' | 'alarm' | 'caution';

const codes: Readonly<Record<Emphasis, readonly [open: string, close: string]>> = {
  strong: ['\u001b[1m', '\u001b[22m'],
  quiet: ['\u001b[2m', '\u001b[22m'],
  alarm: ['\u001b[1;31m', '\u001b[22;39m'],
  caution: ['\u001b[33m', '\u001b[39m'],
};

/** The text with an emphasis where the terminal shows colour, else as it is; words always carry the meaning alone. */
export function styled(text: string, emphasis: Emphasis | undefined, terminal: Terminal): string {
  if (!terminal.colour || emphasis === undefined) return text;
  const [open, close] = codes[emphasis];
  return `${open}${text}${close}`;
}

/**
 * Whether to use colour: never with `NO_COLOR` set to anything but the empty string (no-color.org),
 * always with `FORCE_COLOR`, else only on a terminal that is not `dumb`.
 */
export function wantsColour(environment: Readonly<Record<string, string | undefined>>, isTerminal: boolean): boolean {
  if (environment.NO_COLOR) return false;
  if (environment.FORCE_COLOR) return environment.FORCE_COLOR !== '0';
  return isTerminal && environment.TERM !== 'dumb';
}
