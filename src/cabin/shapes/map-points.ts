import type { MapPoint } from '../cabin.ts';
import type { Schema } from '../schema/index.ts';
import { list, number, tuple } from '../schema/index.ts';

const coordinate = number({ min: -1e6, max: 1e6, unit: 'mm' });

/** Points on the cabin map, at least two. */
export const mapPoints = (): Schema<readonly MapPoint[]> =>
  list(tuple<MapPoint>('a point x, y', coordinate, coordinate), { min: 2, max: 5000, items: 'points' });
