import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: minmax(0, 1fr); gap: 16px; align-content: start; container-type: inline-size; }
  .choose { display: flex; flex-wrap: wrap; gap: 6px; align-items: center; } .choose .label { color: var(--quiet); margin-right: 4px; }
  .quiet { color: var(--quiet); } .small { font-size: var(--small); }
  .teach { display: grid; gap: 10px; max-width: 68ch; padding: 24px 0; } .teach .ask { font-size: var(--huge); font-weight: 300; line-height: 1.15; letter-spacing: -0.015em; text-wrap: balance; }
  .running { display: grid; gap: 6px; max-width: 520px; padding: 12px 16px; border: 1px solid var(--line); border-left: 6px solid var(--ink); background: var(--raised); }
  progress { appearance: none; width: 100%; height: 8px; border: 1px solid var(--line); background: var(--field); } progress::-webkit-progress-bar { background: var(--field); } progress::-webkit-progress-value { background: var(--ink); } progress::-moz-progress-bar { background: var(--ink); }
  .faults { display: grid; gap: 8px; border-left: 6px double var(--clashes); padding-left: 14px; } .faults b { color: var(--clashes); }
  .lead { display: flex; flex-wrap: wrap; gap: 10px 32px; align-items: center; justify-content: space-between; } .said { font-size: 1.0625rem; max-width: 96ch; text-wrap: pretty; } .lead button { min-height: 36px; padding: 4px 16px; font-weight: 600; }
  .notes { border-left: 4px dashed var(--open); padding-left: 12px; color: var(--quiet); font-size: var(--small); }
  .both { display: grid; grid-template-columns: minmax(320px, 520px) minmax(0, 1fr); gap: 24px 32px; align-items: start; }
  figure > div svg { width: 100%; height: auto; } figure .joint { cursor: pointer; } figcaption { display: flex; flex-wrap: wrap; gap: 4px 16px; font-size: var(--small); padding-left: 46px; } figcaption span { display: inline-flex; gap: 6px; align-items: center; }
  figure { position: sticky; top: 12px; }
  .list { display: grid; gap: 10px; min-width: 0; } .bar { display: flex; flex-wrap: wrap; gap: 6px; } .bar b { font-weight: 600; }
  .scroll { overflow-x: auto; position: relative; }
  table { border-collapse: collapse; width: 100%; } th, td { text-align: left; font-weight: 400; padding: 6px 12px 6px 0; border-bottom: 1px solid var(--faint); vertical-align: top; }
  thead th { color: var(--quiet); font-size: var(--small); border-color: var(--line); white-space: nowrap; vertical-align: bottom; } .n { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
  tbody th { min-width: 13rem; } tbody th a { display: inline-block; min-height: 24px; } td .small { display: block; } tr.on th, tr.on td { background: var(--raised); }
  .verdict { display: inline-flex; gap: 6px; align-items: center; white-space: nowrap; }
  @container (max-width: 960px) { .both { grid-template-columns: minmax(0, 1fr); } figure { position: static; max-width: 520px; } }
  @container (max-width: 560px) {
    .list table, .list tbody, .list tr, .list th, .list td { display: block; border: 0; padding: 0; } .list thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
    .list tr { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 2px 12px; padding: 8px 0; border-bottom: 1px solid var(--line); } .list tr th { grid-column: 1 / -1; min-width: 0; font-weight: 600; } .list td::before { content: attr(data-name) ' '; color: var(--quiet); font-size: var(--small); } .list td.n { text-align: right; }
    .lead button { width: 100%; }
  }
`;
