import { repeatability } from '../readings/quality/repeatability.ts';
import type { ReadingGroup } from '../readings/reading-groups.ts';
import type { JudgeContext } from './judge-context.ts';
import type { PartBasis } from './part-basis.ts';
import { figure } from './wording.ts';

/**
 * How far the spots of a melange lie about its mean colour, in words: a melange is judged by its mean, and its spread is shown. Mean CIE76 of
 * the spots to their mean under D65 (mean colour difference from the mean, ASTM E2214). Undefined for other surfaces and fewer than two spots.
 */
export function melangeSpread(context: JudgeContext, { part, source }: PartBasis, group: ReadingGroup): string | undefined {
  const light = context.light('D65');
  if (source.surface !== 'melange' || light === undefined) return undefined;
  const bySpot = new Map<string, ReadingGroup['readings'][number][]>();
  for (const reading of group.readings) bySpot.set(reading.spot.name, [...bySpot.get(reading.spot.name) ?? [], reading]);
  const judged = [{ name: 'D65', light, observer: context.book.observer }];
  const labs = [...bySpot.values()].map((readings) => context.sample({ ...group, readings, spots: 1 }, judged)?.means[0]).filter((lab) => lab !== undefined);
  if (labs.length < 2) return undefined;
  const { mcdm } = repeatability(labs, { name: 'cie76' });
  return `the spots of the melange ${context.names.get(part.id) ?? part.name} lie ΔE*ab ${figure(mcdm)} about their mean`;
}
