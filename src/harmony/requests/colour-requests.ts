import { difference } from '../../colour/difference.ts';
import { aperturesMayBeAlike } from '../../readings/aperture-class.ts';
import { chanceOfDeciding } from '../../readings/colour-spots-needed.ts';
import type { OpenColourCheck } from '../../readings/colour-spots-needed.ts';
import { colourQuestion } from '../checks/colour.ts';
import { nearMissQuestion } from '../checks/near-miss.ts';
import { colourEvent } from '../colour-evaluation.ts';
import type { JudgeContext } from '../judge-context.ts';
import type { JudgedJoint } from '../judge-joint.ts';
import type { CheckResult, MeasurementRequest } from '../judgement.ts';
import type { PartBasis } from '../part-basis.ts';
import { addressed, anyInstrument, correlationTogether, instrumentName, wantedSpots } from './request-line.ts';

function eventOf({ input }: JudgedJoint, check: CheckResult): OpenColourCheck | undefined {
  if (typeof input.colour === 'string') return undefined;
  const event = colourEvent(input.colour, check.check === 'near-miss' ? nearMissQuestion(input) : colourQuestion(input));
  return event.lights.length === 0 ? undefined : event;
}

/** Share of the instruments' covariance that is left once one instrument has read both sides in one session; 1 where nothing is won. */
function instrumentShareLeft(judged: JudgedJoint, same: boolean): number {
  const [first, second] = judged.input.sides;
  const light = typeof judged.input.colour === 'string' ? undefined : judged.input.colour.lights[0];
  const like = first.materialClass?.family === second.materialClass?.family && first.source.surface === second.source.surface;
  const { sameInstrument } = judged.input.book.assumed.correlation;
  const rho = correlationTogether(judged, like, light === undefined ? undefined : difference({ name: 'cie76' }, light.standard, light.trial));
  return same ? (sameInstrument >= 1 ? 1 : (1 - rho) / (1 - sameInstrument)) : 1 - rho;
}

/** Readings that would decide a joint's open colour or near-miss check, or put an end to its want of data. */
export function colourRequests(context: JudgeContext, judged: JudgedJoint, check: CheckResult): readonly MeasurementRequest[] {
  const { input, pairing, result } = judged;
  const event = eventOf(judged, check);
  const have = (index: number): number => pairing.groups?.[index].spots ?? 0;
  const instrument = (index: number): string => {
    const id = pairing.groups?.[index].instrument;
    return id === undefined ? anyInstrument : instrumentName(context, id);
  };
  // An instrument that read other geometries, or no spectra, cannot be asked for these: the one of the other side can, or any that agrees with it.
  const able = (index: number, wanted: string, needsSpectrum: boolean): string => {
    const other = pairing.groups?.[1 - index];
    const own = context.index.instruments.get(other?.instrument ?? '');
    return other !== undefined && own !== undefined && other.geometryClass === wanted && (!needsSpectrum || own.kind === 'spectrophotometer') ? own.name : anyInstrument;
  };
  const geometry = (index: number): string => pairing.groups?.[index].geometryClass ?? context.book.geometryOrder[0] ?? '45:0';
  const line = (index: number, wanted: Pick<MeasurementRequest, 'spots' | 'reason'> & Partial<Pick<MeasurementRequest, 'instrument' | 'geometry' | 'chance'>>): MeasurementRequest => ({
    joint: result.id, check: check.check, ...addressed(context, input.sides[index], 'colour'),
    have: have(index), instrument: instrument(index), geometry: geometry(index), chance: undefined, ...wanted,
  });
  switch (check.cause) {
    case 'too few spots': {
      const needed = check.spotsNeeded ?? context.book.assumed.maximumSpots;
      const chance = event === undefined ? undefined : chanceOfDeciding(event, needed);
      return [0, 1].filter((index) => have(index) < needed)
        .map((index) => line(index, { spots: needed, chance, reason: `${needed} spots decide the joint if the values stay as they are` }));
    }
    case 'instruments disagree': {
      const index = have(0) >= have(1) ? 1 : 0;
      const other = 1 - index;
      const wanted = Math.max(wantedSpots(input.sides[index]), have(index));
      const same = pairing.groups?.[0].instrument === pairing.groups?.[1].instrument;
      const left = instrumentShareLeft(judged, same);
      if (left >= 1) return [];
      return [line(index, {
        spots: wanted, instrument: instrument(other), geometry: geometry(other),
        chance: event === undefined ? undefined : chanceOfDeciding(event, wanted, Float64Array.from(event.spread.instrument, (entry) => left * entry)),
        reason: same ? 'in the same calibration period as the other side, under the same conditions: the deviation of the instrument then cancels'
          : 'both sides on one instrument, in one session: its deviation then cancels',
      })];
    }
    case 'conditions': {
      const wanted = context.book.geometryOrder[0] ?? '45:0';
      const apertures = [0, 1].map((index) => pairing.groups?.[index].apertureClass ?? 'unknown');
      const through = (index: number): string => (apertures[index] === 'unknown' ? '' : ` through an aperture of ${apertures[index]}`);
      if (geometry(0) === geometry(1) && !aperturesMayBeAlike(apertures[0], apertures[1])) {
        const index = have(0) >= have(1) ? 1 : 0;
        return [line(index, {
          spots: wantedSpots(input.sides[index]), instrument: instrument(1 - index),
          reason: `the other side was read${through(1 - index)}; unlike apertures are not compared`,
        })];
      }
      return [0, 1].filter((index) => geometry(index) !== wanted).map((index) => line(index, {
        spots: wantedSpots(input.sides[index]), geometry: wanted, instrument: able(index, wanted, false),
        reason: `the other side was measured at ${geometry(1 - index)}${geometry(1 - index) === wanted ? through(1 - index) : ''}; unlike geometries are not compared`,
      }));
    }
    case 'missing data': {
      const spectral = (side: PartBasis): boolean => side.colour?.groups.some((group) => group.readings.some((reading) => reading.quantity === 'spectrum')) ?? false;
      return [0, 1].filter((index) => !spectral(input.sides[index])).map((index) => line(index, {
        spots: wantedSpots(input.sides[index]), instrument: able(index, geometry(index), true),
        chance: event === undefined ? undefined : chanceOfDeciding(event, wantedSpots(input.sides[index])),
        reason: input.sides[index].colour === undefined ? 'there is no colour reading' : 'spectra are wanted: CIELAB values serve under their own light only',
      }));
    }
    default:
      return [];
  }
}
