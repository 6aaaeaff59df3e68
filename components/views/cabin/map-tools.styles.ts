import { css } from 'lit';

export const styles = css`
  :host { display: block; padding: 8px 20px; border-bottom: 1px solid var(--map-line); }
  .row { display: flex; flex-wrap: wrap; gap: 6px 12px; align-items: center; font-size: var(--small); }
  button, .pick select { background: transparent; color: var(--table-ink); border-color: var(--table-ink); }
  button:hover, .pick select:hover { background: var(--table-ink); color: var(--table); border-color: var(--table-ink); }
  button[aria-checked='true'], .pick.on select { background: var(--table-ink); color: var(--table); border-color: var(--table-ink); }
  button[aria-disabled='true'] { color: var(--table-ink); }
  .pick::after { border-color: var(--table-ink); }
  .pick:hover::after, .pick.on::after { border-color: var(--table); }
  .pick { max-width: 220px; }
  .set, .zoom { display: inline-flex; }
  .set button, .zoom button { border-radius: 0; margin-left: -1px; min-width: 32px; }
  .set button:first-child, .zoom button:first-child { border-radius: var(--radius) 0 0 var(--radius); margin-left: 0; }
  .set button:last-child, .zoom button:last-child { border-radius: 0 var(--radius) var(--radius) 0; }
  .zoom { margin-left: auto; }
  @media (max-width: 760px) { :host { padding: 8px 12px; } .row { gap: 6px 8px; } .pick { max-width: 160px; } }
  @media (forced-colors: active) { button[aria-checked='true'], .pick.on select { forced-color-adjust: none; background: Highlight; color: HighlightText; } }
`;
