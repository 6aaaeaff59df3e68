/**
 * A map whose values are made from those of another map when they are asked for. It has the same keys in the same order, costs nothing to
 * make, and shows what the other map holds at the time.
 */
export class DerivedMap<Base, T> implements ReadonlyMap<string, T> {
  private readonly base: ReadonlyMap<string, Base>;
  private readonly valueOf: (from: Base, key: string) => T;

  constructor(base: ReadonlyMap<string, Base>, valueOf: (from: Base, key: string) => T) {
    this.base = base;
    this.valueOf = valueOf;
  }

  get size(): number {
    return this.base.size;
  }

  has(key: string): boolean {
    return this.base.has(key);
  }

  get(key: string): T | undefined {
    const from = this.base.get(key);
    return from === undefined ? undefined : this.valueOf(from, key);
  }

  keys(): MapIterator<string> {
    return this.base.keys();
  }

  * entries(): MapIterator<[string, T]> {
    for (const [key, from] of this.base) yield [key, this.valueOf(from, key)];
  }

  * values(): MapIterator<T> {
    for (const [, value] of this.entries()) yield value;
  }

  [Symbol.iterator](): MapIterator<[string, T]> {
    return this.entries();
  }

  forEach(callback: (value: T, key: string, map: ReadonlyMap<string, T>) => void): void {
    for (const [key, value] of this.entries()) callback(value, key, this);
  }
}
