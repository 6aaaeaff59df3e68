import { scalarEventChance } from '../../readings/scalar-event.ts';
import type { ScalarEvent } from '../../readings/scalar-event.ts';
import { glossQuestion } from '../checks/gloss.ts';
import { textureQuestion } from '../checks/texture.ts';
import type { JudgeContext } from '../judge-context.ts';
import type { JudgedJoint } from '../judge-joint.ts';
import type { CheckResult, MeasurementRequest } from '../judgement.ts';
import type { PartBasis } from '../part-basis.ts';
import { addressed, arealGeometry, correlationTogether, instrumentName, instrumentOfKind, wantedSpots } from './request-line.ts';

/** What was read of the two sides in gloss or texture. */
interface SurfaceReadings {
  readonly quantity: 'gloss' | 'texture';
  readonly geometry: string;
  readonly event: ScalarEvent | undefined;
  /** By side; undefined where there is no reading. */
  readonly read: readonly ({ readonly spots: number; readonly instrument: string } | undefined)[];
  readonly noReading: string;
  /** Sd of the deviation of the standard's instrument, by check of the event. */
  readonly agreementSd: (check: number) => number;
}

/** Readings that would decide a joint's open gloss or texture check, or put an end to its want of data. */
export function surfaceRequests(context: JudgeContext, judged: JudgedJoint, check: CheckResult): readonly MeasurementRequest[] {
  const { input, result } = judged;
  const surface = check.check === 'gloss' ? glossReadings(input) : textureReadings(input);
  if (surface === undefined) return [];
  const { quantity, geometry, event, read } = surface;
  const called = (index: number): string => {
    const id = read[index]?.instrument;
    return id === undefined ? instrumentOfKind[quantity] : instrumentName(context, id);
  };
  const line = (index: number, spots: number, chance: number | undefined, reason: string): MeasurementRequest => ({
    joint: result.id, check: check.check, ...addressed(context, input.sides[index], quantity),
    have: read[index]?.spots ?? 0, spots, instrument: called(index), geometry, chance, reason,
  });
  if (check.verdict === 'no data') {
    return [0, 1].filter((index) => read[index] === undefined).map((index) => line(index, wantedSpots(input.sides[index]), undefined, surface.noReading));
  }
  if (event === undefined) return [];
  if (check.cause === 'too few spots') {
    const needed = check.spotsNeeded ?? context.book.assumed.maximumSpots;
    const chance = scalarEventChance(event, needed);
    return [0, 1].filter((index) => (read[index]?.spots ?? 0) < needed)
      .map((index) => line(index, needed, chance, `${needed} spots decide the ${quantity} if the values stay as they are`));
  }
  if (check.cause === 'instruments disagree') {
    const like = quantity === 'texture' || input.sides[0].materialClass?.family === input.sides[1].materialClass?.family;
    const rho = correlationTogether(judged, like);
    const together: ScalarEvent = { ...event, checks: event.checks.map((one, at) => ({ ...one, instrumentVariance: Math.min(one.instrumentVariance, 2 * (1 - rho) * surface.agreementSd(at) ** 2) })) };
    if (together.checks.every((one, at) => one.instrumentVariance === event.checks[at].instrumentVariance)) return [];
    const wanted = Math.max(read[1]?.spots ?? 0, wantedSpots(input.sides[1]));
    const reason = read[0]?.instrument === read[1]?.instrument
      ? 'in the same calibration period as the other side: the deviation of the instrument then cancels' : `both sides on one ${instrumentOfKind[quantity]}, in one session: its deviation then cancels`;
    return [{ ...line(1, wanted, scalarEventChance(event, wanted, together), reason), instrument: called(0) }];
  }
  return [];
}

function glossReadings(input: JudgedJoint['input']): SurfaceReadings | undefined {
  if (!input.rule.gloss.applicable) return undefined;
  const { angle } = input.rule.gloss;
  const question = glossQuestion(input);
  return {
    quantity: 'gloss', geometry: `${angle}°`, noReading: `there is no gloss reading at ${angle}°`,
    agreementSd: () => input.sides[0].gloss?.measured.instrument?.agreement?.glossSd ?? input.book.assumed.agreementGlossSd,
    event: question === undefined ? undefined : { checks: [question], wanted: 'all' },
    read: input.sides.map((side: PartBasis) => {
      const sample = side.gloss?.samples.find((candidate) => candidate.angle === angle);
      return sample === undefined ? undefined : { spots: sample.spots, instrument: sample.instruments[0] ?? '' };
    }),
  };
}

const textureReadings = (input: JudgedJoint['input']): SurfaceReadings => ({
  quantity: 'texture', geometry: arealGeometry, noReading: 'there are no areal parameters', event: textureQuestion(input),
  // The shape numbers and classes have no term of the instrument, so that nothing is taken off theirs.
  agreementSd: () => input.sides[0].texture?.measured.instrument?.agreement?.textureRelativeSd ?? input.book.assumed.textureAgreementRelativeSd,
  read: input.sides.map(({ texture }: PartBasis) => (texture === undefined ? undefined : { spots: texture.sample.spots, instrument: texture.sample.instrument })),
});
