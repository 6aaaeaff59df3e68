import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-rows: minmax(0, 1fr) auto; background: var(--table); color: var(--table-ink); min-height: 0; position: relative; }
  .map { min-height: 0; overflow: hidden; position: relative; }
  .map > svg { position: absolute; inset: 0; }
  .map:focus-visible { outline-offset: -4px; box-shadow: none; }
  .hit { cursor: pointer; }
  .sample, .no-colour { forced-color-adjust: none; }
  .foot { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 8px 24px; padding: 8px 20px 14px; align-items: end; min-height: 84px; }
  .readout { font-size: var(--small); line-height: 1.35; min-height: 58px; align-self: start; }
  .readout b { font-weight: 600; font-size: var(--body); }
  .readout p { overflow: hidden; display: -webkit-box; -webkit-line-clamp: 3; -webkit-box-orient: vertical; max-width: 84ch; }
  .legend { display: grid; grid-template-columns: auto auto; gap: 2px 16px; font-size: var(--tiny); }
  .legend li { display: flex; align-items: center; gap: 8px; white-space: nowrap; }
  .legend svg { flex: none; }
  .notices { position: absolute; left: 20px; top: 12px; right: 20px; font-size: var(--small); pointer-events: none; }
  @media (max-width: 760px) {
    :host { grid-template-rows: 256px auto; }
    .foot { grid-template-columns: 1fr; padding: 4px 12px 12px; }
    .readout { min-height: 0; }
    .readout .idle { display: none; }
    .legend { grid-template-columns: auto auto; justify-content: start; }
  }
`;
