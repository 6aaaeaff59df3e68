import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 340px), 1fr)); gap: 28px 40px; }
  h3 { font-size: var(--body); margin-bottom: 6px; }
  p, dl, li { font-size: var(--small); text-wrap: pretty; max-width: 72ch; }
  p + p { margin-top: 4px; }
  .quiet { color: var(--quiet); }
  dl { display: grid; grid-template-columns: max-content 1fr; gap: 2px 12px; }
  dt { color: var(--quiet); }
  dd { overflow-wrap: anywhere; }
  li + li { margin-top: 10px; }
  li b { font-weight: 600; }
  .do { display: flex; flex-wrap: wrap; gap: 8px; margin-top: 6px; }
`;
