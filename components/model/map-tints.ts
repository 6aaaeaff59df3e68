import type { Judgement, Verdict } from '../../src/harmony/judgement.ts';
import { fixed } from '../../src/report/number-text.ts';
import { leadingCheck, uncertaintyUse } from './leading-check.ts';
import type { PartColour } from './part-colours.ts';
import { remembered } from './remembered.ts';

/** What the faces of the map are filled by. */
export const tints = ['colour', 'verdict', 'gloss', 'uncertainty'] as const;
export type Tint = (typeof tints)[number];

/** A fill, and hatching that says the same by its lines. */
export interface Tinted {
  readonly fill?: string;
  readonly hatch?: number;
}

export interface TintKey extends Tinted {
  readonly word: string;
}

/** Greys from dark to light: none of them tints the eye. */
const greys = ['#3d3d3d', '#5c5c5c', '#7d7d7d', '#9d9d9d', '#bdbdbd', '#e2e2e2'] as const;

const verdictTints: Readonly<Record<Verdict, Tinted>> = { holds: { fill: '#e2e2e2' }, open: { fill: '#b9b9b9', hatch: 9 }, clashes: { fill: '#7d7d7d', hatch: 4 } };
const worse: Readonly<Record<Verdict, number>> = { holds: 0, open: 1, clashes: 2 };

/** Upper ends of the steps, gloss units at 60 degrees: each about twice the one before. */
const glossSteps = [1, 2, 4, 10, 40] as const;
/** Upper ends of the steps, standard uncertainty as a share of the limit. */
const uncertaintySteps = [0.05, 0.1, 0.2, 0.4, 0.8] as const;

const step = (value: number, ends: readonly number[]): number => {
  const place = ends.findIndex((end) => value <= end);
  return place < 0 ? ends.length : place;
};

/** Fill of every part by id; a part without data for the tint has none. */
export function tintedParts(tint: Tint, judgement: Judgement, colours: ReadonlyMap<string, PartColour>): ReadonlyMap<string, Tinted> {
  switch (tint) {
    case 'colour': return colourFills(colours);
    case 'verdict': return new Map([...worstVerdicts(judgement)].map(([id, verdict]) => [id, verdictTints[verdict]]));
    case 'gloss': return new Map([...partGloss(judgement)].map(([id, gloss]) => [id, { fill: greys[step(gloss, glossSteps)] }]));
    case 'uncertainty': return new Map([...widestUncertainty(judgement)].map(([id, use]) => [id, { fill: greys[greys.length - 1 - step(use, uncertaintySteps)] }]));
  }
}

const colourFills = remembered((colours: ReadonlyMap<string, PartColour>): ReadonlyMap<string, Tinted> =>
  new Map([...colours].map(([id, { css }]) => [id, css === undefined ? {} : { fill: css }])));

/** The steps of a tint with their words; none for colour, which is its own key. */
export function tintKeys(tint: Tint): readonly TintKey[] {
  switch (tint) {
    case 'colour': return [];
    case 'verdict': return [
      { ...verdictTints.holds, word: 'every joint holds' }, { ...verdictTints.open, word: 'at worst open' }, { ...verdictTints.clashes, word: 'a joint clashes' },
    ];
    case 'gloss': return greys.map((fill, place) => ({ fill, word: ends(place, glossSteps, (value) => fixed(value, 0), ' GU') }));
    case 'uncertainty': return greys.map((_, place) => ({ fill: greys[greys.length - 1 - place], word: ends(place, uncertaintySteps, (value) => fixed(value * 100, 0), '\u00a0%') }));
  }
}

export const tintTitles: Readonly<Record<Tint, string>> = {
  colour: 'Colour under the light', verdict: 'Worst verdict', gloss: 'Gloss at 60°', uncertainty: 'Uncertainty, u of limit',
};

function ends(place: number, limits: readonly number[], text: (value: number) => string, unit: string): string {
  const [from, to] = [limits[place - 1], limits[place]];
  if (from === undefined) return `to ${text(to ?? 0)}${unit}`;
  return to === undefined ? `over ${text(from)}${unit}` : `${text(from)}–${text(to)}${unit}`;
}

/** The worst verdict of every part that has a joint. */
export function worstVerdicts(judgement: Judgement): ReadonlyMap<string, Verdict> {
  const worst = new Map<string, Verdict>();
  for (const { parts, verdict } of judgement.joints) {
    for (const id of parts) if (worse[verdict] >= worse[worst.get(id) ?? 'holds']) worst.set(id, verdict);
  }
  return worst;
}

/** Mean gloss at 60 degrees, else at the angle that was read. */
export function partGloss(judgement: Judgement): ReadonlyMap<string, number> {
  return new Map(judgement.parts.flatMap(({ id, appearance: { gloss } }) => {
    const mean = (gloss.find(({ angle }) => angle === 60) ?? gloss[0])?.mean;
    return mean === undefined ? [] : [[id, mean] as const];
  }));
}

/** The largest u / limit of the leading checks of a part's joints. */
export function widestUncertainty(judgement: Judgement): ReadonlyMap<string, number> {
  const widest = new Map<string, number>();
  for (const joint of judgement.joints) {
    const use = uncertaintyUse(leadingCheck(joint));
    if (use !== undefined) for (const id of joint.parts) widest.set(id, Math.max(use, widest.get(id) ?? 0));
  }
  return widest;
}
