import { css } from 'lit';

export const styles = css`
  :host { display: block; min-width: 0; }
  .field { gap: 4px; }
  .entry { position: relative; display: flex; flex-wrap: wrap; gap: 6px; }
  .entry input { flex: 1 1 96px; }
  input.formula, code, pre { font-family: ui-monospace, 'SFMono-Regular', Menlo, Consolas, monospace; font-size: var(--small); }
  .small { font-size: var(--small); } .quiet { color: var(--quiet); }
  pre { margin: 0; padding: 4px 9px; background: var(--field); border-left: 4px double var(--clashes); overflow-x: auto; line-height: 1.25; }
  pre b { color: var(--clashes); font-weight: 700; }
  .fault { font-size: var(--small); color: var(--clashes); font-weight: 600; margin-top: 4px; }
  .result b { font-size: var(--body); font-variant-numeric: tabular-nums; }
  [role='listbox'] { position: absolute; z-index: 3; top: calc(100% + 2px); left: 0; right: 0; max-height: 280px; overflow-y: auto; background: var(--field); border: 1px solid var(--ink); border-radius: var(--radius); box-shadow: 0 6px 20px var(--shade); }
  [role='option'] { display: grid; grid-template-columns: 10.5em minmax(0, 1fr) auto; gap: 8px; padding: 4px 8px; font-size: var(--small); cursor: pointer; align-items: baseline; min-height: 26px; }
  [role='option'] span { color: var(--quiet); overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
  [role='option'] b { font-weight: 600; font-variant-numeric: tabular-nums; }
  [role='option'][aria-selected='true'] { background: var(--ink); color: var(--paper); } [role='option'][aria-selected='true'] span { color: inherit; }
  details { font-size: var(--small); } summary { min-height: 24px; padding: 3px 0; color: var(--quiet); display: flex; gap: 8px; align-items: baseline; }
  summary::before { width: 5px; height: 5px; margin: 0; translate: 0 -2px; }
  table { border-collapse: collapse; width: 100%; } th { text-align: left; font-weight: 400; } thead th { color: var(--quiet); }
  td, th { padding: 3px 8px 3px 0; border-bottom: 1px solid var(--faint); vertical-align: top; } .n { text-align: right; white-space: nowrap; }
  tr.used th code { font-weight: 700; } tr.used { background: var(--raised); }
  @media (max-width: 480px) { [role='option'] { grid-template-columns: minmax(0, 1fr) auto; } [role='option'] span { grid-column: 1 / -1; grid-row: 2; white-space: normal; } }
  @media (forced-colors: active) { [role='option'][aria-selected='true'] { forced-color-adjust: none; background: Highlight; color: HighlightText; } }
`;
