import { css } from 'lit';

export const styles = css`
  :host { display: block; }
  .multiples { display: grid; grid-template-columns: repeat(auto-fill, minmax(150px, 1fr)); gap: 12px; }
  .multiples button { display: block; padding: 0; border-color: transparent; background: none; text-align: left; border-radius: 0; width: 100%; }
  .multiples button[aria-pressed='true'] { background: none; color: inherit; }
  .multiples button[aria-pressed='true'] .swatch { outline: 2px solid var(--ink); outline-offset: 2px; }
  .multiples .swatch { display: block; outline: 1px solid var(--line); }
  .multiples button:hover .swatch { outline-color: var(--ink); }
  .multiples svg { width: 100%; }
  .title { display: flex; justify-content: space-between; align-items: baseline; font-size: var(--small); padding: 5px 0 0; }
  .title b { font-weight: 600; }
  .title span { color: var(--quiet); }
  .about { color: var(--quiet); font-size: var(--small); margin-top: 20px; padding-bottom: 6px; }
  .rows { overflow-x: auto; }
  table { border-collapse: collapse; width: 100%; font-size: var(--small); }
  th, td { padding: 4px 12px 4px 0; text-align: right; white-space: nowrap; height: 26px; }
  thead th { font-weight: 600; font-size: var(--tiny); color: var(--quiet); border-bottom: 1px solid var(--line); vertical-align: bottom; }
  tbody th { text-align: left; font-weight: 600; }
  th:first-child, td:last-child, th:last-child { text-align: left; }
  td:last-child, th:last-child { padding-right: 0; }
  tbody tr + tr > * { border-top: 1px solid var(--faint); }
  tr.shown > * { color: var(--quiet); }
  tr.now > * { background: var(--raised); }
  .over { font-weight: 650; color: var(--clashes); }
  .words { white-space: normal; min-width: 12em; }
  .none { color: var(--quiet); }
  @media (forced-colors: active) { .multiples button { border: 0; } }
`;
