import type { Cabin } from '../cabin/cabin.ts';
import { cabinPieces } from './cabin-pieces.ts';
import type { CabinPiece } from './cabin-pieces.ts';

/** Hands a cabin over in pieces, with room for the page between them: a large one at once would hold it. Left off as soon as `goesOn` says no. */
export async function handOver(cabin: Cabin, post: (piece: CabinPiece) => void, goesOn: () => boolean): Promise<void> {
  for (const piece of cabinPieces(cabin)) {
    if (!goesOn()) return;
    post(piece);
    await new Promise((resolve) => setTimeout(resolve));
  }
}
