/** A long computation that hands over the share that is done, 0..1, whenever it may be interrupted. */
export type Steps<Result> = Generator<number, Result, void>;

/** How a long computation is followed and stopped; the core has no timers of its own. */
export interface StepsWatch {
  readonly progress?: (share: number) => void;
  /** An `AbortSignal` will do. */
  readonly signal?: { readonly aborted: boolean };
  /** Gives the caller's event loop a turn, so that a stop can arrive; without it the work runs through. */
  readonly pause?: () => Promise<void>;
}

/** The work was stopped by its signal. A caller's own doing, so thrown rather than returned. */
export class StepsStopped extends Error {
  override readonly name = 'AbortError';
  constructor() {
    super('the measurement of the surface was stopped');
  }
}

/** Runs the computation to its end at once. */
export function runSteps<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/** Runs the computation step by step; rejects with `StepsStopped` where the signal is aborted. */
export async function watchSteps<Result>(steps: Steps<Result>, { progress, signal, pause }: StepsWatch): Promise<Result> {
  for (;;) {
    if (signal?.aborted === true) throw new StepsStopped();
    const { done, value } = steps.next();
    if (done) return value;
    progress?.(value);
    await pause?.();
  }
}

/** The same computation as a part of a larger one, from one share of it to another. */
export function* partOfSteps<Result>(steps: Steps<Result>, from: number, to: number): Steps<Result> {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
    yield from + (to - from) * value;
  }
}
