import type { Cabin } from '../cabin/cabin.ts';
import type { Ageing, CabinComparison } from '../harmony/compare/index.ts';
import type { Judgement } from '../harmony/judgement.ts';
import type { Issue } from '../issue.ts';
import type { CabinNews } from './told-cabins.ts';

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
  | { readonly kind: 'read'; readonly text: Pick<Blob, 'text'>; readonly file: string };

/** The same with every cabin as its number among those that the worker holds; one that is read is held under the number given. */
export type NumberedReportRequest = NumberedCabins<Exclude<ReportRequest, ReadRequest>> | (ReadRequest & { readonly number: number });
type ReadRequest = Extract<ReportRequest, { readonly kind: 'read' }>;
type NumberedCabins<R> = R extends { readonly cabin: Cabin } ? Omit<R, 'cabin' | 'against'> & { readonly cabin: number; readonly against?: Omit<AgainstState, 'cabin'> & { readonly cabin?: number } } : R;

/** What is sent to the worker: news of the cabins that it holds, or a request with a number that its reply repeats. */
export type ReportMessage = CabinNews | { readonly kind: 'ask'; readonly number: number; readonly request: NumberedReportRequest };

/** The report in the formats asked for. */
export interface WrittenReport {
  readonly kind: 'written';
  readonly texts: Readonly<Partial<Record<ReportFormat, string>>>;
  readonly stage: string;
  /** Stages that the cabin can be judged at. */
  readonly stages: readonly string[];
}

/** Two judgements and what lies between them. */
export interface ComparedReply {
  readonly kind: 'compared';
  readonly before: Judgement;
  readonly after: Judgement;
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

export type ReportReply = WrittenReport | ComparedReply | ReadCabin | { readonly kind: 'refused'; readonly issues: readonly Issue[] };
