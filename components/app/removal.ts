import { html } from 'lit';
import type { TemplateResult } from 'lit';

/** What was taken away may have been out of sight: it is said where one looks, with the way back. */
export const removal = (label: string, undo: () => void, close: () => void): TemplateResult => html`
  <div class="wait"><div class="removal">
    <p>Done: ${label}.</p>
    <button type="button" @click=${undo}>Undo</button><button type="button" @click=${close}>Close</button>
  </div></div>
`;
