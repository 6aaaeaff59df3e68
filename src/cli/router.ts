import type { CommandResult, Io, Verb } from './verb.ts';
import { software } from '../report/software.ts';
import { generalHelp, verbHelp } from './help.ts';
import { asksForJson, didYouMean, readArguments } from './read-arguments.ts';
import { done, jsonText, refused } from './results.ts';
import { usageIssue } from './verb.ts';

interface Entry {
  readonly name: string;
  readonly summary: string;
  /** Verbs are loaded when they are asked for, so that a small job does not pay for the large ones. */
  readonly load: () => Promise<Verb>;
}

export const entries: readonly Entry[] = [
  { name: 'check', summary: 'Judge every joint of a cabin and print what clashes, what is open and why.', load: async () => (await import('./verbs/check.ts')).check },
  { name: 'report', summary: 'Write the harmony report of a cabin as HTML, PDF, JSON or CSV.', load: async () => (await import('./verbs/report.ts')).report },
  { name: 'requests', summary: 'Ask suppliers for the readings that would decide the open joints.', load: async () => (await import('./verbs/requests.ts')).requests },
  { name: 'masters', summary: 'Show the recorded masters, their drift, and what clashes within them; write one for a supplier.', load: async () => (await import('./verbs/masters.ts')).masters },
  { name: 'choose', summary: 'Choose one source for each part: fewest clashes, then least over-use, then least cost.', load: async () => (await import('./verbs/choose.ts')).choose },
  { name: 'mend', summary: 'Find the fewest parts to change, and the least shifts, so that every joint holds.', load: async () => (await import('./verbs/mend.ts')).mend },
  { name: 'apportion', summary: 'Turn the limits of joints into tolerances of parts, as large and as even as can be.', load: async () => (await import('./verbs/apportion.ts')).apportion },
  { name: 'series', summary: 'Follow lots over time: trends, lots outside, the first joint to clash, and which lots to build together.', load: async () => (await import('./verbs/series.ts')).series },
  { name: 'colour', summary: 'Tristimulus values, CIELAB and LCh of spectra under any lights.', load: async () => (await import('./verbs/colour.ts')).colour },
  { name: 'difference', summary: 'Colour differences of pairs by every formula, with their distribution where covariances are given.', load: async () => (await import('./verbs/difference.ts')).difference },
  { name: 'metamerism', summary: 'Metamerism indices of pairs of spectra under test lights.', load: async () => (await import('./verbs/metamerism.ts')).metamerism },
  { name: 'gloss', summary: 'Mean and spread of gloss readings by specimen and angle.', load: async () => (await import('./verbs/gloss.ts')).gloss },
  { name: 'texture', summary: 'Areal parameters and visible texture of a height map or a photograph, alone or as a pair.', load: async () => (await import('./verbs/texture.ts')).texture },
  { name: 'convert', summary: 'Write the readings of a file in another open format.', load: async () => (await import('./verbs/convert.ts')).convert },
  { name: 'verify', summary: 'Recompute every published check value and print a validation record.', load: async () => (await import('./verbs/verify.ts')).verify },
  { name: 'init', summary: 'Write a small cabin and a rule book to start from.', load: async () => (await import('./verbs/init.ts')).init },
];

/** Runs one command line (without the program's name). Faults of data and usage are results; only bugs throw. */
export async function runCommand(words: readonly string[], io: Io): Promise<CommandResult> {
  const json = asksForJson(words);
  const [first, ...rest] = words;
  if (first === undefined) return { ...done(''), exit: 2, stderr: generalHelp(entries, io.terminal) };
  if (first === '--help' || first === '-h' || first === 'help') {
    const wanted = first === 'help' ? entries.find((entry) => entry.name === rest[0]) : undefined;
    return done(wanted ? verbHelp(await wanted.load(), io.terminal) : generalHelp(entries, io.terminal));
  }
  if (first === '--version') return done(json ? jsonText(software) : `${software.name} ${software.version}\n`);
  const entry = entries.find((candidate) => candidate.name === first);
  if (entry === undefined) {
    const names = entries.map((candidate) => candidate.name);
    return refused([usageIssue('unknown-verb', 'verb', first, `one of ${names.join(', ')}`, didYouMean(first, names))], json);
  }
  const verb = await entry.load();
  if (rest.includes('--help') || rest.includes('-h')) return done(verbHelp(verb, io.terminal));
  const args = readArguments(verb, rest);
  if (args.value === undefined) return refused(args.issues, json);
  return verb.run(args.value, io);
}
