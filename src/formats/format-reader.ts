import type { Outcome } from '../issue.ts';
import type { ReadingSet } from './reading-set.ts';
import type { ReflectanceScale } from './spectra-table.ts';

/** A file that was decoded to text. */
export interface FormatInput {
  readonly text: string;
  /** Name for issues, without folders. */
  readonly file?: string;
  /** Digest of the bytes, given by whoever read them. */
  readonly sha256?: string;
}

export interface ReadOptions {
  /** Scale of reflectances as the user states it; a file that says otherwise is refused. */
  readonly scale?: ReflectanceScale;
  /** Where neither file nor user states the scale: `ask` leaves a question in the set, `fraction` follows the convention of spectra tables (sheets only: other formats ask). `ask` where absent. */
  readonly undeclaredScale?: 'ask' | 'fraction';
  /** Told now and then how far the reader is, 0 to 1. */
  readonly progress?: (share: number) => void;
}

/** What every reader is. `sniff` looks at the content only and costs little whatever the size of the text. */
export interface FormatReader {
  readonly id: string;
  readonly label: string;
  /** Usual endings of the file's name, for file pickers; never used to decide. */
  readonly extensions: readonly string[];
  /** 0 where the text is not of this format, 1 where it cannot be of another. */
  sniff(text: string): number;
  /** The whole file or nothing: with an error among the issues there is no value. */
  read(input: FormatInput, options?: ReadOptions): Outcome<ReadingSet>;
}
