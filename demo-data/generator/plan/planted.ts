import type { CheckName } from '../../../src/cabin/cabin.ts';
import type { CheckVerdict, OpenCause, Verdict } from '../../../src/harmony/judgement.ts';

/** One trouble that was put into the data on purpose, and what the default rule book must say of it. */
export interface Planted {
  readonly id: string;
  readonly cabin: 'shuttle-slate' | 'shuttle-chalk' | 'first-steps';
  readonly joint?: string;
  readonly part?: string;
  readonly kind: string;
  readonly check: CheckName;
  /** Verdict of that check. */
  readonly verdict: CheckVerdict;
  /** Verdict of the whole joint. */
  readonly jointVerdict?: Verdict;
  readonly light?: string;
  readonly cause?: OpenCause;
  readonly accepted?: boolean;
  /** Id of the planted trouble that this one follows from. */
  readonly follows?: string;
  readonly how: string;
}

type Row = Omit<Planted, 'cabin'>;

const carried: readonly Row[] = [
  {
    id: 'each-within-its-master',
    joint: 'upper-dash--door-roll-left',
    kind: 'two parts within their masters that clash',
    check: 'colour',
    verdict: 'clashes',
    jointVerdict: 'clashes',
    light: 'D65',
    how:
      'The dash lies 0.54 CIEDE2000 to the blue side of the master and the roll 0.63 to the yellow side: ' +
      '60 and 70 % of their master limit of 0.9, together about 145 % of the joint limit of 0.8.',
  },
  {
    id: 'unlike-geometries',
    joint: 'headliner--overhead-console',
    kind: 'unlike geometries',
    check: 'colour',
    verdict: 'open',
    jointVerdict: 'open',
    cause: 'conditions',
    how: 'The overhead console was measured with a sphere, the headliner at 45:0.',
  },
  {
    id: 'cielab-only',
    joint: 'upper-dash--demister-grille',
    kind: 'no spectrum',
    check: 'colour',
    verdict: 'open',
    jointVerdict: 'open',
    cause: 'missing data',
    how: 'The supplier of the grille gives CIELAB for D65 only; the other required lights have no data.',
  },
  {
    id: 'patterned-decor',
    joint: 'decor-dash-left--decor-dash-right',
    kind: 'patterned face',
    check: 'colour',
    verdict: 'open',
    jointVerdict: 'open',
    cause: 'judged by eye',
    how: 'Both strips are printed wood: their mean colour says nothing about the print.',
  },
  {
    id: 'dash-top-gloss',
    part: 'upper-dash',
    kind: 'gloss cap of the dash top broken',
    check: 'cap',
    verdict: 'clashes',
    how: 'The skin has 2.45 GU at 60 degrees where the zone is capped at 2.0; its neighbours follow it within the gloss limit.',
  },
];

const slateOnly: readonly Row[] = [
  {
    id: 'metameric-pair',
    joint: 'mid-dash-right--glovebox-lid',
    kind: 'metameric pair',
    check: 'colour',
    verdict: 'clashes',
    jointVerdict: 'clashes',
    light: 'FL11',
    how:
      'The lid is coloured with blue, red and yellow in place of carbon black: ' +
      'inside the limit in D65, outside under FL11. Its decision was agreed at 1.60 and is void.',
  },
  {
    id: 'metameric-to-master',
    part: 'glovebox-lid',
    kind: 'metameric to its master',
    check: 'master',
    verdict: 'clashes',
    light: 'FL11',
    follows: 'metameric-pair',
    how: 'The master is coloured like the neighbour, so the lid comes apart from it under the same lamp.',
  },
  {
    id: 'gloss-only',
    joint: 'map-pocket-left--sill-left',
    kind: 'gloss only',
    check: 'gloss',
    verdict: 'clashes',
    jointVerdict: 'clashes',
    accepted: true,
    how: 'Colours match; the sill has 2.6 GU at 60 degrees against 1.85. Covered by a decision in force.',
  },
  {
    id: 'near-miss',
    joint: 'console-frame--console-lid',
    kind: 'near miss of a tone step',
    check: 'near-miss',
    verdict: 'clashes',
    jointVerdict: 'clashes',
    how: 'A tone step of at least 5 L* is wanted, the lid is 4.3 lighter. Its decision has expired.',
  },
  {
    id: 'same-grain-deeper',
    joint: 'knee-panel--column-shroud',
    kind: 'one grain, two depths',
    check: 'texture',
    verdict: 'clashes',
    jointVerdict: 'clashes',
    how: 'Both carry the grain sable-4; Sa is 9.2 µm on the panel and 13.9 µm on the shroud.',
  },
  {
    id: 'too-few-spots',
    joint: 'headrest-left--seat-bolster-left',
    kind: 'too noisy to decide',
    check: 'colour',
    verdict: 'open',
    jointVerdict: 'open',
    cause: 'too few spots',
    how: 'Three spots on a hide that scatters by 0.35 L*, and a difference of 0.68 L* against a cap of 1.0.',
  },
  {
    id: 'two-instruments',
    joint: 'map-pocket-right--sill-right',
    kind: 'two instruments',
    check: 'colour',
    verdict: 'open',
    jointVerdict: 'open',
    cause: 'instruments disagree',
    how: 'The panel was measured with instrument 1, the sill with instrument 2: their disagreement alone spans the limit.',
  },
];

const firstSteps: readonly Row[] = [
  {
    id: 'first-clash',
    joint: 'map-pocket--sill',
    kind: 'plain clash',
    check: 'colour',
    verdict: 'clashes',
    jointVerdict: 'clashes',
    how: 'The sill is 1.2 b* yellower than the panel.',
  },
  {
    id: 'first-open',
    joint: 'armrest--map-pocket',
    kind: 'too noisy to decide',
    check: 'colour',
    verdict: 'open',
    jointVerdict: 'open',
    cause: 'too few spots',
    how: 'Two spots on a hide, and a difference of 0.45 L* against a cap of 0.7.',
  },
];

/** The table of planted troubles of all demo cabins. */
export const planted: readonly Planted[] = [
  ...[...carried, ...slateOnly].map((row): Planted => ({ cabin: 'shuttle-slate', ...row })),
  ...carried.map((row): Planted => ({ cabin: 'shuttle-chalk', ...row })),
  ...firstSteps.map((row): Planted => ({ cabin: 'first-steps', ...row })),
];
