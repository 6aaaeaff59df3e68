import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: minmax(0, 1fr); gap: 24px; padding: 16px 24px 40px; align-content: start; }
  header { display: flex; flex-wrap: wrap; gap: 8px 16px; align-items: center; }
  h2 { font-size: var(--large); flex: 1; overflow-wrap: anywhere; }
  h3 { font-size: var(--body); padding-bottom: 4px; margin-bottom: 8px; border-bottom: 1px solid var(--line); }
  .quiet { color: var(--quiet); font-size: var(--small); margin-top: 4px; }
  .state { font-weight: 600; } .state.ready { color: var(--holds); } .state.asks { color: var(--open); } .state.refused { color: var(--clashes); }
  .two { display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); gap: 24px 40px; }
  .facts { display: grid; grid-template-columns: max-content minmax(0, 1fr); gap: 3px 16px; }
  .facts dt { color: var(--quiet); } .facts dd { overflow-wrap: anywhere; }
  .wide { overflow-x: auto; position: relative; }
  table { border-collapse: collapse; width: 100%; font-size: var(--small); }
  th { text-align: left; font-weight: 400; color: var(--quiet); padding: 2px 12px 4px 0; white-space: nowrap; }
  td { padding: 3px 12px 3px 0; border-top: 1px solid var(--faint); vertical-align: top; }
  .number { text-align: right; padding-right: 16px; } th:first-child, .faults th:nth-child(2) { text-align: right; padding-right: 16px; width: 1px; }
  .faults { border-left: 6px solid var(--line); padding-left: 16px; }
  .faults.errors { border-left: 9px double var(--clashes); }
  .faults h3 { border: 0; margin: 0; }
  svg { max-width: 100%; height: auto; }
  figcaption { color: var(--quiet); font-size: var(--small); }
  @media (max-width: 1100px) { .two { grid-template-columns: minmax(0, 1fr); } }
  @media (max-width: 860px) { :host { padding: 12px 12px 32px; gap: 20px; } }
`;
