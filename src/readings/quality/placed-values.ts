/** One number of one reading with the place it was taken at. */
export interface PlacedValue {
  readonly spot: string;
  readonly rotation: number;
  readonly value: number;
}

/** The values by spot and, within a spot, by rotation; in the order in which they first occur. */
export function placedCells<V extends Omit<PlacedValue, 'value'>>(values: readonly V[]): ReadonlyMap<string, ReadonlyMap<number, readonly V[]>> {
  const spots = new Map<string, Map<number, V[]>>();
  for (const item of values) {
    const rotations = spots.get(item.spot) ?? new Map<number, V[]>();
    spots.set(item.spot, rotations);
    const cell = rotations.get(item.rotation);
    if (cell === undefined) rotations.set(item.rotation, [item]);
    else cell.push(item);
  }
  return spots;
}
