import type { Cabin } from '../../src/cabin/cabin.ts';
import type { MendOptions } from '../../src/plan/index.ts';
import type { Options } from './source-terms.ts';

const listOf = (text: string | undefined): readonly string[] => (text === undefined || text === '' ? [] : text.split(','));

/** Parts that stay as they are, and joints that do. */
export const lockedOf = (options: Options): readonly string[] => listOf(options['lock']);
export const exceptOf = (options: Options): readonly string[] => listOf(options['except']);

/** The options with an entry of a list put in, or taken out where it is there. */
export function toggled(options: Options, list: 'lock' | 'except', entry: string): Options {
  const entries = listOf(options[list]);
  return { ...options, [list]: (entries.includes(entry) ? entries.filter((one) => one !== entry) : [...entries, entry]).join(',') };
}

/** The terms of a mend that an address asks for; what the cabin does not have is left out. */
export function mendTerms(options: Options, cabin: Cabin): MendOptions {
  const parts = new Set(cabin.parts.map(({ id }) => id));
  const joints = new Set(cabin.joints.map(({ id }) => id));
  const locked = lockedOf(options).filter((part) => parts.has(part));
  const except = exceptOf(options).filter((joint) => joints.has(joint));
  return {
    aim: options['aim'] === 'cheapest' ? 'cheapest' : 'fewest',
    ...(locked.length === 0 ? {} : { locked }), ...(except.length === 0 ? {} : { except }), ...(options['frozen'] === 'free' ? { releaseFrozen: true } : {}),
  };
}
