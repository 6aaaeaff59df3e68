import type { Part, Source, Specimen } from '../cabin/cabin.ts';
import type { ReadingGroup } from '../readings/reading-groups.ts';
import type { MeasuredSide } from '../readings/instrument-correlation.ts';
import type { GlossSample } from '../readings/gloss-sample.ts';
import type { TextureSample } from '../readings/texture-sample.ts';
import type { MaterialClass } from '../rules/rule-book.ts';

/** Readings of one kind with the specimen they were taken on. */
export interface Stand {
  readonly specimen: Specimen;
  /** Source the specimen belongs to; that of the mirror part where borrowed. */
  readonly source: Source;
  /** Mirror part that the readings were borrowed from. */
  readonly borrowedFrom?: string;
}

/** One of the named colours of a patterned surface, with its readings. */
export interface NamedColourBasis {
  readonly name: string;
  readonly areaShare: number;
  readonly groups: readonly ReadingGroup[];
}

/** What a part is judged on: its source, and for colour, gloss and texture the specimen that stands for it. */
export interface PartBasis {
  readonly part: Part;
  readonly source: Source;
  /** The rule book's class of the material; undefined where the book does not know it. */
  readonly materialClass: MaterialClass | undefined;
  /** Of a patterned surface the groups are those of its ground, and `named` all its colours that were read, the largest share first. */
  readonly colour: (Stand & { readonly groups: readonly ReadingGroup[]; readonly named?: readonly NamedColourBasis[] }) | undefined;
  readonly gloss: (Stand & { readonly samples: readonly GlossSample[]; readonly measured: MeasuredSide }) | undefined;
  readonly texture: (Stand & { readonly sample: TextureSample; readonly measured: MeasuredSide }) | undefined;
}
