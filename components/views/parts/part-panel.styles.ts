import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: minmax(0, 1fr); gap: 24px; padding: 16px 24px 48px; align-content: start; }
  header { display: flex; gap: 12px; align-items: center; flex-wrap: wrap; }
  header > div { flex: 1; min-width: 180px; }
  header svg { outline: 1px solid var(--line); flex: none; }
  h2 { font-size: var(--huge); letter-spacing: -0.015em; }
  h3 { display: flex; gap: 12px; align-items: center; justify-content: space-between; font-size: var(--body); padding-bottom: 4px; margin-bottom: 10px; border-bottom: 1px solid var(--line); min-height: 33px; }
  h3 button { font-weight: 400; font-size: var(--small); }
  button:disabled { color: var(--quiet); border-style: dashed; cursor: default; }
  .quiet { color: var(--quiet); font-size: var(--small); }
  .pair { display: grid; grid-template-columns: minmax(0, 2fr) minmax(0, 3fr); gap: 24px; }
  table { border-collapse: collapse; width: 100%; }
  th { text-align: left; font-weight: 400; padding: 3px 12px 3px 0; } thead th { color: var(--quiet); font-size: var(--small); }
  td, tbody th { border-top: 1px solid var(--faint); padding: 4px 12px 4px 0; }
  .number { text-align: right; padding-right: 0; }
  .verdict { display: inline-flex; gap: 8px; align-items: center; }
  .caps li { padding: 2px 0; }
  @media (min-width: 1081px) { .back { display: none; } }
  @media (max-width: 760px) { :host { padding: 12px; } .pair { grid-template-columns: minmax(0, 1fr); } h2 { font-size: 1.375rem; } }
`;
