import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: minmax(0, 1fr); grid-template-rows: auto minmax(0, 1fr) auto; height: 100%; min-height: 0; background: var(--paper); }
  header { display: flex; flex-wrap: wrap; gap: 8px 24px; align-items: end; justify-content: space-between; padding: 16px 24px 12px; border-bottom: 1px solid var(--faint); }
  h1 { font-size: var(--huge); letter-spacing: -0.015em; }
  h2 { font-size: var(--large); }
  .quiet { color: var(--quiet); }
  .desk { display: grid; grid-template-columns: 300px minmax(0, 1fr); min-height: 0; }
  form { overflow: auto; border-right: 1px solid var(--line); padding: 16px 20px 24px 24px; display: grid; gap: 12px; align-content: start; }
  .row { display: grid; grid-template-columns: 1fr 1fr; gap: 10px; }
  .found { overflow: auto; padding: 20px 24px 28px; display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 440px); gap: 24px 32px; align-content: start; }
  figure.relief { display: grid; gap: 8px; align-content: start; }
  .relief canvas { max-width: 100%; max-height: 62vh; min-width: min(100%, 320px); display: block; }
  figcaption { color: var(--quiet); font-size: var(--small); max-width: 68ch; }
  .right { display: grid; gap: 20px; align-content: start; }
  table { border-collapse: collapse; width: 100%; }
  th, td { text-align: left; padding: 4px 8px 4px 0; border-bottom: 1px solid var(--faint); vertical-align: baseline; }
  th { font-weight: 600; } th.symbol { width: 56px; } td.number { text-align: right; white-space: nowrap; } td.about { color: var(--quiet); font-size: var(--small); padding-left: 12px; }
  .curve { display: grid; gap: 10px; } .curve .row { grid-template-columns: repeat(auto-fit, minmax(110px, 1fr)); align-items: end; }
  .curve svg { width: 100%; height: auto; max-width: 440px; }
  .cautions { grid-column: 1 / -1; border-left: 4px dashed var(--open); padding: 2px 0 2px 14px; display: grid; gap: 6px; }
  .faults { grid-column: 1 / -1; border-left: 6px double var(--clashes); padding-left: 14px; display: grid; gap: 8px; align-content: start; }
  .faults b { color: var(--clashes); }
  form .fault { color: var(--clashes); font-size: var(--small); font-weight: 600; } form .fault:empty { display: none; }
  .absent { border-left: 4px dashed var(--open); padding: 2px 0 2px 14px; max-width: 68ch; overflow-wrap: anywhere; }
  .empty { grid-column: 1 / -1; display: grid; gap: 24px; align-content: center; justify-self: center; width: min(100%, 820px); }
  .target { display: grid; place-content: center; justify-items: center; text-align: center; gap: 6px; min-height: 200px; border: 2px dashed var(--line); border-radius: 4px; background: var(--raised); padding: 24px; }
  .target b { font-size: var(--huge); letter-spacing: -0.015em; } .target span { color: var(--quiet); }
  dl { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(260px, 100%), 1fr)); gap: 12px 32px; }
  dt { font-weight: 600; } dd { color: var(--quiet); }
  .working { grid-column: 1 / -1; display: grid; gap: 12px; justify-items: start; align-content: start; max-width: 420px; }
  progress { appearance: none; width: 100%; height: 8px; border: 1px solid var(--line); background: var(--field); }
  progress::-webkit-progress-bar { background: var(--field); } progress::-webkit-progress-value { background: var(--ink); } progress::-moz-progress-bar { background: var(--ink); }
  footer { display: flex; flex-wrap: wrap; gap: 10px 16px; align-items: end; padding: 10px 24px; border-top: 1px solid var(--line); background: var(--raised); }
  footer .field { min-width: 160px; } footer .wide { flex: 1; min-width: 220px; max-width: 460px; }
  footer .fault { flex-basis: 100%; color: var(--clashes); font-weight: 600; }
  button:disabled { color: var(--quiet); background: none; border: 1px dashed var(--line); cursor: default; }
  @media (max-width: 1080px) { .found { grid-template-columns: minmax(0, 1fr); } }
  @media (max-width: 860px) {
    :host { height: auto; min-height: 100%; }
    .desk { grid-template-columns: minmax(0, 1fr); }
    form { border-right: 0; border-bottom: 1px solid var(--line); padding: 16px; }
    header, .found, footer { padding-left: 16px; padding-right: 16px; }
  }
`;
