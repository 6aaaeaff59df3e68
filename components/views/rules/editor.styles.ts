import { css } from 'lit';

/** What the editors of rules, classes and books share. */
export const editorStyles = css`
  :host { display: block; min-width: 0; }
  .editor { display: grid; grid-template-columns: minmax(0, 1fr); gap: 4px; }
  details { border-top: 1px solid var(--faint); } details:last-of-type { border-bottom: 1px solid var(--faint); }
  summary { min-height: 34px; padding: 7px 0; display: flex; gap: 4px 10px; align-items: baseline; flex-wrap: wrap; }
  summary::before { margin: 0; translate: 0 -2px; }
  summary b { font-weight: 600; } summary span { color: var(--quiet); font-size: var(--small); min-width: 0; }
  .inside { padding: 2px 0 16px; display: grid; grid-template-columns: minmax(0, 1fr); gap: 12px; }
  .fields { display: grid; grid-template-columns: repeat(auto-fill, minmax(150px, 1fr)); gap: 10px 12px; align-items: end; }
  .fields > adjoin-action-fields, .fields > adjoin-formula-field { min-width: 0; }
  .three { display: grid; grid-template-columns: repeat(auto-fit, minmax(112px, 1fr)); gap: 10px 12px; align-items: start; }
  .bar { display: flex; flex-wrap: wrap; gap: 6px; align-items: center; }
  .small { font-size: var(--small); } .quiet { color: var(--quiet); }
  .rows { width: 100%; border-collapse: collapse; } .rows th { text-align: left; font-weight: 400; font-size: var(--small); color: var(--quiet); padding: 2px 6px 2px 0; } .rows td { padding: 3px 6px 3px 0; vertical-align: top; }
  .rows .pick { width: 100%; } .rows td:nth-child(2):not([colspan]) input { width: 72px; } .wide { grid-template-columns: minmax(0, 1fr); } .rows button { min-width: 28px; padding: 2px 6px; } .rows .moves { white-space: nowrap; }
  .rows tr.basis td { padding-bottom: 10px; }
  .order { display: flex; flex-wrap: wrap; gap: 6px 18px; padding-top: 6px; } .order li { display: flex; gap: 6px; align-items: center; } .order button { min-width: 28px; padding: 2px 6px; }
  .fault { font-size: var(--small); color: var(--clashes); font-weight: 600; }
  @media (max-width: 480px) {
    .rows, .rows tbody, .rows tr { display: block; } .rows thead { display: none; } .rows tr { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); } .rows tr.basis { display: block; } .rows .moves { grid-column: 1 / -1; }
  }
`;
