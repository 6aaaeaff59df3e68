import { cabinPatch, patchCabin } from '../actions/cabin-patch.ts';
import type { CabinPatch } from '../actions/cabin-patch.ts';
import type { Cabin } from '../cabin/cabin.ts';
import { mostInPiece, weightUpTo } from './value-pieces.ts';

/** What a worker is told of the cabins that it holds, under numbers of the page's. */
export type CabinNews =
  | { readonly kind: 'cabin'; readonly number: number; readonly cabin: Cabin }
  /** Like another one but for a change. */
  | { readonly kind: 'changed cabin'; readonly number: number; readonly from: number; readonly patch: CabinPatch }
  | { readonly kind: 'forget cabins'; readonly numbers: readonly number[] };

/** The page's end: what a worker was told of, so that a cabin goes to it once, and one that differs a little from it as its change. */
export class ToldCabins {
  private readonly numbers = new Map<Cabin, number>();
  private last = 0;

  /** Tells what the worker does not know of these cabins and gives their numbers; it forgets all others. */
  tell(cabins: readonly Cabin[], send: (news: CabinNews) => void): readonly number[] {
    const numbers = cabins.map((cabin) => this.numbers.get(cabin) ?? this.add(cabin, send));
    const others = [...this.numbers].filter(([cabin]) => !cabins.includes(cabin));
    if (others.length > 0) {
      for (const [cabin] of others) this.numbers.delete(cabin);
      send({ kind: 'forget cabins', numbers: others.map(([, number]) => number) });
    }
    return numbers;
  }

  /** A number for a cabin that the worker comes by itself. */
  reserve(): number {
    return (this.last += 1);
  }

  /** The worker holds this cabin under a number that was reserved. */
  known(cabin: Cabin, number: number): void {
    this.numbers.set(cabin, number);
  }

  private add(cabin: Cabin, send: (news: CabinNews) => void): number {
    const number = this.reserve();
    const alike = [...this.numbers].findLast(([{ id }]) => id === cabin.id);
    const patch = alike === undefined ? undefined : cabinPatch(alike[0], cabin);
    if (alike !== undefined && patch !== undefined && weightUpTo(patch, mostInPiece) <= mostInPiece) send({ kind: 'changed cabin', number, from: alike[1], patch });
    else send({ kind: 'cabin', number, cabin });
    this.numbers.set(cabin, number);
    return number;
  }
}

/** The worker's end: the cabins themselves. */
export class HeldCabins {
  private readonly cabins = new Map<number, Cabin>();

  take(news: CabinNews): void {
    switch (news.kind) {
      case 'cabin': this.cabins.set(news.number, news.cabin); break;
      case 'changed cabin': this.cabins.set(news.number, patchCabin(this.of(news.from), news.patch)); break;
      case 'forget cabins': for (const number of news.numbers) this.cabins.delete(number);
    }
  }

  of(number: number): Cabin {
    const cabin = this.cabins.get(number);
    if (cabin === undefined) throw new RangeError(`the worker holds no cabin ${number}`);
    return cabin;
  }
}
