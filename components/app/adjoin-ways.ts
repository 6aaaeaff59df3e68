import { css, html, LitElement } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../src/cabin/cabin.ts';
import type { Route } from '../controllers/route.ts';
import { base, controls } from '../styles/shared.ts';

const demo = '#/cabin?open=demo-data/shuttle-slate.cabin.json';

/** Where to begin where there is nothing to show yet: what the cabin lacks first, then the demo, which lacks nothing. */
export class AdjoinWays extends LitElement {
  static override styles = [base, controls, css`
    :host { display: grid; gap: 10px; justify-items: start; }
    svg { width: 132px; height: 44px; }
    .ways { display: flex; flex-wrap: wrap; gap: 8px; }
    .ways .button { min-height: 34px; padding: 4px 14px; }
  `];
  static override properties = { cabin: { attribute: false }, linkTo: { attribute: false } };

  declare cabin: Cabin;
  declare linkTo: (change: Partial<Route>) => string;

  override render(): TemplateResult {
    const to = (view: Route['view']): string => this.linkTo({ view, item: undefined, joint: undefined, options: {}, filter: {} });
    const read = this.cabin.parts.some(({ sources }) => sources.some(({ specimens }) => specimens.some(({ readings }) => readings.length > 0)));
    const ways: (readonly [string, string])[] = [
      ...(this.cabin.parts.length === 0 ? [[to('parts'), 'Make the parts'] as const] : this.cabin.joints.length === 0 ? [[to('cabin'), 'Join parts on the map'] as const] : []),
      ...(read ? [] : [[to('import'), 'Import readings'] as const]),
      [demo, 'Open the demo instead'],
    ];
    return html`
      <svg viewBox="0 0 132 44" fill="none" stroke="currentColor" aria-hidden="true"><path d="M1 1h130v18H1zM1 25h130v18H1z" stroke-dasharray="4 3" /></svg>
      <div class="ways">${ways.map(([address, words], place) => html`<a class="button ${place === 0 ? 'strong' : ''}" href=${address}>${words}</a>`)}</div>
    `;
  }
}

customElements.define('adjoin-ways', AdjoinWays);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-ways': AdjoinWays;
  }
}
