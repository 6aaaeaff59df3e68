import type { Cabin } from '../cabin/cabin.ts';
import type { JudgeOptions } from '../harmony/judge.ts';
import type { Issue } from '../issue.ts';
import type { CabinSeries, SeriesOptions } from '../series/index.ts';
import type { ApportionOptions, ApportionPlan, ChoicePlan, ChooseOptions, FreeMix, MendOptions, MendPlan, Picks, Swap } from '../plan/index.ts';
import type { CabinNews } from './told-cabins.ts';

/** One plan to be made of the cabin that the worker holds. */
export type PlanTask =
  | { readonly kind: 'choose'; readonly options: ChooseOptions }
  /** What each single swap does to given picks. */
  | { readonly kind: 'swaps'; readonly picks: Picks; readonly options: ChooseOptions }
  /** All approved sources at once, with further colourways that share what is carried over, each judged by its own book. */
  | { readonly kind: 'mix'; readonly options: JudgeOptions; readonly further?: readonly Cabin[] }
  | { readonly kind: 'mend'; readonly options: MendOptions }
  | { readonly kind: 'apportion'; readonly options: ApportionOptions }
  /** Lots over time. */
  | { readonly kind: 'series'; readonly options: SeriesOptions };

/** What comes of each kind of task. */
export interface PlanOf {
  readonly choose: ChoicePlan;
  readonly swaps: readonly Swap[];
  readonly mix: FreeMix;
  readonly mend: MendPlan;
  readonly apportion: ApportionPlan;
  readonly series: CabinSeries;
}

/** News of the cabins that the worker holds; or a task for the first of some of them, the others being its further colourways. */
export type PlanRequest = CabinNews | { readonly kind: 'make'; readonly task: PlanTask; readonly cabins: readonly number[] };

export interface PlanProgress {
  readonly kind: 'progress';
  /** 0..1, never falling. */
  readonly share: number;
  readonly doing: string;
}

export interface PlannedReply<K extends keyof PlanOf = keyof PlanOf> {
  readonly kind: 'planned';
  readonly plan: PlanOf[K];
}

/** All that is wrong with the rule book or with what was asked. */
export interface RefusedPlan {
  readonly kind: 'refused';
  readonly issues: readonly Issue[];
}

/** The worker answers with `progress` any number of times and then with one of the others; `failed` is a fault of the program. */
export type PlanReply = PlanProgress | PlannedReply | RefusedPlan | { readonly kind: 'failed'; readonly message: string };
