import { css } from 'lit';

/** Labelled fields: text, numbers, dates, choices, areas of text. */
export const fields = css`
  .field { display: grid; gap: 3px; align-content: start; min-width: 0; }
  .field .label { font-size: var(--small); color: var(--quiet); }
  .field .unit { font-size: var(--tiny); opacity: 0.9; }
  .field .fault { font-size: var(--small); color: var(--clashes); font-weight: 600; }
  input[type='text'], input[type='number'], input[type='date'], textarea {
    font: inherit; font-variant-numeric: inherit; color: inherit; min-height: 30px; padding: 3px 8px; border: 1px solid var(--line);
    border-radius: var(--radius); background: var(--field); min-width: 0; width: 100%;
  }
  textarea { resize: vertical; line-height: 1.35; }
  input:hover, textarea:hover { border-color: var(--ink); }
  input[type='date']:focus-within { outline: 2px solid var(--focus); outline-offset: 1px; }
  input[list]::-webkit-calendar-picker-indicator { appearance: none; display: block !important; width: 7px; height: 7px; padding: 0; margin: 0 4px 4px 0; background: none; border: solid var(--quiet); border-width: 0 1.5px 1.5px 0; transform: rotate(45deg); cursor: pointer; }
  input::placeholder, textarea::placeholder { color: var(--quiet); opacity: 1; }
  [aria-invalid='true'] { border: 2px solid var(--clashes) !important; }
  input[type='checkbox'], input[type='radio'] {
    appearance: none; width: 18px; height: 18px; margin: 3px; border: 1.5px solid var(--line); background: var(--field); display: inline-grid; place-content: center; flex: none; cursor: pointer;
  }
  input[type='checkbox'] { border-radius: 2px; }
  input[type='radio'] { border-radius: 50%; }
  input[type='checkbox']::before { content: ''; width: 10px; height: 10px; background: var(--field); clip-path: polygon(14% 44%, 0 65%, 50% 100%, 100% 16%, 80% 0, 43% 62%); scale: 0; }
  input[type='checkbox']:checked, input[type='radio']:checked { background: var(--ink); border-color: var(--ink); }
  input[type='checkbox']:checked::before { scale: 1; }
  input[type='radio']::before { content: ''; width: 8px; height: 8px; border-radius: 50%; background: var(--field); scale: 0; }
  input[type='radio']:checked::before { scale: 1; }
  input[type='range'] { appearance: none; height: 24px; background: none; width: 100%; margin: 0; cursor: pointer; min-width: 0; }
  input[type='range']::-webkit-slider-runnable-track { height: 4px; background: var(--faint); border: 1px solid var(--line); border-radius: 2px; }
  input[type='range']::-webkit-slider-thumb { appearance: none; width: 12px; height: 20px; margin-top: -9px; background: var(--ink); border: 1px solid var(--paper); border-radius: 2px; }
  input[type='range']::-moz-range-track { height: 4px; background: var(--faint); border: 1px solid var(--line); border-radius: 2px; }
  input[type='range']::-moz-range-thumb { width: 10px; height: 18px; background: var(--ink); border: 1px solid var(--paper); border-radius: 2px; }
  .pick select { min-height: 30px; }
  @media (forced-colors: active) {
    input[type='checkbox']:checked, input[type='radio']:checked, input[type='range']::-webkit-slider-thumb { forced-color-adjust: none; background: Highlight; }
  }
`;
