import { html, svg } from 'lit';
import type { TemplateResult } from 'lit';
import type { PartColour } from '../../model/part-colours.ts';

/** A sample of a colour; crossed out where it cannot be shown. */
export const colourChip = (colour: PartColour | undefined): TemplateResult => html`<svg class="chip sample" viewBox="0 0 10 10" preserveAspectRatio="none" aria-hidden="true">
  ${colour?.css === undefined ? svg`<path d="M0 10 10 0" stroke="currentColor" stroke-width="0.5" />` : svg`<rect width="10" height="10" fill=${colour.css} />`}</svg>`;
