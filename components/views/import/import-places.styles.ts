import { css } from 'lit';

export const styles = css`
  :host { display: block; }
  h3 { font-size: var(--body); padding-bottom: 4px; margin-bottom: 8px; border-bottom: 1px solid var(--line); }
  h3.parts { margin-top: 20px; }
  .quiet { color: var(--quiet); font-size: var(--small); }
  .wide { overflow-x: auto; position: relative; }
  table { border-collapse: collapse; width: 100%; min-width: 760px; font-size: var(--small); }
  thead th { text-align: left; font-weight: 400; color: var(--quiet); padding: 2px 12px 4px 0; }
  tbody th { text-align: left; font-weight: 400; padding: 4px 12px 4px 0; border-top: 1px solid var(--faint); overflow-wrap: anywhere; min-width: 120px; }
  tbody th .own { font-weight: 600; }
  td { padding: 4px 12px 4px 0; border-top: 1px solid var(--faint); }
  tr.open th { border-left: 6px dashed var(--open); padding-left: 8px; }
  tr.out th { text-decoration: line-through; color: var(--quiet); }
  .number { text-align: right; } thead th:nth-child(2) { text-align: right; }
  .fixed { color: var(--quiet); }
  td .pick { width: 100%; min-width: 150px; max-width: 280px; }
  fieldset .pick { width: 100%; }
  input[type='text'] { min-width: 100px; } input.stage { min-width: 80px; }
  input:disabled, select:disabled { border-style: dashed; color: var(--quiet); cursor: default; }
  fieldset { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(180px, 100%), 1fr)); gap: 8px 16px; border: 1px solid var(--faint); border-radius: var(--radius); padding: 6px 12px 12px; margin: 0 0 8px; }
  legend { font-weight: 600; padding: 0 4px; }
`;
