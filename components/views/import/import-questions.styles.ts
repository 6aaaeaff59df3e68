import { css } from 'lit';

export const styles = css`
  :host { display: block; }
  section { border-left: 6px solid var(--line); padding: 4px 0 4px 16px; }
  section.open { border-left: 6px dashed var(--open); }
  h3 { font-size: var(--body); margin-bottom: 8px; }
  .open h3 { color: var(--open); }
  .remembered { color: var(--quiet); font-size: var(--small); margin: -4px 0 8px; }
  .grid { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(320px, 100%), 1fr)); gap: 12px 24px; align-items: end; }
  .field .label { color: var(--ink); text-wrap: pretty; }
  .field .unit { color: var(--quiet); opacity: 1; }
  .with { display: grid; grid-template-columns: minmax(0, 1fr); gap: 6px; }
  .with:has(.pick) { grid-template-columns: minmax(0, 1fr) minmax(0, 0.8fr); }
`;
