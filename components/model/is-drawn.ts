import type { Part } from '../../src/cabin/cabin.ts';

/** Whether the part has an outline that a map can draw. */
export const isDrawn = (part: Part): boolean => part.outline !== undefined && part.outline.length >= 2;
