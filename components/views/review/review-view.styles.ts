import { css } from 'lit';

export const styles = css`
  :host { display: block; height: 100%; background: var(--table); }
  dialog { position: fixed; inset: 0; width: 100vw; height: 100vh; height: 100dvh; max-width: none; max-height: none; margin: 0; padding: 0; border: 0; background: var(--paper); color: var(--ink); overflow: hidden; }
  dialog[open] { display: grid; grid-template-columns: minmax(0, 1fr); grid-template-rows: auto auto minmax(0, 1fr) auto; }
  dialog::backdrop { background: var(--paper); }
  .bar { display: flex; align-items: center; gap: 8px 20px; padding: 10px 24px; flex-wrap: wrap; }
  .bar .light { margin-left: auto; }
  .bar .place { font-weight: 600; }
  .quiet { color: var(--quiet); }
  .filtered { display: inline-flex; align-items: center; gap: 4px 10px; flex-wrap: wrap; min-width: 0; overflow-wrap: anywhere; }
  .progress { display: flex; gap: 1px; height: 6px; padding: 0 24px; }
  .progress span { flex: 1 1 0; min-width: 0; background: var(--faint); }
  .progress .seen { background: var(--quiet); }
  .progress .here { background: var(--ink); box-shadow: 0 0 0 1px var(--ink); }
  .joint { display: grid; grid-template-rows: minmax(120px, 1fr) auto; min-height: 0; overflow: auto; padding-top: 8px; }
  .figure { background: var(--table); position: relative; min-height: 160px; display: grid; }
  .figure svg { width: 100%; height: 100%; }
  .names { position: absolute; inset: 12px 24px; pointer-events: none; display: grid; align-content: space-between; }
  .names span { justify-self: start; background: var(--paper); color: var(--ink); padding: 3px 10px; font-weight: 600; border-radius: 2px; }
  .names small { font-weight: 400; color: var(--quiet); padding-left: 8px; }
  .told { padding: 16px 24px 12px; display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 6px 32px; align-items: start; }
  h1 { font-size: clamp(1.3rem, 2.4vw, 2.1rem); font-weight: 300; letter-spacing: -0.01em; width: fit-content; }
  h1:focus-visible { outline-offset: 3px; box-shadow: none; }
  h1:not(:focus-visible) { outline: none; }
  .verdict { display: flex; gap: 10px; align-items: center; font-size: var(--large); }
  .sentence { font-size: var(--large); line-height: 1.45; max-width: 92ch; grid-column: 1; text-wrap: pretty; }
  .big { font-size: clamp(2rem, 5vw, 3.6rem); font-weight: 250; line-height: 1; text-align: right; white-space: nowrap; grid-row: span 3; grid-column: 2; }
  .big small { display: block; font-size: var(--small); font-weight: 400; color: var(--quiet); padding-top: 4px; }
  .lights { display: flex; flex-wrap: wrap; gap: 6px; padding: 0 24px 10px; }
  .lights button { min-height: 30px; }
  .lights small { color: inherit; opacity: 0.85; }
  .done { grid-column: 1 / -1; display: grid; gap: 3px; border-left: 4px solid var(--ink); padding-left: 12px; }
  footer { display: flex; flex-wrap: wrap; gap: 6px 8px; padding: 10px 24px; border-top: 1px solid var(--line); background: var(--raised); align-items: center; }
  footer .gap { flex: 1; }
  footer .note { width: min(100%, 720px); gap: 8px; }
  kbd { font: inherit; font-size: var(--small); font-weight: 600; border: 1px solid currentColor; border-radius: 2px; padding: 0 5px; min-width: 20px; text-align: center; }
  .ending { overflow: auto; padding: 8px 24px 24px; display: grid; gap: 16px; align-content: start; }
  .ending h1 { font-size: 2.4rem; }
  .ending .actions { display: flex; gap: 8px; flex-wrap: wrap; }
  .wrap { overflow-x: auto; }
  table { border-collapse: collapse; width: 100%; }
  caption { text-align: left; font-weight: 600; padding: 6px 0; }
  th, td { text-align: left; padding: 7px 16px 7px 0; border-bottom: 1px solid var(--faint); vertical-align: baseline; }
  thead th { color: var(--quiet); font-size: var(--small); border-bottom: 1px solid var(--line); }
  .number { text-align: right; white-space: nowrap; }
  .empty { place-content: center; display: grid; height: 100%; gap: 8px; padding: 24px; color: var(--table-ink); }
  .empty b, .empty h1 { font-size: var(--huge); font-weight: 300; }
  @media (max-width: 700px) {
    .bar, .lights, footer, .told, .ending, .progress { padding-left: 16px; padding-right: 16px; }
    .told { grid-template-columns: minmax(0, 1fr); }
    .big { grid-column: 1; grid-row: auto; text-align: left; }
    .bar .light { margin-left: 0; }
    .empty { height: auto; min-height: calc(100dvh - 152px); }
    footer kbd, footer .gap { display: none; } .bar { gap: 8px 12px; } .bar :last-child { margin-left: auto; }
  }
`;
