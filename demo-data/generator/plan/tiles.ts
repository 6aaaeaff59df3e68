import type { Lab } from '../../../src/quantities.ts';
import type { SessionName } from './types.ts';

export interface TilePlan {
  readonly id: string;
  readonly name: string;
  readonly lab: Lab;
}

/** Twelve painted tiles in tones of interior trim, invented: greys from black to light, and muted hues around them. */
export const tilePlans: readonly TilePlan[] = [
  { id: 'tile-black', name: 'Black', lab: [14, 0, -0.4] },
  { id: 'tile-charcoal', name: 'Charcoal', lab: [25, -0.1, -1] },
  { id: 'tile-slate', name: 'Slate', lab: [36, -0.4, -2] },
  { id: 'tile-mid-grey', name: 'Mid grey', lab: [50, -0.2, -0.5] },
  { id: 'tile-light-grey', name: 'Light grey', lab: [65, 0, 0.8] },
  { id: 'tile-chalk', name: 'Chalk', lab: [80, 0.3, 3] },
  { id: 'tile-brown', name: 'Brown', lab: [30, 6, 8] },
  { id: 'tile-tan', name: 'Tan', lab: [55, 8, 18] },
  { id: 'tile-sand', name: 'Sand', lab: [72, 3, 13] },
  { id: 'tile-wine', name: 'Wine', lab: [28, 10, 3] },
  { id: 'tile-navy', name: 'Navy', lab: [26, 0, -8] },
  { id: 'tile-olive', name: 'Olive', lab: [42, -5, 10] },
];

/** Instruments that read them, and how far each strays from tile to tile beside its fixed deviation: sd of L*, a*, b*. */
export const tileSessions: readonly { readonly session: SessionName; readonly scatter: Lab }[] = [
  { session: 'house', scatter: [0.05, 0.03, 0.03] },
  { session: 'yard', scatter: [0.1, 0.05, 0.06] },
  { session: 'tri-filter', scatter: [0.14, 0.08, 0.1] },
];

export const tilesMeasuredOn = '2026-05-11';
