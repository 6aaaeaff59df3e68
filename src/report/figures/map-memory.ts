import type { SceneElement } from '../scene.ts';
import type { MapPart } from './cabin-map.ts';
import type { Point } from './polyline.ts';
import type { PlacedName } from './zone-names.ts';

/** Elements of a map by what they draw, good for one place and ink. */
export class MapMemory {
  private key = '';
  private elements = new WeakMap<object, Map<string, SceneElement>>();
  private groups = new Map<string, { readonly of: readonly unknown[]; readonly made: SceneElement }>();
  private names: { readonly parts: readonly MapPart[]; readonly outlines: readonly (readonly Point[])[]; readonly placed: readonly PlacedName[] } | undefined;

  /** Forgets everything where the place is another one. */
  at(key: string): void {
    if (key === this.key) return;
    this.key = key;
    this.elements = new WeakMap();
    this.groups = new Map();
    this.names = undefined;
  }

  /** A group of the map, the same element again as long as all that it is made of is the same. */
  group(name: string, of: readonly unknown[], make: () => SceneElement): SceneElement {
    const known = this.groups.get(name);
    if (known !== undefined && known.of.every((one, place) => one === of[place])) return known.made;
    const made = make();
    this.groups.set(name, { of, made });
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
