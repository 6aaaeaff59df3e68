import type { Specimen } from '../../cabin/cabin.ts';
import type { JudgeContext } from '../judge-context.ts';
import type { PartBasis } from '../part-basis.ts';

/** The recorded master that a part is held to. */
export const masterOf = (context: JudgeContext, basis: PartBasis): Specimen | undefined => context.index.masters.get(basis.part.target?.master ?? '');

/** "its master m-12, issue B": with the issue, where it has one. */
export const masterPhrase = ({ id, issue }: Specimen): string => `its master ${id}${issue === undefined ? '' : `, issue ${issue}`}`;

/** What is to be minded of a master on the day of the judgement. */
export function masterCautions(context: JudgeContext, basis: PartBasis): readonly string[] {
  const master = masterOf(context, basis);
  if (master === undefined) return [];
  return [
    ...(master.expires !== undefined && master.expires < context.asOf ? [`master ${master.id} expired on ${master.expires}`] : []),
    ...(master.remeasureOn !== undefined && master.remeasureOn < context.asOf ? [`master ${master.id} was due for remeasuring on ${master.remeasureOn}`] : []),
  ];
}
