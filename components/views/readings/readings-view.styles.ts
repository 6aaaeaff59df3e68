import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: minmax(0, 1fr); grid-template-rows: auto minmax(0, 1fr); height: 100%; min-height: 0; background: var(--paper); }
  header { display: flex; flex-wrap: wrap; gap: 8px 24px; align-items: center; padding: 12px 24px; border-bottom: 1px solid var(--line); }
  h1 { font-size: var(--huge); letter-spacing: -0.015em; }
  nav { display: flex; gap: 8px; flex-wrap: wrap; }
  .page { overflow: auto; min-height: 0; }
  .note { padding: 24px; color: var(--quiet); }
  @media (max-width: 760px) { :host { height: auto; } header { padding: 10px 12px; } h1 { font-size: 1.375rem; } .page { overflow: visible; } }
`;

/** What the pages of readings share: sections, plain tables, quiet words. */
export const pageStyles = css`
  :host { display: grid; grid-template-columns: minmax(0, 1fr); gap: 24px; padding: 16px 24px 48px; align-content: start; }
  h2 { font-size: var(--large); padding-bottom: 6px; border-bottom: 1px solid var(--line); margin-bottom: 8px; display: flex; gap: 12px; align-items: center; justify-content: space-between; flex-wrap: wrap; min-height: 37px; }
  h2 button, h2 .button { font-weight: 400; font-size: var(--small); }
  h3 { font-size: var(--body); margin: 14px 0 4px; }
  .lead { max-width: 92ch; text-wrap: pretty; }
  .quiet { color: var(--quiet); font-size: var(--small); }
  .wide { overflow-x: auto; position: relative; }
  svg { max-width: 100%; }
  table { border-collapse: collapse; width: 100%; }
  th { text-align: left; font-weight: 400; padding: 3px 16px 3px 0; vertical-align: bottom; }
  thead th { color: var(--quiet); font-size: var(--small); border-bottom: 1px solid var(--line); }
  tbody td, tbody th { border-bottom: 1px solid var(--faint); padding: 4px 16px 4px 0; vertical-align: middle; }
  .number, thead th.number { text-align: right; white-space: nowrap; }
  .lacking { color: var(--open); font-weight: 600; }
  .warns { color: var(--clashes); font-weight: 600; }
  .fine { color: var(--holds); font-weight: 600; }
  button:disabled { color: var(--quiet); border-style: dashed; cursor: default; }
  @media (max-width: 760px) { :host { padding: 12px; } }
`;
