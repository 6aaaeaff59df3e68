import type { ProposedShift } from '../../src/cabin/cabin.ts';
import type { Trial } from '../../src/plan/proposal/proposed-cabin.ts';
import { isNothing, shiftFields } from './trial-text.ts';

/** A trial as an address carries it: `door-left,dL=0.6,dGloss=-0.3;gap=2.5;view=700`; empty where nothing is tried. */
export function trialAddress(trial: Trial): string {
  if (isNothing(trial)) return '';
  const shifts = (trial.shifts ?? []).map((shift) => [encodeURIComponent(shift.part), ...shiftFields.flatMap((field) => (shift[field] === undefined ? [] : [`${field}=${shift[field]}`]))].join(','));
  return [...shifts, ...(trial.gapMm === undefined ? [] : [`gap=${trial.gapMm}`]), ...(trial.viewMm === undefined ? [] : [`view=${trial.viewMm}`])].join(';');
}

const finite = (text: string | undefined): number | undefined => (text === undefined || text.trim() === '' || !Number.isFinite(Number(text)) ? undefined : Number(text));

/** Reads a trial of an address back; parts that are not of the joint, unknown fields and what is no number are left out. */
export function trialOfAddress(text: string, parts: readonly string[]): Trial {
  const pieces = text.split(';');
  const field = (name: string): number | undefined => finite(pieces.find((piece) => piece.startsWith(`${name}=`))?.slice(name.length + 1));
  const [gap, view] = [field('gap'), field('view')];
  const shifts = pieces.flatMap((piece): ProposedShift[] => {
    const [name = '', ...values] = piece.split(',');
    const part = parts.find((one) => encodeURIComponent(one) === name);
    if (part === undefined) return [];
    const fields = shiftFields.flatMap((key) => {
      const value = finite(values.find((one) => one.startsWith(`${key}=`))?.slice(key.length + 1));
      return value === undefined || value === 0 ? [] : [[key, value] as const];
    });
    return fields.length === 0 ? [] : [{ part, ...Object.fromEntries(fields) }];
  });
  return {
    ...(shifts.length === 0 ? {} : { shifts }), ...(gap === undefined || gap < 0 ? {} : { gapMm: gap }), ...(view === undefined || view <= 0 ? {} : { viewMm: view }),
  };
}
