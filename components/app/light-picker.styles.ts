import { css } from 'lit';

export const styles = css`
  :host { display: flex; align-items: center; gap: 4px; min-width: 0; }
  .now { min-height: 40px; padding: 3px 12px 3px 10px; gap: 10px; justify-content: flex-start; min-width: 220px; text-align: left; flex: 1; }
  .now svg { flex: none; color: var(--quiet); }
  .now[aria-expanded='true'] svg { color: var(--faint); }
  .now .name { font-weight: 650; font-size: 1rem; line-height: 1.1; display: block; }
  .now .about { font-size: var(--tiny); line-height: 1.2; display: block; color: var(--quiet); white-space: nowrap; }
  .now[aria-expanded='true'] .about { color: inherit; }
  .step { width: 28px; min-height: 40px; padding: 0; }
  .step svg { width: 10px; height: 10px; }
  .sweep { min-height: 40px; }
  .panel {
    position: fixed; inset: auto; top: calc(var(--header) + 4px); right: 16px; margin: 0; padding: 16px; width: 700px; max-width: calc(100vw - 16px);
    max-height: calc(100vh - var(--header) - 24px); overflow: auto;
    background: var(--paper); color: var(--ink); border: 1px solid var(--line); border-radius: 4px; box-shadow: 0 12px 32px var(--shade);
  }
  .panel > p { color: var(--quiet); font-size: var(--small); margin-bottom: 12px; }
  .groups { columns: 3; column-gap: 20px; }
  section { break-inside: avoid; margin-bottom: 16px; }
  h3 { font-size: var(--small); font-weight: 600; padding-bottom: 4px; margin-bottom: 4px; border-bottom: 1px solid var(--line); }
  .light {
    width: 100%; min-height: 40px; padding: 3px 6px; gap: 8px; border-color: transparent; background: none; justify-content: flex-start; text-align: left;
  }
  .light svg { flex: none; color: var(--quiet); }
  .light[aria-checked='true'] svg { color: inherit; }
  .light .name { font-weight: 600; display: block; }
  .light .about { font-size: var(--tiny); color: var(--quiet); display: block; line-height: 1.15; }
  .light[aria-checked='true'] .about { color: inherit; }
  .mark { font-weight: 400; font-size: var(--tiny); border-bottom: 1.5px solid currentColor; margin-left: 4px; }
  .mark.shown { border-bottom-style: dotted; }
  @media (max-width: 760px) {
    .now { min-width: 0; overflow: hidden; }
    .now > span { min-width: 0; overflow: hidden; }
    .now .about { overflow: hidden; text-overflow: ellipsis; }
    .panel { right: 8px; left: 8px; width: auto; top: 108px; max-height: calc(100vh - 120px); }
    .groups { columns: 2; column-gap: 8px; }
  }
`;
