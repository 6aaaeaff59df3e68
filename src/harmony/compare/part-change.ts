import type { Cabin } from '../../cabin/cabin.ts';
import type { Components } from '../../colour/components.ts';
import { components } from '../../colour/components.ts';
import { difference } from '../../colour/difference.ts';
import { differenceWords } from '../../colour/difference-words.ts';
import { lightByName } from '../../colour/lights.ts';
import { spectrumToLab } from '../../colour/index.ts';
import type { Lab } from '../../quantities.ts';
import type { GeometryClass, GlossAngle, ObserverDegrees } from '../../readings/reading.ts';
import type { PartAppearance } from '../judgement.ts';
import type { JudgedState } from './judged-state.ts';

/** What a part stood by. */
export interface PartStand {
  readonly source: string;
  readonly supplier: string;
  readonly specimen?: string;
  readonly borrowedFrom?: string;
  readonly geometry?: GeometryClass;
}

/** Change of a part's mean colour under D65, after minus before. */
export interface ColourChange extends Components {
  readonly light: 'D65';
  readonly observer: ObserverDegrees;
  readonly from: Lab;
  readonly to: Lab;
  readonly ciede2000: number;
  readonly words: readonly string[];
}

/** A part that is new, gone, or stands by something else or looks different than before. */
export interface PartChange {
  readonly part: string;
  readonly name: string;
  readonly before?: PartStand;
  readonly after?: PartStand;
  readonly colour?: ColourChange;
  /** Why colours before and after are not compared. */
  readonly notCompared?: string;
  readonly gloss: readonly { readonly angle: GlossAngle; readonly from: number; readonly to: number; readonly change: number }[];
  readonly texture?: { readonly from: number; readonly to: number; readonly change: number };
}

/** Parts of two judged states that are not alike, in the order of the later document, those that are gone last. Mean Sa stands for the texture, in micrometres. */
export function partChanges(before: JudgedState, after: JudgedState): readonly PartChange[] {
  const sides = [before, after].map((state) => ({
    names: new Map(state.cabin.parts.map((part) => [part.id, part.name])),
    looks: new Map(state.judgement.parts.map((part) => [part.id, part.appearance])),
    state,
  }));
  const [then, now] = sides;
  if (then === undefined || now === undefined) return [];
  return [...new Set([...now.looks.keys(), ...then.looks.keys()])].flatMap((part): PartChange[] => {
    const [first, second] = [then.looks.get(part), now.looks.get(part)];
    const stands = [first && standOf(before.cabin, first), second && standOf(after.cabin, second)];
    const looks = first !== undefined && second !== undefined ? lookChange(first, second, after.judgement.observer) : { gloss: [] };
    const alike = stands[0] !== undefined && stands[1] !== undefined && JSON.stringify(stands[0]) === JSON.stringify(stands[1])
      && looks.colour === undefined && looks.gloss.length === 0 && looks.texture === undefined;
    return alike ? [] : [{
      part, name: now.names.get(part) ?? then.names.get(part) ?? part,
      ...(stands[0] === undefined ? {} : { before: stands[0] }), ...(stands[1] === undefined ? {} : { after: stands[1] }), ...looks,
    }];
  });
}

function standOf(cabin: Cabin, { part, source, specimen, borrowedFrom, geometry }: PartAppearance): PartStand {
  const supplier = cabin.parts.find(({ id }) => id === part)?.sources.find(({ id }) => id === source)?.supplier ?? '';
  return {
    source, supplier: cabin.suppliers.find(({ id }) => id === supplier)?.name ?? supplier,
    ...(specimen === undefined ? {} : { specimen }), ...(borrowedFrom === undefined ? {} : { borrowedFrom }), ...(geometry === undefined ? {} : { geometry }),
  };
}

type LookChange = Pick<PartChange, 'colour' | 'notCompared' | 'gloss' | 'texture'>;

function lookChange(first: PartAppearance, second: PartAppearance, observer: ObserverDegrees): LookChange {
  const gloss = first.gloss.flatMap(({ angle, mean }) => {
    const to = second.gloss.find((other) => other.angle === angle)?.mean;
    return to === undefined || to === mean ? [] : [{ angle, from: mean, to, change: to - mean }];
  });
  const [from, to] = [first.texture?.saUm, second.texture?.saUm];
  const texture = from === undefined || to === undefined || from === to ? {} : { texture: { from, to, change: to - from } };
  return { ...colourChange(first, second, observer), gloss, ...texture };
}

function colourChange(first: PartAppearance, second: PartAppearance, observer: ObserverDegrees): Pick<PartChange, 'colour' | 'notCompared'> {
  const [from, to] = [labUnderDaylight(first, observer), labUnderDaylight(second, observer)];
  if (from === undefined || to === undefined) return from === to ? {} : { notCompared: `no colour under D65 ${from === undefined ? 'before' : 'now'}` };
  if (first.geometry !== second.geometry) return { notCompared: `measured at ${first.geometry ?? 'an unknown geometry'} before, at ${second.geometry ?? 'an unknown geometry'} now` };
  if (from.every((value, axis) => value === to[axis])) return {};
  return { colour: { light: 'D65', observer, from, to, ...components(from, to), ciede2000: difference({ name: 'ciede2000' }, from, to), words: differenceWords(from, to) } };
}

/** Mean CIELAB of what a part is drawn by, D65; undefined where its readings do not reach that light or observer. */
function labUnderDaylight({ spectrum, cielab }: PartAppearance, observer: ObserverDegrees): Lab | undefined {
  const light = lightByName('D65');
  if (spectrum !== undefined && light !== undefined) return spectrumToLab(spectrum, light, observer);
  return cielab !== undefined && cielab.light === 'D65' && cielab.observer === observer ? cielab.lab : undefined;
}
