import type { Cabin, Joint, Part, ProposedShift, Specimen } from '../../cabin/cabin.ts';
import { cabinIndex } from '../../cabin/cabin-index.ts';
import { standingOf } from '../../cabin/standing.ts';
import { lightByName } from '../../colour/lights.ts';
import { reachingChange } from '../../colour/reaching-change.ts';
import type { Lab } from '../../quantities.ts';
import type { ObserverDegrees, Reading, SpectrumReading } from '../../readings/reading.ts';

/** What is tried at a joint; all of it may be left out. */
export interface Trial {
  readonly shifts?: readonly ProposedShift[];
  readonly gapMm?: number;
  readonly viewMm?: number;
}

/** A cabin as it would be, to be judged by the ordinary check. */
export interface ProposedCabin {
  readonly cabin: Cabin;
  /** Parts beside those asked for that change with them, since they borrow the same readings. */
  readonly together: readonly string[];
}

const shiftLight = 'D65';

/**
 * The cabin with the readings of the specimens that stand for the shifted parts at the stage moved, and the joint's measures set.
 * Spectra move by the change of reflectance that gives the shift under D65 for the observer, reckoned from the mean of the readings on
 * one grid; CIELAB readings and differences to a master move by the same numbers; gloss does not fall below 0. Whatever does not change
 * keeps its identity.
 */
export function proposedCabin(cabin: Cabin, joint: string, trial: Trial, options: { readonly stage: string; readonly observer: ObserverDegrees }): ProposedCabin {
  const moves = specimenMoves(cabin, trial.shifts ?? [], options.stage);
  const specimens = new Map([...moves].map(([id, move]) => [id, movedSpecimen(move, options.observer)]));
  const parts = moves.size === 0 ? cabin.parts : cabin.parts.map((part) => withSpecimens(part, specimens));
  const joints = trial.gapMm === undefined && trial.viewMm === undefined
    ? cabin.joints
    : cabin.joints.map((one) => (one.id === joint ? measured(one, trial) : one));
  const asked = new Set(trial.shifts?.map(({ part }) => part));
  const together = moves.size === 0 ? [] : cabin.parts.filter((part) => !asked.has(part.id) && standsByOne(cabin, part, options.stage, moves)).map(({ id }) => id);
  return { cabin: parts === cabin.parts && joints === cabin.joints ? cabin : { ...cabin, parts, joints }, together };
}

interface Move {
  readonly specimen: Specimen;
  dLab: Lab;
  dGloss: number;
}

function specimenMoves(cabin: Cabin, shifts: readonly ProposedShift[], stage: string): ReadonlyMap<string, Move> {
  const moves = new Map<string, Move>();
  const moveOf = (specimen: Specimen): Move => {
    const move = moves.get(specimen.id) ?? { specimen, dLab: [0, 0, 0] as const, dGloss: 0 };
    moves.set(specimen.id, move);
    return move;
  };
  for (const { part: id, dL = 0, da = 0, db = 0, dGloss = 0 } of shifts) {
    const part = cabinIndex(cabin).parts.get(id);
    if (part === undefined) continue;
    const [colour, gloss] = [standingOf(cabin, part, stage, 'colour'), standingOf(cabin, part, stage, 'gloss')];
    if (colour !== undefined && (dL !== 0 || da !== 0 || db !== 0)) moveOf(colour.specimen).dLab = [dL, da, db];
    if (gloss !== undefined && dGloss !== 0) moveOf(gloss.specimen).dGloss = dGloss;
  }
  return moves;
}

const standsByOne = (cabin: Cabin, part: Part, stage: string, moves: ReadonlyMap<string, Move>): boolean =>
  (['colour', 'gloss'] as const).some((quantity) => {
    const move = moves.get(standingOf(cabin, part, stage, quantity)?.specimen.id ?? '');
    return move !== undefined && (quantity === 'gloss' ? move.dGloss !== 0 : move.dLab.some((value) => value !== 0));
  });

function withSpecimens(part: Part, moved: ReadonlyMap<string, Specimen>): Part {
  if (!part.sources.some((source) => source.specimens.some(({ id }) => moved.has(id)))) return part;
  return { ...part, sources: part.sources.map((source) => ({ ...source, specimens: source.specimens.map((specimen) => moved.get(specimen.id) ?? specimen) })) };
}

const measured = (joint: Joint, { gapMm = joint.gapMm, viewMm = joint.viewMm }: Trial): Joint =>
  ({ ...joint, ...(gapMm === undefined ? {} : { gapMm }), ...(viewMm === undefined ? {} : { viewMm }) });

const gridOf = ({ startNm, stepNm, values }: SpectrumReading): string => `${startNm} ${stepNm} ${values.length}`;

function movedSpecimen({ specimen, dLab, dGloss }: Move, observer: ObserverDegrees): Specimen {
  const light = lightByName(shiftLight);
  const changes = new Map<string, Float64Array>();
  if (light !== undefined && dLab.some((value) => value !== 0)) {
    const spectra = specimen.readings.filter((reading) => reading.quantity === 'spectrum');
    for (const grid of new Set(spectra.map(gridOf))) {
      const alike = spectra.filter((reading) => gridOf(reading) === grid);
      const mean = alike[0].values.map((_, band) => alike.reduce((sum, reading) => sum + reading.values[band], 0) / alike.length);
      changes.set(grid, reachingChange({ startNm: alike[0].startNm, stepNm: alike[0].stepNm, values: mean }, light, observer, dLab));
    }
  }
  return { ...specimen, readings: specimen.readings.map((reading) => movedReading(reading, dLab, dGloss, changes)) };
}

function movedReading(reading: Reading, dLab: Lab, dGloss: number, changes: ReadonlyMap<string, Float64Array>): Reading {
  const moved = (lab: Lab): Lab => [lab[0] + dLab[0], lab[1] + dLab[1], lab[2] + dLab[2]];
  switch (reading.quantity) {
    case 'gloss': return dGloss === 0 ? reading : { ...reading, gloss: Math.max(0, reading.gloss + dGloss) };
    case 'cielab': {
      const [L, a, b] = moved(reading.lab);
      return { ...reading, lab: [Math.max(0, L), a, b] };
    }
    case 'difference': return { ...reading, difference: moved(reading.difference) };
    case 'spectrum': {
      const change = changes.get(gridOf(reading));
      return change === undefined ? reading : { ...reading, values: reading.values.map((value, band) => Math.max(0, value + change[band])) };
    }
    default: return reading;
  }
}
