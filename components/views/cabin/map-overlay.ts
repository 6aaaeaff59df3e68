import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { RunResult } from '../../../src/harmony/judgement.ts';
import type { MapPart } from '../../../src/report/figures/cabin-map.ts';
import type { MapPlace } from '../../../src/report/figures/map-place.ts';
import type { Point } from '../../../src/report/figures/polyline.ts';
import type { SceneElement } from '../../../src/report/scene.ts';
import type { MapPointers } from '../../controllers/map-pointers.ts';
import type { MapToolInHand } from '../../controllers/map-tool-in-hand.ts';
import { assumedOutlines } from '../../model/assumed-outlines.ts';
import { middleOf } from '../../model/part-middle.ts';
import { remembered } from '../../model/remembered.ts';
import { boxNames } from './box-names.ts';
import { runOverlay } from './map-run.ts';

/** What the drawings over the map hang on. */
export interface OverMap {
  readonly cabin: Cabin;
  readonly parts: readonly MapPart[];
  /** The run that is watched. */
  readonly run: RunResult | undefined;
  readonly inHand: MapToolInHand;
  readonly pulled: MapPointers['pulled'];
  readonly pointedPart: string | undefined;
}

const partsById = remembered((parts: readonly MapPart[]): ReadonlyMap<string, MapPart> => new Map(parts.map((part) => [part.id, part])));

/** What lies over the map and is drawn anew each time: names in assumed boxes, the run that is watched, the outline and the joint that are being drawn. */
export function mapOverlay({ cabin, parts, run, inHand: { tool, outlining, joining }, pulled, pointedPart }: OverMap, at: MapPlace): readonly (SceneElement | undefined)[] {
  const byId = partsById(parts);
  const middle = (id: string | undefined): Point | undefined => {
    const part = byId.get(id ?? '');
    return part === undefined ? undefined : at.toScreen(middleOf(part));
  };
  const from = tool === 'join' ? middle(pulled === undefined ? joining.first : pulled.part) : undefined;
  return [
    boxNames(assumedOutlines(cabin), byId, at),
    run === undefined ? undefined : runOverlay(run, byId, at),
    ...outlining.overlay(tool === 'outline', at),
    joining.overlay(from, pulled === undefined ? middle(pointedPart) : pulled.at),
  ];
}
