import { html, LitElement } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { repeat } from 'lit/directives/repeat.js';
import { WindowedList } from '../controllers/windowed-list.ts';
import { windowedRows } from '../controllers/windowed-rows.ts';

/**
 * A table of thousands of rows, or a list of thousands of things, of which those about what is seen are rendered, and the one that has the focus or had it
 * last. It stands in the tree of its view, so that the view's styles are its own; columns should have widths that no row can change
 * (`table-layout: fixed`).
 */
export class AdjoinLongList extends LitElement {
  static override properties = { ids: { attribute: false }, head: { attribute: false }, row: { attribute: false }, usual: { type: Number }, printed: { type: Number }, whole: { type: Number } };

  /** What tells the rows apart, in their order. */
  declare ids: readonly string[];
  /** What comes before the rows of a table: caption, columns, head. Without it this is a list of other things than rows. */
  declare head: TemplateResult | undefined;
  /** A row by its place, one element with `data-place`; that of a table a `tr` with `aria-rowindex`, which counts the head as the first. */
  declare row: (place: number) => TemplateResult;
  /** Height of a row, px, until it is measured. */
  declare usual: number;
  /** Rows that go on paper. */
  declare printed: number;
  /** Up to so many are all rendered, for a browser's own search to find. */
  declare whole: number;
  private list: WindowedList | undefined;

  constructor() {
    super();
    this.ids = [];
    this.usual = 30;
    this.printed = Infinity;
    this.whole = 60;
  }

  protected override createRenderRoot(): HTMLElement {
    return this;
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    this.list ??= new WindowedList(this, { list: 'tbody, .rows', usual: this.usual, focusable: 'a, button', printed: this.printed, whole: this.whole });
    if (changed.has('ids')) this.list.setItems(this.ids);
  }

  /** Brings the row of an id into being and into sight, however far down. */
  bring(id: string): void {
    this.list?.goTo(id);
  }

  private focusIn(event: FocusEvent): void {
    const row = event.composedPath().find((target): target is HTMLElement => target instanceof HTMLElement && target.dataset['place'] !== undefined);
    const id = row === undefined ? undefined : this.ids[Number(row.dataset['place'])];
    if (id !== undefined) this.list?.focused(id);
  }

  override render(): TemplateResult {
    const { ids, list } = this;
    const focused = (event: FocusEvent): void => this.focusIn(event);
    if (this.head === undefined) return html`<div class="rows" @focusin=${focused}>${list === undefined ? '' : repeat(list.items, ({ place }) => ids[place], ({ place }) => this.row(place))}</div>`;
    return html`<table aria-rowcount=${ids.length + 1} @focusin=${focused}>${this.head}<tbody>${list === undefined ? '' : windowedRows(list, (place) => ids[place], this.row)}</tbody></table>`;
  }
}

customElements.define('adjoin-long-list', AdjoinLongList);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-long-list': AdjoinLongList;
  }
}
