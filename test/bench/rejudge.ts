import { jointPath } from '../../src/cabin/index.ts';
import { cabinPatch, patchCabin } from '../../src/actions/cabin-patch.ts';
import { renameCabin } from '../../src/actions/cabin-actions.ts';
import { openEditor, perform } from '../../src/actions/editor.ts';
import { setJoint } from '../../src/actions/joint-actions.ts';
import { setPart, setPartVisibility } from '../../src/actions/part-actions.ts';
import { replaceReading } from '../../src/actions/reading-actions.ts';
import { judgeCabin } from '../../src/harmony/judge.ts';
import type { JudgedCabin } from '../../src/harmony/judge.ts';
import { rejudge } from '../../src/harmony/rejudge.ts';
import { builtInRuleBooks } from '../../src/rules/built-in-rule-books.ts';
import { bigCabin } from './big-cabin.ts';

/** How long an edit takes step by step, on a cabin of 2,000 parts and 6,000 joints unless told otherwise. Prints; holds nothing. */
const book = builtInRuleBooks[0]!;
const rounds = 41;
const [parts = 2000, joints = 6000] = process.argv.slice(2).map(Number);

/** Time of the processor in milliseconds: on a busy machine it says more than the clock, which counts waiting too. */
const processorMs = (): number => process.cpuUsage().user / 1000;

const spread = (times: readonly number[]): string => {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number): string => (sorted[Math.floor(share * (sorted.length - 1))] ?? 0).toFixed(1);
  return `median ${at(0.5)} ms, quartiles ${at(0.25)} to ${at(0.75)} ms, longest ${at(1)} ms`;
};

const cabin = bigCabin({ parts, joints, seed: 7 });
const begun = processorMs();
let judged: JudgedCabin = judgeCabin(cabin, book);
const { holds, open, clashes } = judged.judgement.summary;
console.log(`times of the processor; all judged in ${(processorMs() - begun).toFixed(0)} ms: ${cabin.parts.length} parts, ${cabin.joints.length} joints, ${judged.judgement.runs.length} runs; ${holds} hold, ${open} open, ${clashes} clash`);

const edits = {
  'the name of the cabin, which touches no joint': (round: number, editor: ReturnType<typeof openEditor>) => perform(editor, renameCabin, { name: `Round ${round}` }),
  'a reading of a part': (round: number, editor: ReturnType<typeof openEditor>) => {
    const specimen = `part-${(round * 97) % parts}-specimen`;
    const reading = editor.history.present.parts[(round * 97) % parts]!.sources[0]!.specimens[0]!.readings[0]!;
    if (reading.quantity !== 'spectrum') throw new Error('the first reading is a spectrum');
    return perform(editor, replaceReading, { specimen, place: 0, reading: { ...reading, values: reading.values.map((value) => value * 1.01) } });
  },
  'the gap of a joint': (round: number, editor: ReturnType<typeof openEditor>) =>
    perform(editor, setJoint, { joint: `joint-${(round * 131) % joints}`, gapMm: 0.5 + 0.037 * round }),
  'the visibility of a part': (round: number, editor: ReturnType<typeof openEditor>) =>
    perform(editor, setPartVisibility, { part: `part-${(round * 97) % parts}`, visibility: 0.3 + 0.01 * round }),
  'the part number of a part': (round: number, editor: ReturnType<typeof openEditor>) =>
    perform(editor, setPart, { part: `part-${(round * 97) % parts}`, partNumber: `X-${round}` }),
};

for (const [name, edit] of Object.entries(edits)) {
  const [editing, judging, patching, drawing]: number[][] = [[], [], [], []];
  let editor = openEditor(cabin);
  judged = rejudge(judged, cabin);
  for (let round = 1; round <= rounds; round += 1) {
    const before = editor.history.present;
    const start = processorMs();
    const result = edit(round, editor);
    const edited = processorMs();
    if (!result.done || result.label === undefined) throw new Error(`${name} was not done`);
    editor = result.editor;
    const after = editor.history.present;
    judged = rejudge(judged, after);
    const rejudged = processorMs();
    patchCabin(before, cabinPatch(before, after));
    const patched = processorMs();
    const part = after.parts[(round * 97) % parts]!.id;
    for (const joint of after.joints) if (joint.parts.includes(part)) jointPath(after, joint);
    const drawn = processorMs();
    if (round === 1) continue;
    editing!.push(edited - start);
    judging!.push(rejudged - edited);
    patching!.push(patched - rejudged);
    drawing!.push(drawn - patched);
  }
  console.log(`${name}\n  edit and check: ${spread(editing!)}\n  judge again: ${spread(judging!)}\n  patch made and applied: ${spread(patching!)}\n  its joints on the map: ${spread(drawing!)}`);
}
const whole = judgeCabin(judged.context.cabin, book).judgement;
console.log(JSON.stringify(whole) === JSON.stringify(judged.judgement) ? 'the last judgement is that of judging all' : 'THE LAST JUDGEMENT DIFFERS');
