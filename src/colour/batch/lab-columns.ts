/** CIELAB coordinates of many colours, one array for each coordinate, all of one length. */
export interface LabColumns {
  readonly L: Float64Array;
  readonly a: Float64Array;
  readonly b: Float64Array;
}

/** Room for `count` colours, all black. */
export const labColumns = (count: number): LabColumns =>
  ({ L: new Float64Array(count), a: new Float64Array(count), b: new Float64Array(count) });
