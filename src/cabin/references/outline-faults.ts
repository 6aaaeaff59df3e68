import type { Cabin } from '../cabin.ts';
import { polygonArea, selfCrossing } from '../outlines/polygon.ts';
import type { Draft, Faults } from '../schema/index.ts';
import { isThread } from './part-references.ts';
import { entriesOf } from './reference-index.ts';

/** An outline of a face has three points and an area; one that crosses itself is drawn, with a warning. */
export function checkOutlines(cabin: Draft<Cabin>, faults: Faults): void {
  for (const [at, part] of entriesOf(cabin.parts)) {
    const path = `parts[${at}].outline`;
    const points = entriesOf(part.outline).map(([, point]) => point);
    if (part.outline === undefined || points.length !== part.outline.length || isThread(part)) continue;
    if (points.length < 3) {
      faults.add('outline-too-short', {
        expected: 'at least 3 points', found: String(points.length), hint: 'Only thread may be a line of two points.',
      }, path);
    } else if (selfCrossing(points)) {
      faults.add('outline-crosses-itself', {
        severity: 'warning', expected: 'an outline that does not cross itself', found: 'edges that cross',
      }, path);
    } else if (Math.abs(polygonArea(points)) < 1e-6) {
      faults.add('outline-without-area', {
        severity: 'warning', expected: 'an outline that holds an area', found: 'points on a line',
      }, path);
    }
  }
}
