import type { SceneElement } from '../scene.ts';
import type { MapPart } from './cabin-map.ts';
import type { Point } from './polyline.ts';
import type { PlacedName } from './zone-names.ts';

/** Elements of a map by what they draw, good for one place and ink. */
export class MapMemory {
  private key = '';
  private elements = new WeakMap<object, Map<string, SceneElement>>();
  private names: { readonly outlines: readonly (readonly Point[])[]; readonly placed: readonly PlacedName[] } | undefined;

  /** Forgets everything where the place is another one. */
  at(key: string): void {
    if (key === this.key) return;
    this.key = key;
    this.elements = new WeakMap();
    this.names = undefined;
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
    if (names !== undefined && names.outlines.length === parts.length && parts.every(({ outline }, index) => outline === names.outlines[index])) return names.placed;
    const placed = make();
    this.names = { outlines: parts.map(({ outline }) => outline), placed };
    return placed;
  }
}
