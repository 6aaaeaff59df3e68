import type { Decision, Joint, VisualRecord, VisualResult } from '../../../src/cabin/cabin.ts';

type BoothRow = readonly [result: VisualResult, light: string, note?: string];

/** What the booth said, by joint. Three joints differ from the verdict by the numbers, as booths do. */
const booth: Readonly<Record<string, BoothRow>> = {
  'upper-dash--door-roll-left': ['clash', 'D65', 'Roll reads yellow against the dash.'],
  'upper-dash--door-roll-right': ['match', 'D65'],
  'upper-dash--instrument-hood': ['match', 'D65'],
  'mid-dash-left--mid-dash-right': ['match', 'D65'],
  'mid-dash-left--knee-panel': ['match', 'D65'],
  'mid-dash-right--glovebox-lid': ['clash', 'FL11', 'Good in daylight, off under the shop lamps.'],
  'map-pocket-left--sill-left': ['clash', 'D65', 'Sill shines.'],
  'knee-panel--column-shroud': ['acceptable', 'D65', 'Grain difference seen at a grazing angle only.'],
  'console-frame--console-lid': ['clash', 'D65', 'Looks like a match that failed.'],
  'climate-panel--console-frame': ['match', 'D65'],
  'headliner--a-pillar-left': ['acceptable', 'D65'],
  'headliner--a-pillar-right': ['match', 'D65'],
  'headliner--b-pillar-left': ['clash', 'D65', 'Moulded pillar reads smoother than the lining; colour itself not objected to.'],
  'seat-back-left--seat-cushion-left': ['match', 'D65'],
  'seat-back-right--seat-cushion-right': ['clash', 'A', 'One observer of three called the cushion darker; pile brushed after the session.'],
  'headrest-right--seat-bolster-right': ['acceptable', 'D65'],
  'carpet-left--carpet-right': ['match', 'D65'],
  'decor-dash-left--decor-dash-right': ['match', 'D65', 'Against boundary samples 2 and 3.'],
  'door-decor-left--door-decor-right': ['match', 'LED-B3'],
};

const record = ([result, light, note]: BoothRow): VisualRecord => ({
  date: '2026-05-12',
  light,
  illuminanceLx: light === 'A' ? 1200 : 2000,
  observers: { count: 3, roles: ['design quality', 'colour and trim', 'supplier quality'] },
  result,
  ...(note ? { note } : {}),
});

const decisions: Readonly<Record<string, Decision>> = {
  'map-pocket-left--sill-left': {
    id: 'decision-1',
    check: 'gloss',
    reason: 'Sill tool is regrained before the next build; foot area, seen with the door open only.',
    role: 'design quality',
    date: '2026-05-13',
    expires: '2026-09-30',
    value: 0.8,
  },
  'console-frame--console-lid': {
    id: 'decision-2',
    check: 'near-miss',
    reason: 'Lid hide of the show car used up for the first build.',
    role: 'colour and trim',
    date: '2026-01-20',
    expires: '2026-04-30',
    value: 4.2,
  },
  'mid-dash-right--glovebox-lid': {
    id: 'decision-3',
    check: 'colour',
    reason: 'Accepted for the first lots while the supplier changes the colouring.',
    role: 'design quality',
    date: '2026-03-02',
    expires: '2026-08-31',
    value: 1.6,
    light: 'FL11',
  },
};

/** Booth records and decisions of a joint; the light colourway has not been in the booth yet. */
export function recordsFor(joint: string, way: 'slate' | 'chalk'): Pick<Joint, 'visualRecords' | 'decisions'> {
  if (way !== 'slate') return {};
  return {
    ...(booth[joint] ? { visualRecords: [record(booth[joint])] } : {}),
    ...(decisions[joint] ? { decisions: [decisions[joint]] } : {}),
  };
}
