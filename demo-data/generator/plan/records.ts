import type { Joint } from '../../../src/cabin/cabin.ts';

/** Booth records and decisions of a joint, by colourway. */
export function recordsFor(_joint: string, _way: 'slate' | 'chalk'): Pick<Joint, 'visualRecords' | 'decisions'> {
  return {};
}
