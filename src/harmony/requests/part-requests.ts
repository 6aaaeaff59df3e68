import { chanceOfDeciding } from '../../readings/colour-spots-needed.ts';
import { scalarEventChance } from '../../readings/scalar-event.ts';
import { cappedValue, capsOf } from '../checks/cap.ts';
import { masterOf } from '../checks/held-to.ts';
import { masterColourQuestion } from '../checks/master-colour.ts';
import { masterGlossQuestion } from '../checks/master-gloss.ts';
import { colourEvent } from '../colour-evaluation.ts';
import type { JudgeContext } from '../judge-context.ts';
import type { CheckResult, MeasurementRequest } from '../judgement.ts';
import type { PartBasis } from '../part-basis.ts';
import { addressed, anyInstrument, instrumentName, instrumentOfKind, wantedSpots } from './request-line.ts';

/** How one check of a part was measured, and the chance that it is decided with more spots. */
interface PartReadings {
  readonly quantity: 'colour' | 'gloss';
  readonly geometry: string;
  readonly instrument: string;
  readonly spots: number;
  readonly chance: (spots: number, grows: 'second' | 'both') => number;
}

/** Readings that would decide a part's open check against its master or a cap, or put an end to the want of data of a cap. */
export function partRequests(context: JudgeContext, basis: PartBasis, check: CheckResult): readonly MeasurementRequest[] {
  const read = check.check === 'cap' ? capReadings(context, basis, check.subject) : check.subject === 'gloss' ? glossReadings(context, basis) : colourReadings(context, basis);
  const line = (wanted: Pick<MeasurementRequest, 'quantity' | 'have' | 'spots' | 'instrument' | 'geometry' | 'chance' | 'reason'>): readonly MeasurementRequest[] => [{
    check: check.check, ...(check.subject === undefined ? {} : { subject: check.subject }), ...addressed(context, basis, wanted.quantity), ...wanted,
  }];
  if (check.verdict === 'no data') return check.check === 'cap' ? line(unread(context, basis, check)) : [];
  if (read === undefined) return [];
  const { quantity, geometry, instrument, spots: have } = read;
  if (check.cause === 'too few spots') {
    const spots = check.spotsNeeded ?? context.book.assumed.maximumSpots;
    const both = check.spotsOn === 'part and master';
    const master = both ? ` on the part and as many on its master ${masterOf(context, basis)?.id ?? ''}` : '';
    return line({ quantity, have, spots, instrument, geometry, chance: read.chance(spots, both ? 'both' : 'second'), reason: `${spots} spots${master} decide the check if the values stay as they are` });
  }
  if (check.cause === 'instruments disagree') {
    return line({
      quantity, have, spots: Math.max(have, wantedSpots(basis)), instrument: anyInstrument, geometry, chance: undefined,
      reason: 'the instrument may be off by more than is left: one with a closer agreement set may decide',
    });
  }
  return [];
}

function colourReadings(context: JudgeContext, basis: PartBasis): PartReadings | undefined {
  const asked = masterColourQuestion(context, basis);
  if (asked?.groups === undefined || typeof asked.pair === 'string') return undefined;
  const group = asked.groups[1];
  const event = colourEvent(asked.pair, asked.question);
  return {
    quantity: 'colour', geometry: group.geometryClass, instrument: instrumentName(context, group.instrument), spots: group.spots,
    chance: (spots, grows) => chanceOfDeciding({ ...event, grows }, spots),
  };
}

function glossReadings(context: JudgeContext, basis: PartBasis): PartReadings | undefined {
  const asked = masterGlossQuestion(context, basis);
  return asked === undefined ? undefined : {
    quantity: 'gloss', geometry: `${asked.angle}°`, instrument: asked.instrument, spots: asked.question.second.spots,
    chance: (spots, grows) => scalarEventChance({ checks: [{ ...asked.question, grows }], wanted: 'all' }, spots),
  };
}

const capOf = (context: JudgeContext, basis: PartBasis, subject: string | undefined) => capsOf(context, basis.part.zone).find(({ id }) => id === subject);

function capReadings(context: JudgeContext, basis: PartBasis, subject: string | undefined): PartReadings | undefined {
  const cap = capOf(context, basis, subject);
  const found = cap === undefined ? undefined : cappedValue(context, basis, cap);
  return cap === undefined || found === undefined ? undefined : {
    quantity: cap.quantity === 'gloss' ? 'gloss' : 'colour', geometry: found.geometry, instrument: found.instrument, spots: found.question.second.spots,
    chance: (spots) => scalarEventChance({ checks: [found.question], wanted: 'all' }, spots),
  };
}

function unread(context: JudgeContext, basis: PartBasis, check: CheckResult) {
  const cap = capOf(context, basis, check.subject);
  const quantity = cap?.quantity === 'gloss' ? 'gloss' as const : 'colour' as const;
  return {
    quantity, have: 0, spots: wantedSpots(basis), instrument: instrumentOfKind[quantity], chance: undefined,
    geometry: quantity === 'gloss' ? `${cap?.angle ?? 60}°` : context.book.geometryOrder[0] ?? '45:0', reason: 'there is no reading for the cap of its zone',
  };
}
