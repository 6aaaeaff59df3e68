import { html, LitElement, nothing, svg } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import type { JointResult, Judgement } from '../../../src/harmony/judgement.ts';
import { askAction, askMenu, askSelection } from '../../controllers/edit-events.ts';
import { ElementSize } from '../../controllers/element-size.ts';
import { tell } from '../../controllers/tell.ts';
import { cellId, cellPx, matrixLattice, MatrixRows } from '../../figures/matrix-rows.ts';
import type { MatrixContent } from '../../figures/matrix-rows.ts';
import { scene } from '../../figures/scene.ts';
import { jointsBetween, jointsOfPart, matrixOrder, matrixStep, nextJoint } from '../../model/matrix-cells.ts';
import type { MatrixPlace } from '../../model/matrix-cells.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { base } from '../../styles/shared.ts';
import { styles } from './matrix.styles.ts';

const heads = { left: 188, top: 132 } as const;
const narrowHeads = { left: 104, top: 96 } as const;

/**
 * Every part against every other: the map as a table. Only the cells in sight are there.
 * @fires adjoin-point - id of the joint at the cell
 * @fires adjoin-open-joint - id of the joint the user opens
 */
export class AdjoinMatrix extends LitElement {
  static override styles = [base, styles];
  static override properties = {
    cabin: { attribute: false }, judgement: { attribute: false }, colours: { attribute: false }, editable: { type: Boolean }, listed: { attribute: false },
    at: { state: true }, scrolled: { state: true },
  };

  declare cabin: Cabin;
  declare judgement: Judgement;
  declare colours: ReadonlyMap<string, PartColour>;
  declare editable: boolean;
  /** Joints that pass the filter; others are drawn as a rest. */
  declare listed: readonly JointResult[];
  declare at: MatrixPlace;
  declare scrolled: readonly [left: number, top: number];
  private readonly size = new ElementSize(this, '.scroll');
  private readonly rows = new MatrixRows();
  private content: MatrixContent = { order: [], joints: new Map(), passing: new Set(), colours: new Map() };

  constructor() {
    super();
    this.colours = new Map();
    this.editable = false;
    this.listed = [];
    this.at = { row: 0, column: 0 };
    this.scrolled = [0, 0];
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (!['cabin', 'judgement', 'listed', 'colours'].some((name) => (changed as Map<string, unknown>).has(name))) return;
    this.content = { order: matrixOrder(this.cabin), joints: jointsOfPart(this.judgement.joints), passing: new Set(this.listed), colours: this.colours };
  }

  private get order(): MatrixContent['order'] {
    return this.content.order;
  }

  protected override updated(): void {
    const room = this.renderRoot.querySelector<HTMLElement>('.room');
    const { left, top } = this.heads;
    room?.style.setProperty('width', `${left + this.order.length * cellPx}px`);
    room?.style.setProperty('height', `${top + this.order.length * cellPx}px`);
  }

  private get heads(): { readonly left: number; readonly top: number } {
    return this.size.width < 560 ? narrowHeads : heads;
  }

  private between(row: number, column: number): readonly JointResult[] {
    return jointsBetween(this.content.joints, this.order[row]?.id ?? '', this.order[column]?.id ?? '');
  }

  private point(joint: string | undefined): void {
    tell(this, 'adjoin-point', joint);
  }

  private go(to: MatrixPlace): void {
    this.at = to;
    this.point(this.between(to.row, to.column)[0]?.id);
    const scroll = this.renderRoot.querySelector('.scroll');
    if (scroll === null) return;
    const { left, top } = this.heads;
    const held = (now: number, start: number, room: number): number => Math.min(start, Math.max(now, start + cellPx - room));
    scroll.scrollLeft = held(scroll.scrollLeft, to.column * cellPx, this.size.width - left);
    scroll.scrollTop = held(scroll.scrollTop, to.row * cellPx, this.size.height - top);
  }

  private readonly key = (event: KeyboardEvent): void => {
    if (event.altKey || event.metaKey) return;
    const { row, column } = this.at;
    const to = matrixStep(this.at, event.key, event.ctrlKey, this.order.length);
    if (to !== undefined) this.go(to);
    else if (event.key === ' ') this.goToNextJoint(event.shiftKey ? -1 : 1);
    else if (event.key === 'Enter') this.open(row, column);
    else if (event.key === 'ContextMenu' || (event.key === 'F10' && event.shiftKey)) this.menu(row, column);
    else return;
    event.preventDefault();
    event.stopPropagation();
  };

  private goToNextJoint(by: 1 | -1): void {
    const next = nextJoint(this.order, this.content.joints, this.at, by);
    if (next !== undefined) this.go(next);
  }

  private open(row: number, column: number): void {
    const [joint] = this.between(row, column);
    const [first, second] = [this.order[row]?.id, this.order[column]?.id];
    if (joint !== undefined) tell(this, 'adjoin-open-joint', joint.id);
    else if (first === undefined || second === undefined) return;
    else if (first === second) askSelection(this, { parts: [first] });
    else if (this.editable) askAction(this, 'joint.add', { first, second });
  }

  private menu(row: number, column: number): void {
    const box = this.renderRoot.querySelector('.scroll')?.getBoundingClientRect();
    const [joint] = this.between(row, column);
    const parts = [this.order[row]?.id, this.order[column]?.id].filter((id) => id !== undefined);
    if (!this.editable || box === undefined || parts.length === 0) return;
    const [x, y] = [box.left + this.heads.left + column * cellPx - this.scrolled[0] + cellPx, box.top + this.heads.top + row * cellPx - this.scrolled[1] + cellPx];
    askMenu(this, { x, y, selection: joint === undefined ? { parts: [...new Set(parts)] } : { joint: joint.id } });
  }

  /** The cell under the pointer. */
  private under(event: MouseEvent): MatrixPlace | undefined {
    const box = this.renderRoot.querySelector('.scroll')?.getBoundingClientRect();
    if (box === undefined) return undefined;
    const column = Math.floor((event.clientX - box.left - this.heads.left + this.scrolled[0]) / cellPx);
    const row = Math.floor((event.clientY - box.top - this.heads.top + this.scrolled[1]) / cellPx);
    const inside = event.clientX - box.left > this.heads.left && event.clientY - box.top > this.heads.top && this.order[row] !== undefined && this.order[column] !== undefined;
    return inside ? { row, column } : undefined;
  }

  override render(): TemplateResult {
    const { width, height } = this.size;
    return html`
      <div class="scroll" @scroll=${(event: Event) => { const { scrollLeft, scrollTop } = event.currentTarget as HTMLElement; this.scrolled = [scrollLeft, scrollTop]; }}>
        <div class="room">${width === 0 || this.order.length === 0 ? nothing : this.grid(width, height)}</div>
      </div>
      <p class="how">Arrow keys go from cell to cell, Space to the next joint. Enter opens a joint${this.editable ? ', or joins two parts that have none' : ''}.</p>
    `;
  }

  private grid(width: number, height: number): TemplateResult {
    const { left, top } = this.heads;
    const [x, y] = this.scrolled;
    const { at, order: { length: count } } = this;
    const [rows, columns] = [placesInSight(y, height - top, at.row, count), placesInSight(x, width - left, at.column, count)];
    const [wide, high] = [Math.max(1, width - left), Math.max(1, height - top)];
    return html`
      <svg
        class="grid" width=${width} height=${height} role="grid" tabindex="0" aria-label=${`Joints of ${this.cabin.name}, part against part`} aria-readonly="true"
        aria-rowcount=${count} aria-colcount=${count} aria-activedescendant=${cellId(at)}
        @keydown=${this.key}
        @pointermove=${(event: MouseEvent) => { const to = this.under(event); this.point(to && this.between(to.row, to.column)[0]?.id); }}
        @pointerleave=${() => this.point(undefined)}
        @click=${(event: MouseEvent) => { const to = this.under(event); if (to === undefined) return; this.at = to; if (this.between(to.row, to.column).length > 0) this.open(to.row, to.column); }}
        @dblclick=${(event: MouseEvent) => { const to = this.under(event); if (to !== undefined) this.open(to.row, to.column); }}
        @contextmenu=${(event: MouseEvent) => { const to = this.under(event); if (to === undefined || !this.editable) return; event.preventDefault(); this.at = to; this.menu(to.row, to.column); }}
      >
        <svg x=${left} y=${top} width=${wide} height=${high} viewBox=${`${x} ${y} ${wide} ${high}`} role="presentation">
          ${repeat(this.rows.draw(this.content, rows, columns, at), ({ row }) => row, ({ drawn }) => scene(drawn))}
          <g aria-hidden="true">
            <path class="lattice" d=${matrixLattice(rows, columns)}></path>
            <rect class="ring" x=${at.column * cellPx + 1.5} y=${at.row * cellPx + 1.5} width=${cellPx - 3} height=${cellPx - 3}></rect>
          </g>
        </svg>
        <svg x="0" y=${top} width=${left} height=${high} viewBox=${`0 ${y} ${left} ${high}`} aria-hidden="true">
          ${rows.map((row) => svg`<text class=${row === at.row ? 'here' : ''} x=${left - 8} y=${row * cellPx + 17} text-anchor="end">${this.short(row, left)}</text>`)}
        </svg>
        <svg x=${left} y="0" width=${wide} height=${top} viewBox=${`${x} 0 ${wide} ${top}`} aria-hidden="true">
          ${columns.map((column) => svg`<text class=${column === at.column ? 'here' : ''} transform=${`translate(${column * cellPx + 17} ${top - 6}) rotate(-90)`}>${this.short(column, top)}</text>`)}
        </svg>
      </svg>`;
  }

  /** A name as far as it fits. */
  private short(place: number, room: number): string {
    const name = this.order[place]?.name ?? '';
    const most = Math.floor((room - 14) / 6);
    return name.length > most ? `${name.slice(0, most - 1)}…` : name;
  }
}

/** Places along one side that are in sight, and the one that the keys are at wherever it is: what has the focus must be on the page. */
function placesInSight(offset: number, room: number, at: number, count: number): readonly number[] {
  const first = Math.max(0, Math.floor(offset / cellPx));
  const last = Math.min(count - 1, Math.ceil((offset + room) / cellPx));
  const places = Array.from({ length: Math.max(0, last - first + 1) }, (_, place) => first + place);
  return places.includes(at) ? places : [...places, at].sort((a, b) => a - b);
}

customElements.define('adjoin-matrix', AdjoinMatrix);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-matrix': AdjoinMatrix;
  }
}
