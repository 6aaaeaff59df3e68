import type { Tile, TileSet } from '../../../src/cabin/cabin.ts';
import type { Lab } from '../../../src/quantities.ts';
import type { Reading } from '../../../src/readings/reading.ts';
import { labOf } from '../physics/grid.ts';
import type { Surface } from '../physics/layer.ts';
import { nudger } from '../physics/nudge.ts';
import { recipeFor, spectrumOf } from '../physics/recipe.ts';
import { conditions, sessions } from '../plan/registers.ts';
import type { TilePlan } from '../plan/tiles.ts';
import { tilePlans, tileSessions, tilesMeasuredOn } from '../plan/tiles.ts';
import { randomOf } from '../random.ts';
import type { FileLog } from './file-log.ts';

const surface: Surface = { index: 1.5, gloss60: 85, openness: 1 };
const rounded = (value: number, places: number): number => Math.round(value * 10 ** places) / 10 ** places;

function readingOf(plan: TilePlan, { session: name, scatter }: (typeof tileSessions)[number], log: FileLog): Reading {
  const session = sessions[name];
  const geometry = conditions.find(({ id }) => id === session.conditions)?.geometry ?? 'unknown';
  const random = randomOf(`tile ${plan.id} ${session.conditions}`);
  const deviation = session.deviation.map((value, axis) => value + scatter[axis] * random.normal()) as unknown as Lab;
  const values = spectrumOf(recipeFor(plan.lab, surface, geometry, session.grid, { kind: 'mineral' }), surface, geometry, session.grid);
  const reported = nudger(values, session.grid)(deviation).map((value) => rounded(value, 5));
  const common = { spot: { name: '1' }, conditions: session.conditions, averagedFrom: 3, measuredAt: tilesMeasuredOn };
  if (name === 'tri-filter') {
    const lab = labOf(reported, session.grid).map((value) => rounded(value, 2)) as unknown as Lab;
    return { quantity: 'cielab', ...common, lab, light: 'D65', observer: 10, ...log.row('tiles-2026-05', tilesMeasuredOn, [plan.id, session.conditions, ...lab]) };
  }
  return {
    quantity: 'spectrum', ...common, startNm: session.grid.startNm, stepNm: session.grid.stepNm, values: reported, bandpassCorrected: true,
    ...log.row('tiles-2026-05', tilesMeasuredOn, [plan.id, session.conditions, ...reported]),
  };
}

/** The shared tiles as the 45:0 instruments read them. */
export const tileSetDocument = (log: FileLog): TileSet => ({
  id: 'tiles-trim', name: 'Twelve trim tones, painted (invented)',
  note: 'Read on the two spectrophotometers at 45:0 and on the colorimeter that has no agreement set yet.',
  tiles: tilePlans.map((plan): Tile => ({ id: plan.id, name: plan.name, readings: tileSessions.map((session) => readingOf(plan, session, log)) })),
});
