import { css } from 'lit';

/** Below this the terms lie folded above the plan. */
export const narrow = '(max-width: 1080px)';

/** What the plans' places share: a column of terms beside the picture and its tables. */
export const planStyles = css`
  :host { display: grid; grid-template-columns: 296px minmax(0, 1fr); background: var(--paper); min-height: 100%; align-items: stretch; }
  aside { padding: 20px 20px 40px; border-right: 1px solid var(--line); background: var(--raised); display: grid; gap: 20px; align-content: start; min-width: 0; }
  .body { padding: 20px 24px 64px; display: grid; grid-template-columns: minmax(0, 1fr); gap: 32px; align-content: start; min-width: 0; max-width: 1500px; }
  .body:only-child { grid-column: 1 / -1; }
  h1 { font-size: var(--huge); letter-spacing: -0.015em; }
  h2 { font-size: var(--large); padding-bottom: 6px; margin-bottom: 12px; border-bottom: 1px solid var(--line); }
  h3 { font-size: var(--body); }
  aside h2 { font-size: var(--body); margin-bottom: 8px; }
  .lead { display: flex; flex-wrap: wrap; gap: 12px 32px; align-items: flex-end; justify-content: space-between; }
  .lead .said { max-width: 84ch; margin-top: 6px; display: grid; gap: 2px; text-wrap: pretty; }
  .lead .said p:first-child { font-size: 1.0625rem; }
  .lead .said p + p { color: var(--quiet); font-size: var(--small); }
  .apply { display: grid; gap: 4px; justify-items: end; }
  .apply button { min-height: 36px; padding: 4px 16px; font-weight: 600; }
  .apply .note { font-size: var(--small); color: var(--quiet); max-width: 38ch; text-align: right; }
  .quiet { color: var(--quiet); } .small { font-size: var(--small); }
  .running { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 2px 16px; align-items: center; padding: 10px 12px 10px 16px; border: 1px solid var(--line); border-left: 6px solid var(--ink); background: var(--raised); }
  .running progress { grid-column: 1; appearance: none; width: 100%; height: 8px; border: 1px solid var(--line); background: var(--field); }
  .running progress::-webkit-progress-bar { background: var(--field); } .running progress::-webkit-progress-value { background: var(--ink); } .running progress::-moz-progress-bar { background: var(--ink); }
  .running button { grid-column: 2; grid-row: 1 / 3; }
  .notice { display: flex; flex-wrap: wrap; gap: 8px 16px; align-items: center; justify-content: space-between; padding: 10px 12px 10px 16px; border: 1px solid var(--line); border-left: 6px double var(--ink); background: var(--raised); }
  .notice.bad { border-left-color: var(--clashes); } .notice div { max-width: 90ch; display: grid; gap: 4px; }
  .notice b { font-weight: 600; }
  .old { opacity: 0.55; }
  .teach { display: grid; gap: 12px; max-width: 72ch; padding: 24px 0; } .teach p { font-size: 1.0625rem; }
  .field .pair { display: flex; gap: 6px; align-items: center; }
  .check { display: flex; gap: 6px; align-items: flex-start; font-size: var(--small); min-height: 26px; }
  .check span { padding-top: 4px; } .check .count { color: var(--quiet); }
  fieldset { border: 0; margin: 0; padding: 0; min-width: 0; } legend { padding: 0; font-weight: 600; margin-bottom: 6px; }
  .scroll { overflow-x: auto; position: relative; }
  table { border-collapse: collapse; width: 100%; }
  caption { text-align: left; font-weight: 600; padding-bottom: 6px; }
  th { text-align: left; font-weight: 400; color: var(--quiet); font-size: var(--small); padding: 4px 12px 4px 0; vertical-align: bottom; border-bottom: 1px solid var(--line); white-space: nowrap; }
  td { padding: 5px 12px 5px 0; border-bottom: 1px solid var(--faint); vertical-align: top; }
  tbody th { color: var(--ink); font-size: inherit; border-color: var(--faint); vertical-align: top; white-space: normal; }
  td.n, th.n { text-align: right; font-variant-numeric: tabular-nums; white-space: nowrap; }
  tr.on td, tr.on th { background: var(--raised); box-shadow: inset 0 1px var(--ink), inset 0 -1px var(--ink); }
  .chip { display: inline-block; flex: none; width: 28px; height: 18px; border: 1px solid var(--core); }
  .joints { display: flex; flex-wrap: wrap; gap: 4px 12px; } .joints a { overflow-wrap: anywhere; display: inline-block; min-height: 24px; padding: 3px 0; }
  details > summary { min-height: 28px; padding: 4px 0; }
  .terms > summary { font-weight: 600; }
  @media (min-width: 1081px) { .terms > summary { display: none; } }
  @media (max-width: 1080px) {
    .terms[open] > summary { margin-bottom: 12px; }
    :host { grid-template-columns: minmax(0, 1fr); align-content: start; }
    aside { border-right: 0; border-bottom: 1px solid var(--line); padding: 8px 24px; }
  }
  @media (max-width: 760px) {
    aside, .body { padding-left: 12px; padding-right: 12px; }
    td, th { padding-right: 8px; }
    h1 { font-size: 1.375rem; } .apply { justify-items: stretch; width: 100%; } .apply .note { text-align: left; max-width: none; }
  }
  @media print { :host { display: block; } aside, .apply, .running, .notice { display: none; } }
`;
