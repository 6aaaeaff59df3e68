import type { Cabin } from '../cabin.ts';
import type { Draft, Faults } from '../schema/index.ts';
import type { ReferenceIndex } from './reference-index.ts';
import { entriesOf, placedTiles } from './reference-index.ts';

/** Days after the cabin's own are taken and pointed out: what is judged on a day cannot have been measured later. */
export function checkDateOrder(cabin: Draft<Cabin>, index: ReferenceIndex, faults: Faults): void {
  const asOf = cabin.asOf;
  if (asOf === undefined) return;
  const check = (day: string | undefined, path: string): void => {
    if (day === undefined || day.slice(0, 10) <= asOf) return;
    faults.add('later-than-as-of', {
      severity: 'warning', expected: `a day up to ${asOf}, the day the cabin is judged on`, found: day,
    }, path);
  };
  for (const [at, instrument] of entriesOf(cabin.instruments)) {
    check(instrument.calibratedOn, `instruments[${at}].calibratedOn`);
    check(instrument.agreement?.date, `instruments[${at}].agreement.date`);
  }
  for (const { specimen, path } of [...index.specimens, ...placedTiles(cabin)]) {
    check(specimen.producedOn, `${path}.producedOn`);
    const late = entriesOf(specimen.readings).find(([, reading]) => (reading.measuredAt ?? '').slice(0, 10) > asOf);
    if (late !== undefined) check(late[1].measuredAt, `${path}.readings[${late[0]}].measuredAt`);
  }
  for (const [at, joint] of entriesOf(cabin.joints)) {
    for (const [decisionAt, decision] of entriesOf(joint.decisions)) check(decision.date, `joints[${at}].decisions[${decisionAt}].date`);
    for (const [recordAt, record] of entriesOf(joint.visualRecords)) check(record.date, `joints[${at}].visualRecords[${recordAt}].date`);
  }
}
