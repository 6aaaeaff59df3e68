import type { SceneElement } from '../scene.ts';
import type { MapPart } from './cabin-map.ts';
import type { Point } from './polyline.ts';
import type { VerdictStroke } from './verdict-line.ts';
import type { ZoneNames } from './zone-names.ts';

/** Beyond so many drawings some are of parts and joints that are gone. */
const most = 60_000;

/** What was drawn of a map by what it shows, good for one place and ink. */
export class MapMemory {
  private key = '';
  private readonly elements = new Map<string, Map<object, SceneElement>>();
  private readonly strokes = new Map<object, VerdictStroke>();
  private names: { readonly parts: readonly MapPart[]; readonly outlines: readonly (readonly Point[])[]; readonly placed: ZoneNames } | undefined;

  /** Forgets everything where the place is another one. */
  at(key: string): void {
    const held = [...this.elements.values()].reduce((sum, { size }) => sum + size, this.strokes.size);
    if (held > most) this.forget();
    if (key === this.key) return;
    this.key = key;
    this.forget();
    this.names = undefined;
  }

  element(of: object, state: string, make: () => SceneElement): SceneElement {
    const inState = this.elements.get(state) ?? new Map<object, SceneElement>();
    this.elements.set(state, inState);
    const known = inState.get(of) ?? make();
    inState.set(of, known);
    return known;
  }

  stroke(of: object, make: () => VerdictStroke): VerdictStroke {
    const known = this.strokes.get(of) ?? make();
    this.strokes.set(of, known);
    return known;
  }

  /** Places of the zones' names hang on the outlines alone. */
  zoneNames(parts: readonly MapPart[], make: () => ZoneNames): ZoneNames {
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

  private forget(): void {
    this.elements.clear();
    this.strokes.clear();
  }
}
