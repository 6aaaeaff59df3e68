import { html, svg } from 'lit';
import type { TemplateResult } from 'lit';
import type { PartColour } from '../model/part-colours.ts';

/** A part's colour as the screen shows it; hatched where there is none. */
export const swatch = (colour: PartColour | undefined, size = 20): TemplateResult => html`<svg class="sample" width=${size} height=${size} viewBox="0 0 20 20" aria-hidden="true">
  ${colour?.css === undefined ? svg`<path d="M0.5 0.5h19v19h-19zM0 10L10 0M0 20L20 0M10 20L20 10" fill="none" stroke="currentColor" />` : svg`<rect width="20" height="20" fill=${colour.css} />`}
</svg>`;
