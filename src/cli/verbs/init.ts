import type { Verb } from '../verb.ts';
import firstSteps from '../../../demo-data/first-steps.cabin.json' with { type: 'json' };
import { builtInRuleBooks } from '../../rules/index.ts';
import { done, jsonText, refused } from '../results.ts';
import { usageIssue } from '../verb.ts';

export const init: Verb = {
  name: 'init',
  summary: 'Write a small cabin and a rule book to start from.',
  operands: [{ name: 'DIR', about: 'folder to write to; made where there is none' }],
  options: {},
  detail: [
    'Writes first-steps.cabin.json, an invented cabin of a few parts with readings, and house.rules.json, the default rule book, to be edited. Files that are there are never overwritten.',
    'Exit: 0 written, 2 where one of the files is there already; then nothing is written.',
  ],
  examples: [
    { command: 'adjoin init trial', about: 'makes the folder trial with both files' },
    { command: 'adjoin check trial/first-steps.cabin.json --rules trial/house.rules.json', about: 'judges the cabin by the book' },
  ],
  run(args, io) {
    const folder = args.operands[0].replace(/[\\/]+$/, '') || '/';
    if (folder === '-') return refused([usageIssue('not-a-folder', 'DIR', '-', 'a folder')], args.json);
    const files = [
      { path: `${folder}/first-steps.cabin.json`, content: jsonText(firstSteps) },
      { path: `${folder}/house.rules.json`, content: jsonText({ ...builtInRuleBooks[0], id: 'house' }) },
    ];
    const there = files.filter((file) => io.exists(file.path));
    if (there.length > 0) {
      return refused(there.map((file) => usageIssue('already-there', 'DIR', file.path, 'a folder without this file', 'Nothing was written; name another folder')), args.json);
    }
    const written = files.map((file) => file.path);
    return done(args.json ? jsonText({ written }) : `${written.map((path) => `Wrote ${path}`).join('\n')}\nNext: adjoin check ${written[0]} --rules ${written[1]}\n`, { files });
  },
};
