/** How a long piece of work is followed and stopped. The core has no clock and no timers of its own, so the caller gives what is needed. */
export interface Watch {
  /** Share of the work that is done, 0..1, with what is being done in a few words. */
  readonly progress?: (share: number, doing: string) => void;
  /** An `AbortSignal` will do. */
  readonly signal?: { readonly aborted: boolean };
  /** Gives the caller's event loop a turn, so that a stop can arrive; without it the work runs through. */
  readonly pause?: () => Promise<void>;
  /** Seconds since any fixed moment, never falling: what a limit of time for a whole plan is kept by. */
  readonly clock?: () => number;
}

/** The work was stopped by its signal. A caller's own doing, so thrown rather than returned. */
export class PlanStopped extends Error {
  override readonly name = 'AbortError';
  constructor() {
    super('the plan was stopped');
  }
}

/** Reports, yields, and stops the work if that was asked for. */
export async function step(watch: Watch | undefined, share: number, doing: string): Promise<void> {
  watch?.progress?.(Math.min(1, Math.max(0, share)), doing);
  await watch?.pause?.();
  if (watch?.signal?.aborted === true) throw new PlanStopped();
}

/** The same work seen as a part of a larger one, from one share of it to another. */
export const partOfWork = (watch: Watch | undefined, from: number, to: number): Watch => ({
  ...watch,
  progress: (share, doing) => watch?.progress?.(from + (to - from) * share, doing),
});
