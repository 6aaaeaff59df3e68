import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: minmax(0, 1fr); grid-template-rows: auto minmax(0, 1fr); height: 100%; min-height: 0; background: var(--paper); }
  header { display: flex; gap: 8px 24px; align-items: center; justify-content: space-between; padding: 12px 24px; border-bottom: 1px solid var(--line); }
  h1 { font-size: var(--huge); letter-spacing: -0.015em; }
  button:disabled { color: var(--quiet); border-style: dashed; cursor: default; }
  .note { padding: 24px; color: var(--quiet); } .note .lead { color: var(--ink); margin-bottom: 12px; }
  .lead { max-width: 92ch; text-wrap: pretty; }
  .desk { display: grid; grid-template-columns: 320px minmax(0, 1fr); grid-template-rows: minmax(0, 1fr); min-height: 0; }
  .list { overflow: auto; min-height: 0; border-right: 1px solid var(--line); padding: 8px 0; }
  .card { display: flex; gap: 12px; align-items: flex-start; padding: 8px 16px 8px 24px; text-decoration: none; border-bottom: 1px solid var(--faint); }
  .card:hover { background: var(--raised); }
  .card.here { background: var(--field); box-shadow: inset 6px 0 var(--ink); }
  .card svg { flex: none; outline: 1px solid var(--faint); }
  .card > span { display: grid; min-width: 0; overflow-wrap: anywhere; }
  .about { color: var(--quiet); font-size: var(--small); font-weight: 400; }
  .list > .about { padding: 8px 24px; }
  .state { font-size: var(--small); font-weight: 600; } .state.holds { color: var(--holds); } .state.open { color: var(--open); } .state.clashes { color: var(--clashes); } .state.quiet { color: var(--quiet); }
  .page, adjoin-master-panel { overflow: auto; min-height: 0; }
  .page { padding: 16px 24px 48px; display: grid; gap: 28px; align-content: start; grid-template-columns: minmax(0, 1fr); }
  h2 { font-size: var(--large); padding-bottom: 6px; border-bottom: 1px solid var(--line); margin-bottom: 10px; }
  .pairs { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(520px, 100%), 1fr)); gap: 16px 40px; margin-top: 12px; }
  .pairs li { border-left: 6px double var(--clashes); padding-left: 14px; }
  h3 { font-size: var(--body); margin-bottom: 6px; }
  dl { display: grid; grid-template-columns: minmax(0, 1fr) 260px 56px; gap: 4px 12px; align-items: center; margin-bottom: 4px; }
  .number { text-align: right; }
  .plain { display: flex; flex-wrap: wrap; gap: 4px 16px; margin-top: 6px; }
  @media (max-width: 860px) {
    .desk { grid-template-columns: minmax(0, 1fr); grid-template-rows: auto auto; }
    .chosen .list { display: none; } .list { border-right: 0; }
  }
  @media (max-width: 760px) {
    :host { height: auto; } header { padding: 10px 12px; } h1 { font-size: 1.375rem; }
    .list, .page, adjoin-master-panel { overflow: visible; } .page { padding: 12px; } .card { padding-left: 12px; }
    dl { grid-template-columns: minmax(0, 1fr) 56px; } dl dt { grid-column: 1 / -1; } dl svg { max-width: 100%; }
  }
  li, li a { overflow-wrap: anywhere; min-width: 0; }
`;
