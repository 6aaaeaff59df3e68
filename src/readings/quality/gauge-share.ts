/** How much of a limit the measuring itself takes up. All in the unit of the limit. */
export interface GaugeShare {
  readonly limit: number;
  /** Standard deviation of the instrument's deviation. */
  readonly instrument: number;
  /** The agreement was not measured: the rule book's assumption. */
  readonly instrumentAssumed: boolean;
  /** Standard deviation between readings at one place; undefined where no place was read twice. */
  readonly repeatability: number | undefined;
  /** Both together, one standard deviation. */
  readonly together: number;
  readonly instrumentShare: number;
  readonly share: number;
  /** Limit / (2 u): the width of a band of plus and minus the limit over four standard uncertainties, the capability index of JCGM 106:2012. */
  readonly capability: number;
}

/** Share of the limit from which an instrument's agreement is pointed out. Assumption, no source. */
export const agreementWarningShare = 0.25;

/**
 * Gauge share of a limit from the sd of the instrument and of repeated readings, which are independent: u = sqrt(ui^2 + ur^2).
 * `limit` above zero.
 */
export function gaugeShare(
  limit: number, instrument: number, repeatability: number | undefined, instrumentAssumed: boolean,
): GaugeShare {
  const together = Math.hypot(instrument, repeatability ?? 0);
  return {
    limit, instrument, instrumentAssumed, repeatability, together,
    instrumentShare: instrument / limit, share: together / limit, capability: together === 0 ? Infinity : limit / (2 * together),
  };
}
