import type { Cabin } from '../cabin/cabin.ts';
import { chanceOfDeciding } from '../readings/colour-spots-needed.ts';
import type { OpenColourCheck } from '../readings/colour-spots-needed.ts';
import { scalarChanceOfDeciding } from '../readings/scalar-spots-needed.ts';
import { colourQuestion } from './checks/colour.ts';
import { glossQuestion } from './checks/gloss.ts';
import { nearMissQuestion } from './checks/near-miss.ts';
import { colourEvent } from './colour-evaluation.ts';
import type { JudgeContext } from './judge-context.ts';
import type { JudgedJoint } from './judge-joint.ts';
import { counts } from './judge-joint.ts';
import type { CheckResult, JointResult, MeasurementRequest } from './judgement.ts';
import type { PartBasis } from './part-basis.ts';

/** Readings that would decide the open joints, the likeliest to decide first; ties in the order of the document. */
export function measurementRequests(context: JudgeContext, joints: readonly JudgedJoint[]): readonly MeasurementRequest[] {
  const requests: MeasurementRequest[] = [];
  for (const judged of joints) if (judged.result.verdict === 'open') for (const request of requestsOf(context, judged)) requests.push(request);
  // Sorted by place and with the chances in one row: there are thousands of requests, and they are sorted again after every edit.
  const chances = new Float64Array(requests.length);
  requests.forEach(({ chance }, place) => { chances[place] = chance ?? 0; });
  const hopeful = [...chances.keys()].filter((place) => chances[place] > 0).sort((first, second) => chances[second] - chances[first]);
  const sorted = hopeful.map((place) => requests[place]);
  requests.forEach((request, place) => {
    if (!(chances[place] > 0)) sorted.push(request);
  });
  return sorted;
}

/** The requests of a joint that was judged before are those of before, as long as the suppliers have the same names. */
const asked = new WeakMap<JointResult, { readonly suppliers: Cabin['suppliers']; readonly requests: readonly MeasurementRequest[] }>();

function requestsOf(context: JudgeContext, judged: JudgedJoint): readonly MeasurementRequest[] {
  const { suppliers } = context.cabin;
  const known = asked.get(judged.result);
  if (known !== undefined && known.suppliers === suppliers) return known.requests;
  const requests = judged.result.checks.filter(counts).flatMap((check) => requestsFor(context, judged, check));
  asked.set(judged.result, { suppliers, requests });
  return requests;
}

function requestsFor(context: JudgeContext, judged: JudgedJoint, check: CheckResult): readonly MeasurementRequest[] {
  if (check.verdict !== 'open' && check.verdict !== 'no data') return [];
  if (check.check === 'colour' || check.check === 'near-miss') return colourRequests(context, judged, check);
  if (check.check === 'gloss') return glossRequests(context, judged, check);
  return [];
}

function eventOf({ input }: JudgedJoint, check: CheckResult): OpenColourCheck | undefined {
  if (typeof input.colour === 'string') return undefined;
  const event = colourEvent(input.colour, check.check === 'near-miss' ? nearMissQuestion(input) : colourQuestion(input));
  return event.lights.length === 0 ? undefined : event;
}

function colourRequests(context: JudgeContext, judged: JudgedJoint, check: CheckResult): readonly MeasurementRequest[] {
  const { input, pairing } = judged;
  const event = eventOf(judged, check);
  const spots = (side: PartBasis): number => side.materialClass?.wanted.spots ?? 5;
  const have = (index: number): number => pairing.groups?.[index].spots ?? 0;
  const anyInstrument = 'any with an agreement set';
  const instrument = (index: number): string => {
    const id = pairing.groups?.[index].instrument;
    return id === undefined ? anyInstrument : context.index.instruments.get(id)?.name ?? id;
  };
  // An instrument that read other geometries, or no spectra, cannot be asked for these: the one of the other side can, or any that agrees with it.
  const able = (index: number, wanted: string, needsSpectrum: boolean): string => {
    const other = pairing.groups?.[1 - index];
    const own = context.index.instruments.get(other?.instrument ?? '');
    return other !== undefined && own !== undefined && other.geometryClass === wanted && (!needsSpectrum || own.kind === 'spectrophotometer') ? own.name : anyInstrument;
  };
  const geometry = (index: number): string => pairing.groups?.[index].geometryClass ?? context.book.geometryOrder[0] ?? '45:0';
  const line = (index: number, wanted: Partial<MeasurementRequest> & { spots: number; reason: string }): MeasurementRequest =>
    ({ ...about(context, judged, check, index), have: have(index), instrument: instrument(index), geometry: geometry(index), chance: undefined, ...wanted });
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
      const wanted = Math.max(spots(input.sides[index]), have(index));
      if (pairing.groups?.[0].instrument === pairing.groups?.[1].instrument) return [];
      // One instrument cancels between like surfaces only; between unlike ones half of its deviation is taken to stay.
      const left = input.sides[0].materialClass?.family === input.sides[1].materialClass?.family && input.sides[0].source.surface === input.sides[1].source.surface
        ? 1 - context.book.assumed.correlation.sameSession : 1 - context.book.assumed.correlation.sameInstrument;
      const alone = event === undefined ? undefined : { ...event, spread: { ...event.spread, instrument: Float64Array.from(event.spread.instrument, (entry) => left * entry) } };
      return [line(index, {
        spots: wanted, instrument: instrument(other), geometry: geometry(other),
        chance: alone === undefined ? undefined : chanceOfDeciding(alone, wanted),
        reason: 'both sides on one instrument, in one session: its deviation then cancels',
      })];
    }
    case 'conditions': {
      const wanted = context.book.geometryOrder[0] ?? '45:0';
      return [0, 1].filter((index) => geometry(index) !== wanted).map((index) => line(index, {
        spots: spots(input.sides[index]), geometry: wanted, instrument: able(index, wanted, false),
        reason: `the other side was measured at ${geometry(1 - index)}; unlike geometries are not compared`,
      }));
    }
    case 'missing data': {
      const spectral = (side: PartBasis): boolean => side.colour?.groups.some((group) => group.readings.some((reading) => reading.quantity === 'spectrum')) ?? false;
      return [0, 1].filter((index) => !spectral(input.sides[index])).map((index) => line(index, {
        spots: spots(input.sides[index]), instrument: able(index, geometry(index), true),
        chance: event === undefined ? undefined : chanceOfDeciding(event, spots(input.sides[index])),
        reason: input.sides[index].colour === undefined ? 'there is no colour reading' : 'spectra are wanted: CIELAB values serve under their own light only',
      }));
    }
    default:
      return [];
  }
}

function glossRequests(context: JudgeContext, judged: JudgedJoint, check: CheckResult): readonly MeasurementRequest[] {
  const { input } = judged;
  if (!input.rule.gloss.applicable) return [];
  const { angle } = input.rule.gloss;
  const sampleOf = (index: number) => input.sides[index].gloss?.samples.find((sample) => sample.angle === angle);
  const instrument = (index: number): string => {
    const id = sampleOf(index)?.instruments[0];
    return id === undefined ? 'glossmeter' : context.index.instruments.get(id)?.name ?? id;
  };
  const line = (index: number, spots: number, chance: number | undefined, reason: string): MeasurementRequest => ({
    ...about(context, judged, check, index), have: sampleOf(index)?.spots ?? 0, spots, instrument: instrument(index), geometry: `${angle}°`, chance, reason,
  });
  if (check.verdict === 'no data') {
    return [0, 1].filter((index) => sampleOf(index) === undefined)
      .map((index) => line(index, input.sides[index].materialClass?.wanted.spots ?? 5, undefined, `there is no gloss reading at ${angle}°`));
  }
  const question = glossQuestion(input);
  if (question === undefined) return [];
  if (check.cause === 'too few spots') {
    const needed = check.spotsNeeded ?? context.book.assumed.maximumSpots;
    const chance = scalarChanceOfDeciding(question, needed);
    return [0, 1].filter((index) => (sampleOf(index)?.spots ?? 0) < needed)
      .map((index) => line(index, needed, chance, `${needed} spots decide the gloss if the values stay as they are`));
  }
  if (check.cause === 'instruments disagree') {
    const wanted = Math.max(sampleOf(1)?.spots ?? 0, input.sides[1].materialClass?.wanted.spots ?? 5);
    const chance = scalarChanceOfDeciding({ ...question, instrumentVariance: 0 }, wanted);
    return [{ ...line(1, wanted, chance, 'both sides on one glossmeter, in one session'), instrument: instrument(0) }];
  }
  return [];
}

function about(context: JudgeContext, { result, input }: JudgedJoint, check: CheckResult, index: number) {
  const side = input.sides[index];
  const stand = check.check === 'gloss' ? side.gloss ?? side.colour : side.colour ?? side.gloss;
  const supplier = context.index.suppliers.get(side.source.supplier)?.name ?? side.source.supplier;
  return {
    joint: result.id, check: check.check, supplier, part: side.part.id, source: side.source.id, specimen: stand?.specimen.id ?? '',
  };
}
