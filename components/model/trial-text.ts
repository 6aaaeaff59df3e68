import type { Cabin, ProposedShift } from '../../src/cabin/cabin.ts';
import { cabinIndex } from '../../src/cabin/cabin-index.ts';
import type { Trial } from '../../src/plan/proposal/proposed-cabin.ts';
import { fixed, signed } from '../../src/report/number-text.ts';

export const shiftFields = ['dL', 'da', 'db', 'dGloss'] as const;
export type ShiftField = (typeof shiftFields)[number];
export const shiftNames: Readonly<Record<ShiftField, string>> = { dL: 'dL*', da: 'da*', db: 'db*', dGloss: 'dGloss' };

/** The shift of one part in a trial; empty where there is none. */
export const shiftOf = ({ shifts }: Trial, part: string): Omit<ProposedShift, 'part'> => shifts?.find((one) => one.part === part) ?? {};

/** The trial with one number of a part's shift set; a number of 0 is no shift. */
export function withShift(trial: Trial, part: string, field: ShiftField, value: number): Trial {
  const { part: _, ...before } = { part, ...shiftOf(trial, part) };
  const fields = Object.fromEntries(Object.entries({ ...before, [field]: value }).filter(([, one]) => one !== 0));
  const others = trial.shifts?.filter((one) => one.part !== part) ?? [];
  const shifts = Object.keys(fields).length === 0 ? others : [...others, { part, ...fields }];
  const { shifts: gone, ...rest } = trial;
  return shifts.length === 0 ? rest : { ...rest, shifts };
}

/** Whether nothing is tried. */
export const isNothing = ({ shifts, gapMm, viewMm }: Trial): boolean => shifts === undefined && gapMm === undefined && viewMm === undefined;

/** What is tried, in words: `Door left: dL* +0.60, dGloss −0.3; gap 2.5 mm`. */
export function trialText(cabin: Cabin, { shifts = [], gapMm, viewMm }: Trial): string {
  const parts = cabinIndex(cabin).parts;
  return [
    ...shifts.map((shift) => `${parts.get(shift.part)?.name ?? shift.part}: ${shiftFields.flatMap((field) =>
      (shift[field] === undefined ? [] : [`${shiftNames[field]} ${signed(shift[field], field === 'dGloss' ? 1 : 2)}${field === 'dGloss' ? ' GU' : ''}`])).join(', ')}`),
    ...(gapMm === undefined ? [] : [`gap ${fixed(gapMm, 1)} mm`]),
    ...(viewMm === undefined ? [] : [`seen from ${fixed(viewMm, 0)} mm`]),
  ].join('; ');
}
