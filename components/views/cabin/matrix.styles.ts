import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-rows: minmax(0, 1fr) auto; min-height: 0; background: var(--table); color: var(--table-ink); }
  .scroll { overflow: auto; min-height: 0; position: relative; }
  .room { position: relative; }
  .grid { position: sticky; left: 0; top: 0; }
  .grid:focus { outline: none; box-shadow: none; }
  text { font-size: 11.5px; fill: var(--table-ink); }
  text.here { font-weight: 700; }
  .grid > svg { pointer-events: none; }
  .lattice { fill: none; stroke: color-mix(in srgb, var(--table-ink) 39%, transparent); stroke-width: 0.5; }
  .sample { forced-color-adjust: none; }
  .ring { fill: none; stroke: var(--table-ink); stroke-width: 1; stroke-dasharray: 2 2; }
  .grid:focus-visible .ring { stroke-width: 3; stroke-dasharray: none; }
  .how { font-size: var(--small); padding: 6px 20px; }
  @media (max-width: 760px) { :host { grid-template-rows: 380px auto; } .how { padding: 6px 12px; } }
`;
