import type { Watch } from './watch.ts';

/** The time that a whole plan may take. */
export interface Deadline {
  /** Seconds that are left, never below 0; undefined where there is no end. */
  readonly left: () => number | undefined;
  readonly passed: () => boolean;
}

const endless: Deadline = { left: () => undefined, passed: () => false };

/** A program that is begun with less than this is not worth its set-up, seconds. */
const leastSeconds = 0.01;

/**
 * A deadline `seconds` from now by the caller's clock. Without a clock it cannot be told how much of them is gone: each program that is
 * solved then has all of them.
 */
export function deadline(seconds: number | undefined, watch: Watch | undefined): Deadline {
  if (seconds === undefined) return endless;
  const clock = watch?.clock;
  if (clock === undefined) return { left: () => seconds, passed: () => false };
  const end = clock() + seconds;
  return { left: () => Math.max(0, end - clock()), passed: () => end - clock() < leastSeconds };
}

/** A deadline that comes when a share of what is left of another is gone, so that something remains for what follows. */
export function shareOf(whole: Deadline, share: number, watch: Watch | undefined): Deadline {
  const left = whole.left();
  return left === undefined || watch?.clock === undefined ? whole : deadline(share * left, watch);
}

/** The option of a program that keeps to a deadline. */
export const withinTime = (until: Deadline): { readonly timeLimitS?: number } => {
  const left = until.left();
  return left === undefined ? {} : { timeLimitS: Math.max(leastSeconds, left) };
};
