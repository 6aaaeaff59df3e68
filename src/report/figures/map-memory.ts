import type { SceneElement } from '../scene.ts';
import type { MapPart } from './cabin-map.ts';
import type { Point } from './polyline.ts';
import type { PlacedName } from './zone-names.ts';

/** Elements of a map by what they draw, good for one place and ink. */
export class MapMemory {
  private key = '';
  private elements = new WeakMap<object, Map<string, SceneElement>>();
  private groups = new Map<string, { readonly items: readonly unknown[]; readonly of: readonly unknown[]; readonly made: SceneElement }>();
  private names: { readonly parts: readonly MapPart[]; readonly outlines: readonly (readonly Point[])[]; readonly placed: readonly PlacedName[] } | undefined;

  /** Forgets everything where the place is another one. */
  at(key: string): void {
    if (key === this.key) return;
    this.key = key;
    this.elements = new WeakMap();
    this.groups = new Map();
    this.names = undefined;
  }

  /** A group of the map, the same element again as long as its items, and what else it is made of, are the same. */
  group(name: string, items: readonly unknown[], of: readonly unknown[], make: () => SceneElement): SceneElement {
    const known = this.groups.get(name);
    if (known !== undefined && sameItems(known.items, items) && sameItems(known.of, of)) return known.made;
    const made = make();
    this.groups.set(name, { items, of, made });
    return made;
  }

  element(of: object, state: string, make: () => SceneElement): SceneElement {
    const states = this.elements.get(of) ?? new Map<string, SceneElement>();
    this.elements.set(of, states);
    const known = states.get(state) ?? make();
    states.set(state, known);
    return known;
  }

  /** Places of the zones' names hang on the outlines alone. */
  zoneNames(parts: readonly MapPart[], make: () => readonly PlacedName[]): readonly PlacedName[] {
    const { names } = this;
    if (names?.parts === parts) return names.placed;
    if (names !== undefined && names.outlines.length === parts.length && parts.every(({ outline }, index) => outline === names.outlines[index])) {
      this.names = { ...names, parts };
      return names.placed;
    }
    const placed = make();
    this.names = { parts, outlines: parts.map(({ outline }) => outline), placed };
    return placed;
  }
}

const sameItems = (before: readonly unknown[], now: readonly unknown[]): boolean =>
  before === now || (before.length === now.length && before.every((item, place) => item === now[place]));
