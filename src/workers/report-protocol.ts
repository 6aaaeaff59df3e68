import type { Cabin } from '../cabin/cabin.ts';
import type { Ageing, CabinComparison } from '../harmony/compare/index.ts';
import type { Judgement } from '../harmony/judgement.ts';
import type { Issue } from '../issue.ts';

/** What a cabin is compared with: another cabin, a stage, or both. */
export interface AgainstState {
  readonly cabin?: Cabin;
  readonly stage?: string;
  /** Name and digest of the other cabin's file. */
  readonly file?: { readonly name: string; readonly sha256: string };
}

export type ReportFormat = 'html' | 'json' | 'csv';

export type ReportRequest =
  | {
    readonly kind: 'report';
    readonly cabin: Cabin;
    /** Name of the cabin's file. */
    readonly file: string;
    readonly stage?: string;
    readonly against?: AgainstState;
    readonly formats: readonly ReportFormat[];
    /** Ids of sections left out of the page. */
    readonly without?: readonly string[];
  }
  | { readonly kind: 'compare'; readonly cabin: Cabin; readonly stage?: string; readonly against: AgainstState }
  | { readonly kind: 'read'; readonly text: string; readonly file: string };

/** The report in the formats asked for. */
export interface WrittenReport {
  readonly kind: 'written';
  readonly texts: Readonly<Partial<Record<ReportFormat, string>>>;
  readonly stage: string;
  /** Stages that the cabin can be judged at. */
  readonly stages: readonly string[];
}

/** Two judged states and what lies between them. */
export interface ComparedStates {
  readonly kind: 'compared';
  readonly before: { readonly cabin: Cabin; readonly judgement: Judgement };
  readonly after: { readonly cabin: Cabin; readonly judgement: Judgement };
  readonly comparison: CabinComparison;
  /** Present where one cabin is set against itself after an exposure. */
  readonly ageing?: Ageing;
}

/** Another cabin, read to be compared with. */
export interface ReadCabin {
  readonly kind: 'read';
  readonly cabin: Cabin;
  readonly sha256: string;
  readonly issues: readonly Issue[];
}

export type ReportReply = WrittenReport | ComparedStates | ReadCabin | { readonly kind: 'refused'; readonly issues: readonly Issue[] };
