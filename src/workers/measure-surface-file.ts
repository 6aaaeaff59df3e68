import { readSurface } from '../formats/surface-reader.ts';
import { surfaceReadingSteps } from '../formats/surface-reading.ts';
import { hasErrors } from '../issue.ts';
import { countMissing } from '../texture/index.ts';
import type { HeightMap, Steps, SurfaceMeasurement } from '../texture/index.ts';
import { partOfSteps } from '../texture/steps.ts';
import type { MeasuredReply, RefusedSurface, SurfaceRequest } from './surface-protocol.ts';

/** Largest part of the heights that is handed back for pictures, points on a side. */
const mostPoints = 1024;
/** Share of the work that reading the file is. */
export const readingShare = 0.1;

/** Reads a file of a surface and measures it, step by step. Reading is one step, which cannot be interrupted. */
export function* measureSurfaceFileSteps({ bytes, reading, measuring }: SurfaceRequest): Steps<MeasuredReply | RefusedSurface> {
  const { value: file, issues } = readSurface(bytes, reading);
  if (file === undefined || hasErrors(issues)) return { kind: 'refused', issues };
  yield readingShare;
  const { data, measurement, spectrum } = yield* partOfSteps(surfaceReadingSteps(file, measuring), readingShare, 1);
  const grid = file.kind === 'heights' ? file.map : file.picture;
  const found = (measurement?.issues ?? []).map((issue) => (reading.file === undefined ? issue : { file: reading.file, ...issue }));
  return {
    kind: 'measured', surface: file.kind, format: file.format, width: grid.width, height: grid.height, spacingMm: grid.spacingMm, missing: countMissing(grid.values),
    data, measurement: measurement && withoutSurface(measurement), spectrum, heights: measurement && middleOf(measurement), issues: [...issues, ...found],
  };
}

function withoutSurface({ surface: _surface, ...rest }: SurfaceMeasurement): Omit<SurfaceMeasurement, 'surface'> {
  return rest;
}

/** The middle of the heights in single precision, so that little is handed over. */
function middleOf({ surface: { width, height, spacingMm, values } }: SurfaceMeasurement): HeightMap {
  const [wide, high] = [Math.min(width, mostPoints), Math.min(height, mostPoints)];
  const [left, top] = [Math.floor((width - wide) / 2), Math.floor((height - high) / 2)];
  const heights = new Float32Array(wide * high);
  for (let y = 0; y < high; y += 1) heights.set(values.subarray((top + y) * width + left, (top + y) * width + left + wide), y * wide);
  return { width: wide, height: high, spacingMm, values: heights, missing: countMissing(heights) };
}
