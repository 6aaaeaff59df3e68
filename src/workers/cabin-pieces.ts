import type { Cabin, Joint, Part, Specimen } from '../cabin/cabin.ts';
import type { Reading } from '../readings/reading.ts';
import type { ReadingsPiece } from './import-protocol.ts';

/** A part of a cabin that is handed over in many messages, so that none of them holds the page for long. The head comes first, with its long lists empty. */
export type CabinPiece =
  | { readonly kind: 'head'; readonly cabin: Cabin }
  | { readonly kind: 'parts'; readonly items: readonly Part[] }
  | { readonly kind: 'joints'; readonly items: readonly Joint[] }
  | { readonly kind: 'masters'; readonly items: readonly Specimen[] }
  | ReadingsPiece;

/** Readings, or items without any, of one message. */
export const mostInPiece = 1000;

const readingsIn = (specimens: readonly Specimen[]): number => specimens.reduce((sum, { readings }) => sum + readings.length, 0);
const specimensOf = ({ sources }: Part): readonly Specimen[] => sources.flatMap(({ specimens }) => specimens);
const emptied = (specimen: Specimen): Specimen => ({ ...specimen, readings: [] });

/** How much a cabin weighs in these terms: with one piece there is nothing to gain. */
export const weightOf = ({ parts, joints, masters = [] }: Cabin): number =>
  parts.reduce((sum, part) => sum + 1 + readingsIn(specimensOf(part)), 0) + joints.length + masters.length + readingsIn(masters);

/** A cabin in pieces; `gathered()` makes it whole again. */
export function* cabinPieces(cabin: Cabin): Generator<CabinPiece> {
  const { parts, joints, masters } = cabin;
  yield { kind: 'head', cabin: { ...cabin, parts: [], joints: [], ...(masters === undefined ? {} : { masters: [] }) } };
  yield* inSlices('parts', parts, (part) => readingsIn(specimensOf(part)), (part) => ({
    ...part, sources: part.sources.map((source) => ({ ...source, specimens: source.specimens.map(emptied) })),
  }), (part, item) => part.sources.flatMap((source, at) => source.specimens.flatMap((one, specimen) => readingsOf(one, { list: 'parts', item, source: at, specimen }))));
  yield* inSlices('joints', joints, () => 0, (joint) => joint, () => []);
  if (masters !== undefined) {
    yield* inSlices('masters', masters, ({ readings }) => readings.length, emptied, (master, item) => readingsOf(master, { list: 'masters', item, source: 0, specimen: 0 }));
  }
}

/** Items in slices of so much weight at most; an item that weighs more by itself goes without its readings, which follow. */
function* inSlices<Item>(
  kind: 'parts' | 'joints' | 'masters', items: readonly Item[], readings: (item: Item) => number, bare: (item: Item) => Item, apart: (item: Item, place: number) => readonly ReadingsPiece[],
): Generator<CabinPiece> {
  let slice: Item[] = [];
  let weight = 0;
  const piece = (): CabinPiece => ({ kind, items: slice } as unknown as CabinPiece);
  for (const [place, item] of items.entries()) {
    const own = 1 + readings(item);
    if (weight + own > mostInPiece && slice.length > 0) {
      yield piece();
      [slice, weight] = [[], 0];
    }
    if (own <= mostInPiece) {
      slice.push(item);
      weight += own;
      continue;
    }
    slice = [bare(item)];
    yield piece();
    slice = [];
    yield* apart(item, place);
  }
  if (slice.length > 0) yield piece();
}

function readingsOf({ readings }: Specimen, place: Omit<ReadingsPiece, 'kind' | 'readings'>): readonly ReadingsPiece[] {
  const pieces: ReadingsPiece[] = [];
  for (let at = 0; at < readings.length; at += mostInPiece) pieces.push({ kind: 'piece', ...place, readings: readings.slice(at, at + mostInPiece) });
  return pieces;
}

/** Puts the pieces of one cabin together again, in the order they were made. */
export class GatheredCabin {
  private head: Cabin | undefined;
  private parts: Part[] = [];
  private joints: Joint[] = [];
  private masters: Specimen[] = [];

  take(piece: CabinPiece): void {
    switch (piece.kind) {
      case 'head':
        this.head = piece.cabin;
        [this.parts, this.joints, this.masters] = [[], [], []];
        break;
      case 'parts': this.parts.push(...piece.items); break;
      case 'joints': this.joints.push(...piece.items); break;
      case 'masters': this.masters.push(...piece.items); break;
      case 'piece': {
        const specimen = piece.list === 'masters' ? this.masters[piece.item] : this.parts[piece.item]?.sources[piece.source]?.specimens[piece.specimen];
        // Nobody else holds the lists yet.
        (specimen?.readings as Reading[] | undefined)?.push(...piece.readings);
      }
    }
  }

  /** The whole cabin, once every piece was taken. */
  gathered(): Cabin {
    if (this.head === undefined) throw new Error('the pieces of a cabin begin with its head');
    const { masters } = this.head;
    return { ...this.head, parts: this.parts, joints: this.joints, ...(masters === undefined ? {} : { masters: this.masters }) };
  }
}
