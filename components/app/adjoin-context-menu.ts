import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import type { Command } from '../model/commands.ts';
import { keysText } from '../model/keys.ts';
import { base, controls } from '../styles/shared.ts';
import { styles } from './context-menu.styles.ts';

/**
 * A menu of commands at a place of the window; arrow keys, letters and Escape work as in any menu.
 * @fires adjoin-command - the command that was chosen
 */
export class AdjoinContextMenu extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = { commands: { attribute: false } };

  declare commands: readonly Command[];
  private from: Element | null = null;

  constructor() {
    super();
    this.commands = [];
  }

  async show(x: number, y: number): Promise<void> {
    this.from = deepActive();
    await this.updateComplete;
    const menu = this.renderRoot.querySelector<HTMLElement>('.menu');
    if (menu === null || this.commands.length === 0) return;
    if (!menu.matches(':popover-open')) menu.showPopover();
    const { width, height } = menu.getBoundingClientRect();
    menu.style.left = `${Math.max(4, Math.min(x, innerWidth - width - 4))}px`;
    menu.style.top = `${Math.max(4, Math.min(y, innerHeight - height - 4))}px`;
    this.items()[0]?.focus();
  }

  private items(): HTMLElement[] {
    return [...this.renderRoot.querySelectorAll<HTMLElement>('[role=menuitem]')];
  }

  private key(event: KeyboardEvent): void {
    const items = this.items();
    const here = items.indexOf((this.renderRoot as ShadowRoot).activeElement as HTMLElement);
    const to = { ArrowDown: here + 1, ArrowUp: here - 1, Home: 0, End: items.length - 1 }[event.key];
    if (to !== undefined) {
      event.preventDefault();
      items[(to + items.length) % items.length]?.focus();
    } else if (event.key.length === 1 && /\S/.test(event.key)) {
      const typed = event.key.toLowerCase();
      const after = [...items.slice(here + 1), ...items.slice(0, here + 1)];
      after.find((item) => item.textContent?.trim().toLowerCase().startsWith(typed))?.focus();
    } else if (event.key === 'Tab' || event.key === 'Escape') {
      if (event.key === 'Escape') event.preventDefault();
      this.hide();
    }
    event.stopPropagation();
  }

  // The menu is put away here and not by the browser: that would take the release of the button that asked for it as a press elsewhere.
  private hide(): void {
    const menu = this.renderRoot.querySelector<HTMLElement>('.menu');
    if (menu?.matches(':popover-open') !== true) return;
    // At once, and only where the focus is still here: what has it by then keeps it.
    const held = (this.renderRoot as ShadowRoot).activeElement !== null;
    menu.hidePopover();
    if (held && (this.from instanceof HTMLElement || this.from instanceof SVGElement)) this.from.focus({ preventScroll: true });
  }

  private readonly pressed = (event: Event): void => {
    if (!event.composedPath().includes(this)) this.hide();
  };

  private readonly left = (): void => this.hide();

  override connectedCallback(): void {
    super.connectedCallback();
    addEventListener('pointerdown', this.pressed, { capture: true });
    addEventListener('blur', this.left);
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('pointerdown', this.pressed, { capture: true });
    removeEventListener('blur', this.left);
  }

  private choose(command: Command): void {
    this.hide();
    this.dispatchEvent(new CustomEvent('adjoin-command', { detail: command, bubbles: true, composed: true }));
  }

  override render(): TemplateResult {
    return html`
      <div class="menu" popover="manual" role="menu" aria-label="What can be done" @keydown=${this.key}>
        ${this.commands.map((command, i) => html`
          ${i > 0 && command.group !== this.commands[i - 1]?.group ? html`<hr />` : nothing}
          <button class="bare" type="button" role="menuitem" tabindex="-1" aria-disabled=${command.enabled !== true} title=${command.enabled === true ? nothing : command.enabled}
            @click=${() => { if (command.enabled === true) this.choose(command); }}>
            <span>${command.title}</span>${command.keys === undefined ? nothing : html`<kbd>${keysText(command.keys)}</kbd>`}
          </button>`)}
      </div>
    `;
  }
}

function deepActive(): Element | null {
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  return active;
}

customElements.define('adjoin-context-menu', AdjoinContextMenu);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-context-menu': AdjoinContextMenu;
  }
}
