import { css } from 'lit';

export const styles = css`
  :host { display: block; }
  li { display: grid; grid-template-columns: 128px 184px minmax(0, 1fr); gap: 2px 20px; padding: 12px 0; border-top: 1px solid var(--faint); align-items: start; }
  li:first-child { border-top: 0; padding-top: 0; }
  .name { font-weight: 600; }
  .name::first-letter { text-transform: uppercase; }
  .standing { color: var(--quiet); font-size: var(--small); }
  .figures { font-size: var(--small); color: var(--quiet); }
  .figures b { color: var(--ink); font-weight: 600; }
  .sentence { text-wrap: pretty; max-width: 96ch; }
  .extra { font-size: var(--small); color: var(--quiet); max-width: 104ch; margin-top: 2px; }
  .caution { padding-left: 10px; border-left: 2px solid var(--line); margin-top: 4px; }
  @media (max-width: 760px) { li { grid-template-columns: 1fr auto; } li > :nth-child(3) { grid-column: 1 / -1; } }
`;
