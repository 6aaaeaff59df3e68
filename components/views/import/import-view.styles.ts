import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: minmax(0, 1fr); grid-template-rows: auto auto minmax(0, 1fr) auto; height: 100%; min-height: 0; background: var(--paper); }
  header { display: flex; flex-wrap: wrap; gap: 8px 24px; align-items: end; justify-content: space-between; padding: 16px 24px 12px; border-bottom: 1px solid var(--faint); grid-row: 1; }
  h1 { font-size: var(--huge); letter-spacing: -0.015em; }
  .quiet { color: var(--quiet); }
  .ways { display: flex; gap: 8px; flex-wrap: wrap; }
  .paste { grid-row: 2; display: flex; gap: 12px; align-items: end; padding: 12px 24px; border-bottom: 1px solid var(--faint); background: var(--raised); }
  .paste .field { flex: 1; } .paste textarea { font-family: ui-monospace, monospace; font-size: var(--small); }
  .desk { grid-row: 3; display: grid; grid-template-columns: 300px minmax(0, 1fr); grid-template-rows: minmax(0, 1fr); min-height: 0; }
  .cards { overflow: auto; border-right: 1px solid var(--line); padding: 12px; display: flex; flex-direction: column; gap: 8px; }
  .card {
    display: grid; justify-items: start; justify-content: stretch; gap: 1px; text-align: left; padding: 8px 10px 8px 12px; border: 1px solid var(--line); border-left-width: 6px;
    background: var(--raised); width: 100%; min-height: 56px; flex: none;
  }
  .card b { overflow-wrap: anywhere; }
  .card .about { color: var(--quiet); font-size: var(--small); }
  .card .state { font-weight: 600; font-size: var(--small); margin-top: 2px; }
  .card.asks { border-left-style: dashed; border-left-color: var(--open); } .card.asks .state { color: var(--open); }
  .card.refused { border-left-style: double; border-left-width: 9px; border-left-color: var(--clashes); padding-left: 9px; } .card.refused .state { color: var(--clashes); }
  .card.ready { border-left-color: var(--holds); } .card.ready .state { color: var(--holds); }
  .card.taken { border-left-color: var(--faint); background: none; }
  .card[aria-selected='true'] { background: var(--field); border-color: var(--ink); box-shadow: inset 0 0 0 1px var(--ink); }
  .card.asks[aria-selected='true'] { border-left-color: var(--open); } .card.refused[aria-selected='true'] { border-left-color: var(--clashes); }
  progress { appearance: none; width: 100%; height: 6px; border: 1px solid var(--line); background: var(--field); margin-top: 6px; }
  progress::-webkit-progress-bar { background: var(--field); } progress::-webkit-progress-value { background: var(--ink); } progress::-moz-progress-bar { background: var(--ink); }
  adjoin-import-file { overflow: auto; min-height: 0; }
  .empty { grid-row: 3; display: grid; align-content: center; justify-content: center; gap: 28px; padding: 24px; grid-template-columns: minmax(0, 860px); }
  .target { display: grid; place-content: center; justify-items: center; text-align: center; gap: 6px; min-height: 200px; border: 2px dashed var(--line); border-radius: 4px; background: var(--raised); padding: 24px; }
  .target b { font-size: var(--huge); letter-spacing: -0.015em; } .target span { color: var(--quiet); }
  .empty dl { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(320px, 100%), 1fr)); gap: 12px 32px; }
  .empty dt { font-weight: 600; } .empty dd { color: var(--quiet); }
  .empty p { max-width: 84ch; }
  footer { grid-row: 4; display: flex; flex-wrap: wrap; gap: 8px 16px; align-items: center; justify-content: flex-end; padding: 10px 24px; border-top: 1px solid var(--line); background: var(--raised); }
  footer p:first-child { flex: 1; min-width: 200px; }
  .after { display: inline-flex; gap: 8px; flex-wrap: wrap; }
  button:disabled { color: var(--quiet); background: none; border: 1px dashed var(--line); cursor: default; }
  @media (max-width: 860px) {
    :host { height: auto; min-height: 100%; }
    header, .paste, footer { padding-left: 12px; padding-right: 12px; }
    h1 { font-size: 1.375rem; }
    .paste { flex-direction: column; align-items: stretch; }
    .desk { grid-template-columns: minmax(0, 1fr); grid-template-rows: auto auto; }
    .cards { border-right: 0; border-bottom: 1px solid var(--line); overflow: visible; }
    adjoin-import-file { overflow: visible; }
    .empty { padding: 16px 12px 32px; align-content: start; } .target { min-height: 140px; } .target b { font-size: 1.375rem; }
    footer { position: sticky; bottom: 0; }
  }
`;
