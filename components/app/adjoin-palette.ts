import { html, LitElement, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { CoveringDialog } from '../controllers/covering-dialog.ts';
import type { Command } from '../model/commands.ts';
import { matchingCommands } from '../model/commands.ts';
import { keysText } from '../model/keys.ts';
import { cover } from '../styles/cover.ts';
import { base, controls } from '../styles/shared.ts';
import { styles } from './palette.styles.ts';

/**
 * Finds anything that can be done by typing a word of it.
 * @fires adjoin-command - the command that was chosen
 */
export class AdjoinPalette extends LitElement {
  static override styles = [base, controls, cover, styles];
  static override properties = { commands: { attribute: false }, typed: { state: true }, at: { state: true } };

  declare commands: readonly Command[];
  declare typed: string;
  declare at: number;
  private readonly over = new CoveringDialog(this, () => this.renderRoot.querySelector('input'));
  private found: readonly Command[] = [];

  constructor() {
    super();
    this.commands = [];
    this.typed = '';
    this.at = 0;
  }

  show(commands: readonly Command[]): void {
    this.commands = commands;
    this.typed = '';
    this.at = 0;
    const field = this.renderRoot.querySelector('input');
    if (field !== null) field.value = '';
    this.over.show();
  }

  protected override willUpdate(changed: PropertyValues<this>): void {
    if (changed.has('commands') || changed.has('typed')) this.found = matchingCommands(this.commands, this.typed);
    this.at = Math.max(0, Math.min(this.at, this.found.length - 1));
  }

  protected override updated(): void {
    // Asking for a place on the screen makes the browser lay out the whole page.
    if (this.over.isShown) this.renderRoot.querySelector('[aria-selected="true"]')?.scrollIntoView({ block: 'nearest' });
  }

  private choose(command: Command | undefined): void {
    if (command === undefined || command.enabled !== true) return;
    this.over.hide();
    this.dispatchEvent(new CustomEvent('adjoin-command', { detail: command, bubbles: true, composed: true }));
  }

  private key(event: KeyboardEvent): void {
    const by = { ArrowDown: 1, ArrowUp: -1, PageDown: 8, PageUp: -8 }[event.key];
    if (by !== undefined) {
      event.preventDefault();
      this.at = Math.max(0, Math.min(this.found.length - 1, this.at + by));
    } else if (event.key === 'Enter') {
      event.preventDefault();
      this.choose(this.found[this.at]);
    }
  }

  private typing(event: Event): void {
    this.typed = (event.target as HTMLInputElement).value;
    this.at = 0;
  }

  override render(): TemplateResult {
    return html`
      <dialog aria-label="Command palette" aria-modal="true" @click=${(event: Event) => { if (event.target === event.currentTarget) this.over.hide(); }}>
        <div class="sheet">
          <input
            type="text" role="combobox" aria-expanded="true" aria-controls="found" aria-autocomplete="list" aria-label="What to do"
            aria-activedescendant=${this.found.length > 0 ? `command-${this.at}` : nothing}
            placeholder="What to do" autocomplete="off" spellcheck="false" @input=${this.typing} @keydown=${this.key}
          />
          <ul id="found" role="listbox" aria-label="Commands">${this.found.map((command, i) => this.row(command, i))}</ul>
          ${this.found.length === 0 ? html`<p class="none">Nothing is called that.</p>` : nothing}
          <p class="unseen" role="status">${this.found.length} commands</p>
        </div>
      </dialog>
    `;
  }

  private row(command: Command, place: number): TemplateResult {
    const can = command.enabled === true;
    return html`
      <li
        id=${`command-${place}`} role="option" aria-selected=${place === this.at} aria-disabled=${!can}
        @click=${() => this.choose(command)} @pointermove=${() => { this.at = place; }}
      >
        <span class="title">${command.title}</span>
        <span class="why">${can ? command.group : command.enabled}</span>
        ${command.keys === undefined ? nothing : html`<kbd>${keysText(command.keys)}</kbd>`}
      </li>
    `;
  }
}

customElements.define('adjoin-palette', AdjoinPalette);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-palette': AdjoinPalette;
  }
}
