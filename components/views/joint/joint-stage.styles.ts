import { css } from 'lit';

export const styles = css`
  :host { display: block; background: var(--table); color: var(--table-ink); padding: 20px 24px 20px; }
  .stage { display: grid; grid-template-columns: 184px minmax(0, 1fr); gap: 0 20px; }
  .names { display: grid; grid-template-rows: 1fr 1fr; height: 280px; }
  .side { align-self: center; text-align: right; font-size: var(--small); line-height: 1.3; }
  .side b { display: block; font-size: 1rem; font-weight: 600; line-height: 1.2; margin-bottom: 2px; text-wrap: balance; }
  .side .role { font-size: var(--tiny); }
  .figure { min-width: 0; height: 280px; outline: 1px solid var(--table-ink); cursor: grab; touch-action: pan-y; user-select: none; }
  .figure:active { cursor: grabbing; }
  .figure adjoin-surface-strip { height: 100%; }
  .row { grid-column: 2; margin-top: 12px; }
  .under { display: flex; flex-wrap: wrap; gap: 8px 24px; align-items: center; }
  .under button { background: transparent; color: var(--table-ink); border-color: var(--table-ink); }
  .under button:hover { background: var(--table-ink); color: var(--table); }
  .under button[aria-checked='true'] { background: var(--table-ink); color: var(--table); }
  .set { display: inline-flex; align-items: center; gap: 8px; font-size: var(--small); }
  .set > div { display: inline-flex; }
  .set button { border-radius: 0; margin-left: -1px; min-width: 40px; }
  .set button:first-child { border-radius: var(--radius) 0 0 var(--radius); margin-left: 0; }
  .set button:last-child { border-radius: 0 var(--radius) var(--radius) 0; }
  .notes { font-size: var(--small); max-width: 110ch; text-wrap: pretty; }
  @media print { .under { display: none; } }
  @media (max-width: 760px) {
    :host { padding: 12px; }
    .stage { grid-template-columns: minmax(0, 1fr); }
    .names { display: contents; }
    .side { text-align: left; margin-bottom: 6px; }
    .side:last-child { order: 2; margin: 6px 0 0; }
    .figure { height: 200px; order: 1; }
    .row { grid-column: 1; order: 3; }
  }
`;
