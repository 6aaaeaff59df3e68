import { css } from 'lit';

export const styles = css`
  :host { display: block; }
  .sides { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 280px), 1fr)); gap: 20px 40px; }
  fieldset { border: 0; margin: 0; padding: 0; min-width: 0; display: grid; align-content: start; gap: 4px; }
  legend { padding: 0; font-weight: 600; margin-bottom: 6px; }
  legend span, .quiet, .unit { color: var(--quiet); font-weight: 400; font-size: var(--small); }
  .slider { display: grid; grid-template-columns: 64px minmax(0, 1fr) 76px 24px; gap: 8px; align-items: center; min-height: 32px; }
  .slider input[type='text'] { text-align: right; }
  .slider.set label { font-weight: 600; }
  .slider.set input[type='text'] { border-color: var(--ink); font-weight: 600; }
  .do { display: flex; flex-wrap: wrap; gap: 8px; margin-top: 10px; }
  .outcome { display: grid; grid-template-columns: minmax(0, 3fr) minmax(0, 2fr); gap: 20px 40px; margin-top: 24px; align-items: start; }
  .outcome p { font-size: var(--small); text-wrap: pretty; max-width: 64ch; }
  h3 { font-size: var(--body); margin-bottom: 4px; }
  table { border-collapse: collapse; width: 100%; }
  th, td { text-align: left; padding: 5px 12px 5px 0; border-top: 1px solid var(--faint); font-weight: 400; vertical-align: middle; white-space: nowrap; }
  thead th { border-top: 0; font-size: var(--small); color: var(--quiet); padding-top: 0; }
  tbody th::first-letter { text-transform: uppercase; }
  .whole th, .whole td { font-weight: 600; }
  td.figure, th.figure { padding-right: 0; width: 168px; }
  li { font-size: var(--small); padding: 3px 0; }
  li a { margin-right: 6px; }
  @media (max-width: 1000px) { .outcome { grid-template-columns: minmax(0, 1fr); } }
  @media (max-width: 560px) { td.figure, th.figure { display: none; } th, td { white-space: normal; } }
`;
