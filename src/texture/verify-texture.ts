import { publishedCheck, type PublishedCheck } from '../colour/published-check.ts';
import { vdiClasses, vdiClassesSource, vdiClassTolerance } from './published/vdi-classes.ts';
import { vdiClassOfRa } from './vdi-class.ts';

/** The table of texture classes, set against the formula. */
export const verifyTexture = (): PublishedCheck[] => vdiClasses.map(([vdiClass, raUm]) => publishedCheck(
  'VDI 3400 class', vdiClassesSource, `Ra ${raUm} um`, vdiClass, vdiClassOfRa(raUm), vdiClassTolerance));
