import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 8px 24px; padding: 8px 20px 14px; align-items: end; min-height: 84px; color: var(--table-ink); }
  /* Room for a name and three lines: were it to grow with what is pointed at, the map above would be another size and be drawn anew. */
  .readout { font-size: var(--small); line-height: 1.35; min-height: calc(1.35 * (var(--body) + 3 * var(--small))); align-self: start; }
  .readout b { font-weight: 600; font-size: var(--body); }
  .readout p { overflow: hidden; display: -webkit-box; -webkit-line-clamp: 3; -webkit-box-orient: vertical; max-width: 84ch; }
  .keys { display: grid; gap: 6px 24px; justify-items: end; }
  .legend { display: grid; grid-template-columns: auto auto; gap: 2px 16px; font-size: var(--tiny); }
  .legend.tint { grid-template-columns: auto auto auto; }
  .legend li { display: flex; align-items: center; gap: 8px; white-space: nowrap; }
  .legend svg { flex: none; }
  .sample { forced-color-adjust: none; }
  .run { grid-column: 1 / -1; grid-row: 1; display: flex; gap: 20px; align-items: start; font-size: var(--small); line-height: 1.35; }
  .run svg { flex: none; }
  .run figcaption { max-width: 84ch; }
  .run .word { font-weight: 600; }
  summary { cursor: pointer; min-height: 24px; width: max-content; text-decoration: underline; text-underline-offset: 2px; }
  table { border-collapse: collapse; }
  th, td { font-weight: 400; text-align: left; padding: 1px 24px 1px 0; }
  td { text-align: right; }
  @media (max-width: 760px) {
    :host { grid-template-columns: minmax(0, 1fr); padding: 4px 12px 12px; }
    .readout { min-height: 0; }
    .readout .idle { display: none; }
    .keys { justify-items: start; }
    .run { flex-direction: column; gap: 4px; }
  }
`;
