import type { View } from '../controllers/route.ts';

/** What a place is for, what to do there, and the words one meets. */
export interface ViewHelp {
  readonly title: string;
  readonly purpose: string;
  readonly steps: readonly string[];
  /** Words of the glossary. */
  readonly words: readonly string[];
}

export const viewHelp: Readonly<Record<View, ViewHelp>> = {
  start: {
    title: 'Start',
    purpose: 'Opens a cabin, or makes one. A cabin file holds what was measured on every visible part and where parts meet.',
    steps: ['Open the shuttle to see a whole cabin with troubles planted in it, or the first steps to learn on.', 'Open your own file, or let it fall on the page. It is read here and sent nowhere.', 'Make a new cabin, then add parts and import readings.'],
    words: ['cabin', 'part', 'joint', 'verdict'],
  },
  cabin: {
    title: 'Cabin',
    purpose: 'Shows every joint of the cabin at once: on the map where the parts meet, on the wall as the two materials across their gap, worst first.',
    steps: [
      'Read the wall from the top: the saw is a clash, dashes are open, a thin line holds. Enter opens a joint.', 'Narrow it down by verdict, zone, check, supplier or a word.',
      'Choose another light in the head to see the samples under it; the verdicts are those of the rules and stay.', 'On the map, draw outlines and join parts; the matrix beside it is the same for the keyboard.',
    ],
    words: ['joint', 'verdict', 'limit use', 'wrong holds', 'coverage', 'decision rule', 'run'],
  },
  joint: {
    title: 'Joint',
    purpose: 'Answers for one joint: what it looks like, whether it holds under each light and check, how sure that is, and what it stands on.',
    steps: [
      'Read the sentence, then the checks. Where it is open, the cause says what would decide it.', 'Try a change of either side, the gap or the distance; what becomes of this joint and of those around it follows. Keep it as a proposal.',
      'Record what the light booth said, or accept a clash for a time with reason, role and expiry.', 'Shift with an arrow key goes to the next joint of the wall.',
    ],
    words: ['standard and trial', 'limit use', 'standard uncertainty, u', 'probability that it holds, p', 'standing', 'metamerism', 'near miss', 'proposal', 'decision', 'visual record'],
  },
  parts: {
    title: 'Parts',
    purpose: 'Holds what the cabin is made of: parts, their sources, specimens and readings, and the registers they refer to.',
    steps: ['Open a part to edit it in place. Every edit is one step of undo.', 'Add sources and specimens; choose which source and which specimen a part stands by.', 'Mark a reading as an outlier rather than removing it.'],
    words: ['part', 'source', 'material', 'specimen', 'stage', 'lot', 'reading', 'spot', 'borrowed', 'target', 'cap', 'run'],
  },
  import: {
    title: 'Import',
    purpose: 'Brings files of readings into the cabin, whole or not at all.',
    steps: ['Let files fall here, choose them, or paste cells of a spreadsheet.', 'Answer what a file leaves open; it is asked and never guessed.', 'Say which part each specimen belongs to, then take all of it over in one step.'],
    words: ['reading', 'specimen', 'spot', 'part'],
  },
  readings: {
    title: 'Readings',
    purpose: 'Says whether the measurements are good enough to judge by, and what to ask suppliers for.',
    steps: ['Measurement quality: look at what has too few spots or stands out.', 'Instruments: see what their agreement takes of the limits.', 'Request sheets: send each supplier the table; filled in, it is imported as it is.', 'What may be compared: which geometries are never set against each other.'],
    words: ['mean difference from mean', 'standard uncertainty, u', 'gauge', 'spots needed', 'stands out', 'request sheet', 'geometry'],
  },
  masters: {
    title: 'Masters',
    purpose: 'Shows the pieces that materials are held to, whether they are still valid, and where parts in tolerance clash with each other.',
    steps: ['Look first at what is in tolerance, yet clashing.', 'Open a master to see how far its parts lie from it and how it drifted over its issues.', 'Add a master, and set it as the target of a part.'],
    words: ['master', 'target', 'in tolerance, yet clashing', 'drift', 'limit use', 'dL*, da*, db*'],
  },
  surfaces: {
    title: 'Surfaces',
    purpose: 'Turns a height map, or an evenly lit photograph, into the texture reading of a specimen.',
    steps: ['Let a surface file fall here.', 'Choose form, filters and spacing: two surfaces are compared only where these are alike.', 'Keep the result as a reading of a specimen.'],
    words: ['Sa, Sal, Str'],
  },
  rules: {
    title: 'Rules',
    purpose: 'The rule book: what each pairing of materials must satisfy, why, and how many joints it touches.',
    steps: ['Choose a pair in the matrix to see which rule wins there and for what reason.', 'Change a limit; a formula is checked as you write and shown on a joint.', 'See what another book would say, joint by joint. Limits between two parties are theirs to agree.'],
    words: ['rule, rule book', 'material', 'class of material', 'family', 'intent', 'check', 'standing', 'basis', 'decision rule', 'kL', 'factor of a light', 'component limit', 'geometry', 'near miss', 'assumed spread', 'limit use'],
  },
  sources: {
    title: 'Sources',
    purpose: 'Finds, for parts with several sources, the set that keeps the cabin in harmony at least cost, with the proof that none is better.',
    steps: ['Set the terms: budget, lead time, suppliers, parts kept on a source.', 'Pick a point of the front: each is the most harmony for its cost.', 'See what every single swap would do, then apply the set as one step. Compare shows before and after.'],
    words: ['source', 'choose', 'expected clashes', 'open', 'over-use', 'front', 'proved', 'free mix', 'tool and set-up', 'carry-over'],
  },
  mend: {
    title: 'Mend',
    purpose: 'Finds the fewest parts to change, and by how much, so that every joint that a change can mend holds under every light.',
    steps: ['Say which parts stay as they are, and how far a material can be moved.', 'Read the card of each part: it is a target for its supplier, not a forecast of a recipe.', 'Keep the changes as proposals in one step.'],
    words: ['mend', 'reach', 'target', 'proposal', 'carry-over', 'limit use', 'clashes', 'L*, a*, b*', 'dL*, da*, db*', 'gloss unit, GU'],
  },
  apportion: {
    title: 'Apportion',
    purpose: 'Turns the limits of joints into one tolerance for each part, so that suppliers can work apart and neighbours still hold.',
    steps: ['Choose whether tolerances add by the worst case or by statistics.', 'Look at the tightest joints: they set the smallest tolerances.', 'Save the sheets for the suppliers.'],
    words: ['apportion', 'target', 'worst case, statistical', 'radius', 'half axes', 'tightest joint', 'tried by drawing', 'L*, a*, b*', 'gloss unit, GU'],
  },
  series: {
    title: 'Series',
    purpose: 'Follows the lots of every part over time: which one is astray, whether they drift, which joint clashes first if they go on, and which lots to build together.',
    steps: [
      'Read which joint comes over its limit first, and between which days.', 'Choose a part and look at its lots: a ring is outside the limit of T², a solid line is a trend, a dotted one is none.',
      'Take the limits from the first lots to see the later ones against them.', 'Choose two parts that meet, and build their lots by the table rather than in order of production.',
    ],
    words: ['lot', 'T²', 'trend', 'limit use'],
  },
  compare: {
    title: 'Compare',
    purpose: 'Sets the cabin against another one, or against itself before a change or at another stage, joint by joint.',
    steps: ['Choose what stands before: the cabin before the last steps, as it was saved, a stage, or another file.', 'Look at what became worse first.', 'Switch to the table for the figures.'],
    words: ['stage', 'verdict', 'limit use', 'grade'],
  },
  review: {
    title: 'Review',
    purpose: 'Goes through the joints one at a time, worst first, large enough for a meeting room: those that the filter of the cabin lets through.',
    steps: ['Arrow keys go on and back, L sweeps the lights.', 'D decides, V records what was seen, N notes.', 'End shows the list of what was taken; Escape leaves.'],
    words: ['verdict', 'decision', 'visual record'],
  },
  report: {
    title: 'Report',
    purpose: 'The one document for a design review: what clashes, what is open, the evidence, what is proposed and accepted, by which method, and what it does not cover.',
    steps: ['Choose the stage, what to compare with, and the sections.', 'Print it or save it as PDF, or save HTML that is read without script and network.', 'JSON and CSV carry everything.'],
    words: ['stage', 'verdict', 'wrong holds', 'coverage', 'decision', 'proposal'],
  },
};
