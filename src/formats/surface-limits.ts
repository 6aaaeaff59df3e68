import type { SurfaceFaults } from './surface-faults.ts';

/** Most that is read of one surface. */
export const surfaceLimits = { bytes: 512 * 1024 * 1024, points: 40_000_000, header: 64 * 1024 * 1024, parts: 1000 } as const;

/** Whether a grid of this size is read; a fault if it is not, before any room is made for it. */
export function gridFits(width: number, height: number, faults: SurfaceFaults, path: string): boolean {
  if (!Number.isInteger(width) || !Number.isInteger(height) || width < 1 || height < 1) {
    faults.add('out-of-range', { path, found: `${width} x ${height} points`, expected: 'at least one point on each axis' });
    return false;
  }
  if (width * height <= surfaceLimits.points) return true;
  faults.add('file-too-large', { path, found: `${width} x ${height} points`, expected: `at most ${surfaceLimits.points} points`, hint: 'Cut the field or sample it more coarsely.' });
  return false;
}
