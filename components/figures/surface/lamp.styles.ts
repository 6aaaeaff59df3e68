import { css } from 'lit';

export const styles = css`
  :host { display: flex; flex-wrap: wrap; gap: 6px 24px; align-items: center; font-size: var(--small); color: var(--table-ink); }
  label { display: inline-flex; align-items: center; gap: 8px; }
  .words { min-width: 7.5em; }
  input[type='range'] { appearance: none; width: 112px; height: 28px; margin: 0; background: none; cursor: ew-resize; }
  input::-webkit-slider-runnable-track { height: 1px; background: var(--table-ink); }
  input::-moz-range-track { height: 1px; background: var(--table-ink); }
  input::-webkit-slider-thumb {
    appearance: none; width: 12px; height: 20px; margin-top: -10px; border: 1px solid var(--table-ink); border-radius: var(--radius); background: var(--table);
  }
  input::-moz-range-thumb { width: 10px; height: 18px; border: 1px solid var(--table-ink); border-radius: var(--radius); background: var(--table); }
  input:hover::-webkit-slider-thumb, input:active::-webkit-slider-thumb { background: var(--table-ink); }
  input:hover::-moz-range-thumb, input:active::-moz-range-thumb { background: var(--table-ink); }
  button { background: transparent; color: inherit; border-color: var(--table-ink); }
  button:hover { background: var(--table-ink); color: var(--table); }
  button[aria-disabled='true'] { color: var(--table-quiet); border-color: var(--table-quiet); }
  button[aria-disabled='true']:hover { background: transparent; color: var(--table-quiet); }
  @media (max-width: 760px) {
    label { width: 100%; }
    label > span:first-child { width: 44px; }
    input[type='range'] { flex: 1; width: auto; min-width: 0; }
    .words { text-align: right; }
  }
  @media print { :host { display: none; } }
`;
