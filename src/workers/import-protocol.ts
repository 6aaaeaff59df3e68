import type { CabinPatch } from '../actions/cabin-patch.ts';
import type { ImportChoices, PlannedImport } from '../actions/plan-imports.ts';
import type { Cabin } from '../cabin/cabin.ts';
import type { ReadingSummary, TextLayout } from '../formats/reading-summary.ts';
import type { Issue } from '../issue.ts';
import type { RequestSheet } from '../report/requests/request-sheet.ts';

/** A file as it lies with the page, under a key of the page's. Its bytes are fetched by the worker. */
export interface ImportFile {
  readonly key: string;
  readonly name: string;
  readonly blob: Pick<Blob, 'arrayBuffer'>;
}

export interface ChosenFile {
  readonly key: string;
  readonly choices: ImportChoices;
}

/** What the page asks of the import worker. Files are planned in the order given, each on the cabin that the one before leaves. */
export type ImportRequest =
  | { readonly kind: 'read'; readonly file: ImportFile }
  | { readonly kind: 'cabin'; readonly cabin: Cabin }
  | { readonly kind: 'patch'; readonly patch: CabinPatch }
  | { readonly kind: 'plan' | 'take'; readonly files: readonly ChosenFile[]; /** Sheets that files may answer. */ readonly sheets: readonly RequestSheet[] }
  | { readonly kind: 'forget'; readonly key: string };

/** A file that could be read. */
export interface FoundReply {
  readonly kind: 'found';
  readonly reader: string;
  readonly label: string;
  readonly encoding: string;
  readonly layout: TextLayout;
  readonly sha256?: string;
  readonly summary: ReadingSummary;
  /** Warnings and notes. */
  readonly issues: readonly Issue[];
}

/** All the faults that refused the file. */
export interface RefusedFile {
  readonly kind: 'refused';
  readonly issues: readonly Issue[];
}

export interface PlannedReply {
  readonly kind: 'planned';
  readonly files: readonly { readonly key: string; readonly planned: PlannedImport }[];
}

export interface TakenReply {
  readonly kind: 'taken';
  readonly patch: CabinPatch;
  readonly files: PlannedReply['files'];
}

export interface ImportProgress {
  readonly kind: 'progress';
  /** 0 to 1; it never falls. */
  readonly share: number;
}

export type ImportAnswer = FoundReply | RefusedFile | PlannedReply | TakenReply | { readonly kind: 'done' };
/** `read` is answered with `progress` any number of times and then `found` or `refused`. */
export type ImportReply = ImportProgress | ImportAnswer;
