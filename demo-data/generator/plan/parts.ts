import type { Lab } from '../../../src/quantities.ts';
import type { Colourway } from './colourways.ts';
import { placedAt, plus } from './colourways.ts';
import { grains } from './materials.ts';
import { sourceOf, unmeasured } from './source-maker.ts';
import type { PartPlan } from './types.ts';

/** Master limit of the two parts of the first planted trouble: each uses 60 and 70 % of it, together more than the joint allows. */
const agreedMasterLimit = 0.9;
const towardBlue: Lab = [0.3, 0.12, -0.95];
const towardYellow: Lab = [-0.3, -0.12, 0.95];

/** Paint order: a part that lies on another comes after it. */
export function partPlans(way: Colourway): PartPlan[] {
  const troubled = way.id === 'slate';
  return [...roofParts(way), ...dashParts(way, troubled), ...doorParts(way, troubled), ...consoleParts(way, troubled), ...seatParts(way, troubled), ...floorParts(way)]
    .map((part) => (way.id === 'chalk' && carriedOver.has(part.id) ? { ...part, frozen: true } : part));
}

/** Parts that the light colourway takes over from the dark one as they are. */
export const carriedOver: ReadonlySet<string> = new Set([
  'headliner', 'visor-left', 'visor-right', 'overhead-console', 'a-pillar-left', 'a-pillar-right', 'b-pillar-left', 'b-pillar-right',
  'upper-dash', 'demister-grille', 'instrument-hood', 'instrument-surround', 'display-surround', 'vent-left', 'vent-right', 'climate-panel',
  'door-roll-left', 'door-roll-right', 'door-switch-left', 'door-switch-right', 'console-frame', 'selector-surround',
  'bead-left', 'bead-right', 'decor-dash-left', 'decor-dash-right', 'carpet-left', 'carpet-right',
  'dash-stitch', 'roll-stitch-left', 'roll-stitch-right',
]);

function roofParts(way: Colourway): PartPlan[] {
  const visor = sourceOf('visor-left', 'ostrelund', 'headliner', plus(way.roof, [-1.05, 0.08, 0.22]), 1, [9.4, 52000, 14]);
  const pillar = sourceOf('b-pillar-left', 'tulvering', 'moulded', plus(way.roof, [0.75, -0.08, 0.24]), 1.9, [6.1, 118000, 20], { grain: grains.linen, status: 'series' });
  const roof = { zone: 'roof', visibility: 0.6 } as const;
  return [
    {
      ...roof, id: 'headliner', name: 'Headliner', target: { master: 'master-roof' },
      sources: [
        sourceOf('headliner', 'ostrelund', 'headliner', way.roof, 1, [48.5, 165000, 18], { status: 'series', earlierLots: 2 }),
        sourceOf('headliner', 'quillmoor', 'headliner', plus(way.roof, [-0.9, 0.12, 0.5]), 1, [45.2, 180000, 22], { status: 'candidate' }),
      ],
    },
    { ...roof, id: 'visor-left', name: 'Sun visor, left', hand: 'left', target: { master: 'master-roof' }, sources: [visor] },
    { ...roof, id: 'visor-right', name: 'Sun visor, right', hand: 'right', mirrorOf: 'visor-left', sources: [unmeasured(visor, 'visor-right')] },
    {
      ...roof, id: 'overhead-console', name: 'Overhead console', target: { master: 'master-roof-moulded' },
      note: 'Measured by the supplier with a sphere only.',
      sources: [sourceOf('overhead-console', 'orvandel', 'moulded', plus(way.roof, [0.9, -0.05, -0.1]), 1.8, [14.3, 96000, 19], { grain: grains.linen, session: 'sphere', sphereToo: true })],
    },
    {
      ...roof, id: 'a-pillar-left', name: 'A-pillar trim, left', hand: 'left', target: { master: 'master-roof' },
      sources: [sourceOf('a-pillar-left', 'ostrelund', 'headliner', plus(way.roof, [1.15, 0.05, -0.2]), 1, [11.2, 71000, 16])],
    },
    {
      ...roof, id: 'a-pillar-right', name: 'A-pillar trim, right', hand: 'right', mirrorOf: 'a-pillar-left', target: { master: 'master-roof' },
      sources: [sourceOf('a-pillar-right', 'ostrelund', 'headliner', plus(way.roof, [-0.8, -0.05, 0.34]), 1, [11.2, 71000, 16])],
    },
    { ...roof, id: 'b-pillar-left', name: 'B-pillar trim, left', hand: 'left', target: { master: 'master-roof-moulded' }, sources: [pillar] },
    { ...roof, id: 'b-pillar-right', name: 'B-pillar trim, right', hand: 'right', mirrorOf: 'b-pillar-left', sources: [unmeasured(pillar, 'b-pillar-right')] },
  ];
}

/** The upper dash skin, at 60 % of its agreed master limit on the blue side. */
const upperDash = (way: Colourway): Lab => placedAt(way.slate, towardBlue, 0.6 * agreedMasterLimit);

function dashParts(way: Colourway, troubled: boolean): PartPlan[] {
  const skin = upperDash(way);
  const middleLeft = plus(way.lower, [0.18, 0.03, 0.05]);
  const middleRight = plus(way.lower, [-0.36, -0.02, 0.16]);
  const vent = sourceOf('vent-left', 'orvandel', 'moulded', plus(skin, [-0.33, -0.03, 0.14]), 2.2, [7.8, 88000, 17], { grain: grains.fine, status: 'series', cavities: 2 });
  const bead = sourceOf('bead-left', 'kestemoor', 'metallised', way.nickel, 58, [5.5, 64000, 21]);
  const upper = { zone: 'upper-dash' } as const;
  const dash = { zone: 'dash' } as const;
  return [
    {
      ...upper, id: 'upper-dash', name: 'Upper dash skin', curvatureRadiusMm: 900, target: { master: 'master-slate-skin', colourLimit: agreedMasterLimit },
      sources: [
        sourceOf('upper-dash', 'brennhalt', 'soft-skin', skin, 2.45, [62, 310000, 26], { grain: grains.fine, status: 'series', earlierLots: 3, sphereToo: true, exposed: true, share: 0.7 }),
        sourceOf('upper-dash', 'orvandel', 'soft-skin', plus(way.slate, [0.1, 0.02, -0.1]), 1.6, [68.4, 345000, 30], { grain: grains.fine, share: 0.3 }),
      ],
    },
    {
      ...upper, id: 'demister-grille', name: 'Demister grille', visibility: 0.5, note: 'Colour reported as CIELAB for one light; the supplier keeps the spectra.',
      sources: [sourceOf('demister-grille', 'tulvering', 'moulded', plus(skin, [0.28, -0.05, 0.1]), 1.6, [8.9, 74000, 15], { grain: grains.fine, session: 'tri-filter' })],
    },
    {
      ...dash, id: 'instrument-hood', name: 'Instrument hood', target: { master: 'master-slate-skin' },
      sources: [sourceOf('instrument-hood', 'brennhalt', 'soft-skin', plus(skin, [-0.36, 0.04, 0.14]), 2.25, [13.6, 92000, 22], { grain: grains.fine, status: 'series' })],
    },
    {
      ...dash, id: 'instrument-surround', name: 'Instrument surround', target: { master: 'master-black' },
      sources: [sourceOf('instrument-surround', 'sundvale', 'gloss-black', plus(way.black, [-0.28, 0.02, 0.04]), 86.4, [12.8, 84000, 18])],
    },
    {
      ...dash, id: 'display-surround', name: 'Display surround', module: 'display', target: { master: 'master-black' },
      sources: [
        sourceOf('display-surround', 'sundvale', 'gloss-black', plus(way.black, [0.1, -0.01, -0.04]), 87.3, [21.4, 132000, 20], { status: 'series', sphereToo: true }),
        sourceOf('display-surround', 'kestemoor', 'gloss-black', plus(way.black, [0.5, 0.05, 0.1]), 84.1, [19.9, 141000, 24], { status: 'candidate' }),
      ],
    },
    ...(['left', 'right'] as const).map((hand): PartPlan => ({
      ...dash, id: `decor-dash-${hand}`, name: `Decor strip, ${hand === 'left' ? 'driver side' : 'passenger side'}`, hand,
      ...(hand === 'right' ? { mirrorOf: 'decor-dash-left' } : {}), note: 'Printed open-pore ash. The mean colour is no measure of the print: judge by eye against the boundary samples.',
      sources: [sourceOf(`decor-dash-${hand}`, 'kestemoor', 'decor-film', plus(way.ash, hand === 'left' ? [0.3, 0.1, 0.2] : [-0.5, -0.1, 0.1]), 18, [16.7, 58000, 16], {
        surface: 'patterned', spots: 8,
        namedColours: [
          { name: 'ground', areaShare: 0.72, lab: plus(way.ash, [3, 1, 2]) },
          { name: 'pore', areaShare: 0.28, lab: plus(way.ash, [-7.7, -2.6, -5.1]) },
        ],
      })],
    })),
    { ...dash, id: 'bead-left', name: 'Accent bead, driver side', hand: 'left', visibility: 0.7, target: { master: 'master-nickel' }, sources: [bead] },
    { ...dash, id: 'bead-right', name: 'Accent bead, passenger side', hand: 'right', mirrorOf: 'bead-left', visibility: 0.7, sources: [unmeasured(bead, 'bead-right')] },
    {
      ...dash, id: 'mid-dash-left', name: 'Mid dash skin, driver side', hand: 'left', target: { master: 'master-lower-skin' },
      sources: [sourceOf('mid-dash-left', 'brennhalt', 'soft-skin', middleLeft, 2.15, [27.5, 146000, 24], { grain: grains.fine, status: 'series' })],
    },
    {
      ...dash, id: 'mid-dash-right', name: 'Mid dash skin, passenger side', hand: 'right', mirrorOf: 'mid-dash-left', target: { master: 'master-lower-skin' },
      sources: [
        sourceOf('mid-dash-right', 'brennhalt', 'soft-skin', middleRight, 2.1, [29.8, 151000, 24], { grain: grains.fine, status: 'series', earlierLots: 2 }),
        sourceOf('mid-dash-right', 'orvandel', 'soft-skin', plus(way.lower, [0.35, 0.06, -0.3]), 1.9, [27.1, 158000, 27], { grain: grains.fine, status: 'candidate' }),
      ],
    },
    { ...dash, id: 'vent-left', name: 'Side vent, left', hand: 'left', visibility: 0.8, target: { master: 'master-slate-moulded' }, sources: [vent] },
    { ...dash, id: 'vent-right', name: 'Side vent, right', hand: 'right', mirrorOf: 'vent-left', visibility: 0.8, sources: [unmeasured(vent, 'vent-right')] },
    {
      ...dash, id: 'climate-panel', name: 'Climate panel', module: 'display', target: { master: 'master-paint' },
      sources: [
        sourceOf('climate-panel', 'sundvale', 'painted', plus(way.paint, [0.1, 0.01, -0.05]), 6.1, [18.2, 97000, 19], { status: 'series' }),
        sourceOf('climate-panel', 'kestemoor', 'painted', plus(way.paint, [0.42, -0.04, 0.1]), 6.5, [17.3, 104000, 23], { status: 'candidate' }),
      ],
    },
    {
      ...dash, id: 'knee-panel', name: 'Knee panel', target: { master: 'master-lower-moulded' },
      sources: [
        sourceOf('knee-panel', 'tulvering', 'moulded', plus(middleLeft, [-0.44, -0.03, 0.12]), 1.95, [15.9, 133000, 20], { grain: grains.coarse, status: 'series', sphereToo: true, exposed: true }),
        sourceOf('knee-panel', 'orvandel', 'moulded', plus(way.lower, [0.1, 0.04, 0.2]), 2.1, [16.4, 139000, 22], { grain: grains.coarse }),
      ],
    },
    {
      ...dash, id: 'glovebox-lid', name: 'Glove box lid', target: { master: 'master-lower-moulded' },
      sources: [
        sourceOf('glovebox-lid', 'orvandel', 'moulded', plus(middleRight, [0.26, -0.03, -0.1]), 1.9, [21.3, 162000, 20], {
          grain: grains.coarse, ...(troubled ? { colouring: { kind: 'three-colour', strength: 0.68 }, note: 'Coloured without carbon black.' } : {}),
        }),
        sourceOf('glovebox-lid', 'tulvering', 'moulded', plus(middleRight, [0.2, 0.03, 0.08]), 2, [23.1, 170000, 24], { grain: grains.coarse }),
        sourceOf('glovebox-lid', 'brennhalt', 'moulded', plus(middleRight, [-0.34, 0.05, 0.12]), 2.2, [20.6, 155000, 28], { grain: grains.coarse, status: 'candidate' }),
      ],
    },
    {
      ...dash, id: 'column-shroud', name: 'Steering column shroud', visibility: 0.8, target: { master: 'master-lower-moulded' },
      sources: [
        sourceOf('column-shroud', 'orvandel', 'moulded', plus(middleLeft, [0.04, -0.02, 0.2]), 1.85, [10.1, 82000, 17], { grain: troubled ? grains.deepCoarse : grains.coarse, status: 'series' }),
        sourceOf('column-shroud', 'tulvering', 'moulded', plus(middleLeft, [-0.2, 0.03, 0.1]), 1.95, [11.2, 88000, 18], { grain: grains.coarse }),
      ],
    },
    { ...upper, id: 'dash-stitch', name: 'Dash top stitch', visibility: 0.7, target: { master: 'master-thread' }, sources: [sourceOf('dash-stitch', 'quillmoor', 'thread', plus(way.thread, [0.4, 0.1, -0.3]), 1, [0.9, 0, 6])] },
  ];
}

function doorParts(way: Colourway, troubled: boolean): PartPlan[] {
  const panel = sourceOf('door-switch-left', 'sundvale', 'gloss-black', plus(way.black, [0.15, -0.02, 0.05]), 86.9, [8.4, 61000, 17], { cavities: 2 });
  const stitch = sourceOf('roll-stitch-left', 'quillmoor', 'thread', plus(way.thread, [-0.3, 0.2, 0.2]), 1, [0.8, 0, 6]);
  return (['left', 'right'] as const).flatMap((hand): PartPlan[] => {
    const left = hand === 'left';
    const door = { zone: `door-${hand}`, hand } as const;
    const other = (id: string) => (left ? {} : { mirrorOf: `${id}-left` });
    const named = (name: string) => `${name}, ${hand}`;
    const roll = left ? placedAt(way.slate, towardYellow, 0.7 * agreedMasterLimit) : plus(upperDash(way), [-0.26, -0.02, 0.17]);
    const pocket = plus(way.lower, left ? [0.5, 0.02, -0.22] : [-0.66, -0.03, 0.02]);
    return [
      {
        ...door, ...other('door-roll'), id: `door-roll-${hand}`, name: named('Door top roll'), target: { master: 'master-slate-skin', colourLimit: agreedMasterLimit },
        sources: [
          sourceOf(`door-roll-${hand}`, 'brennhalt', 'soft-skin', roll, 2.2, [18.9, 121000, 22], { grain: grains.fine, status: 'series', earlierLots: 2, exposed: left, share: 0.6 }),
          sourceOf(`door-roll-${hand}`, 'orvandel', 'soft-skin', plus(way.slate, left ? [0.05, 0.03, -0.3] : [0.2, 0.03, -0.4]), 2.05, [20.2, 127000, 25], { grain: grains.fine, share: 0.4 }),
          ...(left ? [sourceOf('door-roll-left', 'tulvering', 'soft-skin', plus(way.slate, [-0.4, 0.08, 0.3]), 1.9, [17.2, 119000, 29], { grain: grains.fine, status: 'candidate' })] : []),
        ],
      },
      {
        ...door, ...other('door-decor'), id: `door-decor-${hand}`, name: named('Door decor strip'), target: { master: 'master-bronze' },
        sources: [
          sourceOf(`door-decor-${hand}`, 'kestemoor', 'decor-film', plus(way.bronze, left ? [0.2, 0.1, -0.2] : [-0.15, -0.1, 0.25]), left ? 24.3 : 23.6, [9.9, 52000, 15]),
          ...(left ? [sourceOf('door-decor-left', 'sundvale', 'decor-film', plus(way.bronze, [-0.6, 0.3, 0.5]), 25.6, [9.1, 57000, 18], { status: 'candidate' })] : []),
        ],
      },
      {
        ...door, ...other('door-insert'), id: `door-insert-${hand}`, name: named('Door insert'), module: `door-trim-${hand}`, target: { master: 'master-cloth' },
        sources: [
          sourceOf(`door-insert-${hand}`, 'quillmoor', 'textile', plus(way.cloth, left ? [0.7, 0.02, -0.14] : [-0.45, -0.05, 0.14]), 1, [13.2, 44000, 12], { surface: 'melange', status: 'series' }),
          ...(left ? [sourceOf('door-insert-left', 'haddesk', 'textile', plus(way.cloth, [-0.7, 0.1, 0.2]), 1, [12.4, 47000, 14], { surface: 'melange', status: 'candidate' })] : []),
        ],
      },
      {
        ...door, ...other('door-armrest'), id: `door-armrest-${hand}`, name: named('Door armrest'), module: `door-trim-${hand}`, target: { master: 'master-hide' },
        sources: [
          sourceOf(`door-armrest-${hand}`, 'quillmoor', 'leather', plus(way.hide, left ? [0.2, 0.03, 0.1] : [-0.16, -0.04, -0.05]), 2, [24.8, 39000, 13], { grain: grains.hide, status: 'series' }),
          ...(left ? [sourceOf('door-armrest-left', 'haddesk', 'leather', plus(way.hide, [0.1, 0.02, 0.05]), 2.1, [26.9, 36000, 15], { grain: grains.hide })] : []),
        ],
      },
      {
        ...door, ...other('door-switch'), id: `door-switch-${hand}`, name: named('Switch panel'), visibility: 0.7, ...(left ? { target: { master: 'master-black' } } : {}),
        sources: [left ? panel : unmeasured(panel, 'door-switch-right')],
      },
      {
        ...door, ...other('map-pocket'), id: `map-pocket-${hand}`, name: named('Map pocket panel'), target: { master: 'master-lower-moulded' },
        sources: [
          sourceOf(`map-pocket-${hand}`, 'orvandel', 'moulded', pocket, 1.85, [22.6, 188000, 21], { grain: grains.coarse, status: 'series', earlierLots: 2 }),
          ...(left ? [sourceOf('map-pocket-left', 'tulvering', 'moulded', plus(way.lower, [-0.1, 0.04, 0.15]), 2, [23.8, 196000, 23], { grain: grains.coarse })] : []),
        ],
      },
      {
        ...door, ...other('sill'), zone: 'floor', id: `sill-${hand}`, name: named('Sill trim'), visibility: 0.5, target: { master: 'master-lower-moulded' },
        sources: [
          left
            ? sourceOf('sill-left', 'tulvering', 'moulded', plus(pocket, [-0.24, -0.03, 0.14]), troubled ? 2.75 : 2, [7.3, 68000, 15], { grain: grains.coarse })
            : sourceOf('sill-right', 'tulvering', 'moulded', plus(pocket, troubled ? [0.58, 0.03, -0.05] : [0.2, 0.03, -0.05]), 1.9, [7.3, 68000, 15], { grain: grains.coarse, ...(troubled ? { session: 'yard' } : {}) }),
          sourceOf(`sill-${hand}`, 'orvandel', 'moulded', plus(pocket, [0.2, 0.02, -0.1]), 1.95, [7.9, 72000, 17], { grain: grains.coarse }),
          ...(left ? [sourceOf('sill-left', 'pallendine', 'moulded', plus(pocket, [-0.4, 0.06, 0.25]), 2.3, [6.8, 65000, 20], { grain: grains.coarse, status: 'candidate' })] : []),
        ],
      },
      {
        ...door, ...other('roll-stitch'), id: `roll-stitch-${hand}`, name: named('Top roll stitch'), visibility: 0.6, ...(left ? { target: { master: 'master-thread' } } : {}),
        sources: [left ? stitch : unmeasured(stitch, 'roll-stitch-right')],
      },
    ];
  });
}

function consoleParts(way: Colourway, troubled: boolean): PartPlan[] {
  const side = sourceOf('console-side-left', 'orvandel', 'moulded', plus(way.lower, [0.1, 0.01, 0.1]), 1.95, [12.7, 109000, 19], { grain: grains.coarse });
  const zone = { zone: 'console' } as const;
  return [
    {
      ...zone, id: 'console-frame', name: 'Console frame', target: { master: 'master-paint' },
      sources: [
        sourceOf('console-frame', 'sundvale', 'painted', plus(way.paint, [-0.14, 0, 0.06]), 6.3, [34.6, 176000, 22], { status: 'series', sphereToo: true }),
        sourceOf('console-frame', 'kestemoor', 'painted', plus(way.paint, [0.25, 0.03, -0.15]), 6, [32.9, 184000, 26], { status: 'candidate' }),
      ],
    },
    { ...zone, id: 'selector-surround', name: 'Selector surround', target: { master: 'master-black' }, sources: [sourceOf('selector-surround', 'sundvale', 'gloss-black', plus(way.black, [-0.05, 0.03, 0]), 86.2, [11.9, 79000, 18])] },
    {
      ...zone, id: 'console-lid', name: 'Console lid', target: { master: 'master-lid' }, ...(troubled ? { note: 'Its own, lighter tone: a step to the frame is wanted.' } : {}),
      sources: [
        sourceOf('console-lid', 'haddesk', 'leather', plus(way.lid, [0.1, 0.02, 0.1]), 2.05, [28.4, 33000, 14], { grain: grains.hide, status: 'series' }),
        sourceOf('console-lid', 'quillmoor', 'leather', plus(way.lid, [1.9, 0, 0.05]), 2, [27.2, 35000, 16], { grain: grains.hide }),
      ],
    },
    { ...zone, id: 'console-side-left', name: 'Console side, left', hand: 'left', target: { master: 'master-lower-moulded' }, sources: [side] },
    { ...zone, id: 'console-side-right', name: 'Console side, right', hand: 'right', mirrorOf: 'console-side-left', sources: [unmeasured(side, 'console-side-right')] },
    { ...zone, id: 'lid-stitch', name: 'Console lid stitch', visibility: 0.6, target: { master: 'master-thread' }, sources: [sourceOf('lid-stitch', 'quillmoor', 'thread', plus(way.thread, [0.2, -0.2, 0.1]), 1, [0.7, 0, 6])] },
  ];
}

function seatParts(way: Colourway, troubled: boolean): PartPlan[] {
  const stitch = sourceOf('seat-stitch-left', 'quillmoor', 'thread', plus(way.thread, [0.1, -0.1, 0.3]), 1, [1.4, 0, 6]);
  return (['left', 'right'] as const).flatMap((hand): PartPlan[] => {
    const left = hand === 'left';
    const seat = { zone: 'seats', hand } as const;
    const other = (id: string) => (left ? {} : { mirrorOf: `${id}-left` });
    const bolster = plus(way.hide, left ? [0.3, 0.02, 0.05] : [-0.2, -0.02, 0.14]);
    const rest = plus(bolster, left ? (troubled ? [-0.68, -0.03, 0.05] : [-0.3, -0.03, 0.05]) : [-0.45, 0.05, 0.02]);
    return [
      {
        ...seat, ...other('headrest'), id: `headrest-${hand}`, name: `Headrest, ${hand}`, module: `seat-${hand}`, target: { master: 'master-hide' },
        sources: [sourceOf(`headrest-${hand}`, 'haddesk', 'leather', rest, 1.95, [19.8, 28000, 12], { grain: grains.hide, status: 'series', ...(left && troubled ? { spots: 3 } : {}) })],
      },
      {
        ...seat, ...other('seat-bolster'), id: `seat-bolster-${hand}`, name: `Seat bolster, ${hand}`, module: `seat-${hand}`, target: { master: 'master-hide' },
        sources: [
          sourceOf(`seat-bolster-${hand}`, 'haddesk', 'leather', bolster, 2.05, [58.2, 46000, 14], { grain: grains.hide, status: 'series' }),
        ],
      },
      {
        ...seat, ...other('seat-back'), id: `seat-back-${hand}`, name: `Backrest centre, ${hand}`, module: `seat-cover-${hand}`, target: { master: 'master-cloth' },
        sources: [
          sourceOf(`seat-back-${hand}`, 'quillmoor', 'textile', plus(way.cloth, left ? [-0.55, 0.03, 0.06] : [0.35, 0.05, -0.08]), 1, [16.3, 21000, 10], { surface: 'melange', status: 'series' }),
          ...(left ? [sourceOf('seat-back-left', 'haddesk', 'textile', plus(way.cloth, [0.8, 0.1, 0.3]), 1, [15.1, 24000, 13], { surface: 'melange', status: 'candidate' })] : []),
        ],
      },
      {
        ...seat, ...other('seat-cushion'), id: `seat-cushion-${hand}`, name: `Seat cushion, ${hand}`, module: `seat-cover-${hand}`, target: { master: 'master-cloth' },
        sources: [
          sourceOf(`seat-cushion-${hand}`, 'quillmoor', 'textile', plus(way.cloth, left ? [0.62, 0.02, -0.12] : [-0.6, -0.05, 0.14]), 1, [18.8, 23000, 10], { surface: 'melange', status: 'series' }),
          ...(left ? [sourceOf('seat-cushion-left', 'haddesk', 'textile', plus(way.cloth, [0.5, 0.12, 0.2]), 1, [17.6, 25000, 13], { surface: 'melange', status: 'candidate' })] : []),
        ],
      },
      {
        ...seat, ...other('seat-stitch'), id: `seat-stitch-${hand}`, name: `Seat stitch, ${hand}`, visibility: 0.6, ...(left ? { target: { master: 'master-thread' } } : {}),
        sources: [left ? stitch : unmeasured(stitch, 'seat-stitch-right')],
      },
    ];
  });
}

function floorParts(way: Colourway): PartPlan[] {
  return (['left', 'right'] as const).map((hand): PartPlan => ({
    zone: 'floor', hand, id: `carpet-${hand}`, name: `Floor carpet, ${hand}`, visibility: 0.4, target: { master: 'master-carpet' },
    ...(hand === 'right' ? { mirrorOf: 'carpet-left' } : {}),
    sources: [
      sourceOf(`carpet-${hand}`, 'pallendine', 'carpet', plus(way.carpet, hand === 'left' ? [0.75, 0.03, 0.08] : [-0.4, -0.04, 0.12]), 1, [31.5, 27000, 11], { session: 'carpet-line', status: 'series', exposed: hand === 'left' }),
      sourceOf(`carpet-${hand}`, 'quillmoor', 'carpet', plus(way.carpet, [0.9, 0.1, 0.2]), 1, [29.7, 31000, 15], { session: 'carpet-line', status: 'candidate', spots: 5 }),
    ],
  }));
}
