import { html, nothing, svg } from 'lit';
import type { TemplateResult } from 'lit';
import type { Desk } from '../controllers/desk.ts';

const figures = new Intl.NumberFormat('en-GB');

/** The file that is being read and judged, how far that is by now, and the way out of it. */
export function waiting(file: string, desk: Desk): TemplateResult {
  const { open } = desk;
  const [judged, all] = open?.judging === true ? [desk.judged, open.cabin.joints.length] : [0, 0];
  const share = all === 0 ? 0 : judged / all;
  return html`
    <div class="wait">
      <div>
        <svg width="40" height="14" viewBox="0 0 40 14" aria-hidden="true">
          <path d="M0 0h40v6H0z" fill="currentColor" opacity="0.35" />
          ${judged === 0 ? svg`<path class="mover" d="M0 8h16v6H0z" fill="currentColor" />` : svg`<path d=${`M0 8h${40 * share}v6H0z`} fill="currentColor" />`}
        </svg>
        <span>
          <span role="status">Reading and judging ${file}</span>
          ${judged === 0 ? nothing : html`<span
            class="count" role="progressbar" aria-label="Joints judged" aria-valuenow=${judged} aria-valuemin="0" aria-valuemax=${all}
            aria-valuetext=${`${judged} of ${all} joints judged`}
          >${figures.format(judged)} of ${figures.format(all)} joints judged</span>`}
        </span>
        <button type="button" @click=${() => desk.cancel()}>Cancel</button>
      </div>
    </div>
  `;
}
