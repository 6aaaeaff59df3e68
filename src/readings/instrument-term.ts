import type { Matrix3 } from '../quantities.ts';
import type { InstrumentCorrelation, MeasuredSide } from './instrument-correlation.ts';
import type { LabCarrier } from './lab-carrier.ts';
import { carriedCovariance } from './lab-carrier.ts';
import { covarianceOfSd, transposeMatrix3 } from './matrix3.ts';
import type { Instrument } from './reading.ts';

/** The part of a difference's covariance that more spots do not reduce. */
export interface InstrumentTermInput {
  readonly first: MeasuredSide;
  readonly second: MeasuredSide;
  readonly correlation: InstrumentCorrelation;
  readonly firstCarrier: LabCarrier;
  readonly secondCarrier: LabCarrier;
  /** sd of L*, a*, b* (D65, 10 degrees) of an instrument without an agreement set. */
  readonly assumedSd: readonly [number, number, number];
}

export interface InstrumentTerm {
  /** Row-major 3K x 3K. */
  readonly covariance: Float64Array;
  /** Instruments whose agreement is assumed, for want of a measured one, by id; '' is an unknown instrument. */
  readonly assumedFor: readonly string[];
  /** A covariance that the two instruments share was on record and used. */
  readonly shared: boolean;
}

/** Agreement covariance of an instrument under D65 and 10 degrees, measured or else assumed. */
export function agreementCovariance(
  instrument: Instrument | undefined, assumedSd: readonly [number, number, number],
): { readonly covariance: Matrix3; readonly assumed: boolean } {
  const measured = instrument?.agreement?.covariance;
  return measured === undefined ? { covariance: covarianceOfSd(assumedSd), assumed: true } : { covariance: measured, assumed: false };
}

/**
 * Covariance that the instruments add to a difference of two means, stacked over lights.
 * One instrument: C carried to both sides, with the share rho of the deviation common to both: 2 (1 - rho) C where both sides carry
 * alike. Unlike instruments: C1 + C2 less what their agreement sets share (C12 + C21); none on record means
 * independent. Not divided by the number of spots: the deviation is the same in all of them.
 * JCGM 100:2008, 5.2 (correlated input quantities).
 */
export function instrumentTerm(input: InstrumentTermInput): InstrumentTerm {
  const { first, second, correlation, firstCarrier, secondCarrier, assumedSd } = input;
  const own = agreementCovariance(first.instrument, assumedSd);
  const other = agreementCovariance(second.instrument, assumedSd);
  const one = correlation.level === 'same session' || correlation.level === 'same instrument';
  const onRecord = one ? undefined : sharedCovariance(first.instrument, second.instrument);
  const rho = onRecord === undefined ? correlation.rho : 1;
  const cross = onRecord ?? own.covariance;
  const p = carriedCovariance(own.covariance, firstCarrier);
  const q = carriedCovariance(one ? own.covariance : other.covariance, secondCarrier);
  const size = firstCarrier.length / 3;
  const covariance = new Float64Array(size * size);
  for (let at = 0; at < covariance.length; at++) covariance[at] = p[at] + q[at];
  if (rho !== 0) {
    const c = carriedCovariance(cross, firstCarrier, secondCarrier);
    for (let i = 0; i < size; i++) for (let j = 0; j < size; j++) covariance[i * size + j] -= rho * (c[i * size + j] + c[j * size + i]);
  }
  const assumedFor = [...new Set([
    ...(own.assumed ? [first.instrument?.id ?? ''] : []), ...(!one && other.assumed ? [second.instrument?.id ?? ''] : []),
  ])];
  return { covariance, assumedFor, shared: onRecord !== undefined };
}

function sharedCovariance(first: Instrument | undefined, second: Instrument | undefined): Matrix3 | undefined {
  if (first === undefined || second === undefined) return undefined;
  const forward = first.agreement?.shared?.[second.id];
  if (forward !== undefined) return forward;
  const backward = second.agreement?.shared?.[first.id];
  return backward === undefined ? undefined : transposeMatrix3(backward);
}

/**
 * The same for one dimension, from the sd of each side's instrument: gloss in GU, texture as sd of the logarithm.
 * Never below zero.
 */
export function scalarInstrumentVariance(firstSd: number, secondSd: number, correlation: InstrumentCorrelation): number {
  return Math.max(0, firstSd * firstSd + secondSd * secondSd - 2 * correlation.rho * firstSd * secondSd);
}
