import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: minmax(0, 1fr); gap: 24px; padding: 16px 24px 48px; align-content: start; }
  header { display: flex; gap: 14px; align-items: center; flex-wrap: wrap; }
  header > div { flex: 1; min-width: 180px; } header svg { outline: 1px solid var(--line); flex: none; }
  h2 { font-size: var(--huge); letter-spacing: -0.015em; }
  h3 { font-size: var(--body); padding-bottom: 4px; margin-bottom: 8px; border-bottom: 1px solid var(--line); }
  div > p + h3, div > div + h3 { margin-top: 20px; }
  .quiet { color: var(--quiet); font-size: var(--small); font-weight: 400; }
  .two { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); gap: 24px 40px; } .two > div { min-width: 0; }
  .wide { overflow-x: auto; position: relative; }
  table { border-collapse: collapse; width: 100%; }
  section > .wide > table { min-width: 860px; }
  th { text-align: left; font-weight: 400; padding: 3px 14px 3px 0; } thead th { color: var(--quiet); font-size: var(--small); border-bottom: 1px solid var(--line); }
  tbody td, tbody th { border-bottom: 1px solid var(--faint); padding: 5px 14px 5px 0; vertical-align: middle; }
  tr.within { background: var(--raised); box-shadow: inset 6px 0 var(--clashes); } tr.within th { padding-left: 14px; }
  .number { text-align: right; white-space: nowrap; }
  .scale { width: 186px; }
  td ul li { display: flex; gap: 8px; align-items: center; padding: 1px 0; } td li svg { flex: none; }
  .does { display: flex; flex-wrap: wrap; gap: 8px; margin: 8px 0; }
  svg { max-width: 100%; }
  button:disabled { color: var(--quiet); border-style: dashed; cursor: default; }
  @media (min-width: 861px) { .back { display: none; } }
  @media (max-width: 1200px) { .two { grid-template-columns: minmax(0, 1fr); } }
  @media (max-width: 760px) { section > .wide > table { min-width: 0; } .stacked .scale { width: auto; } .stacked .scale::before { display: inline-block; min-width: 48px; } .back { flex: 1 1 100%; justify-content: flex-start; border: 0; padding: 0; background: none; text-decoration: underline; } :host { padding: 12px; } h2 { font-size: 1.375rem; } }
`;
