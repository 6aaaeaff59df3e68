import { css } from 'lit';

export const styles = css`
  form { margin-top: 8vh; width: min(560px, calc(100vw - 24px)); display: grid; grid-template-rows: auto auto auto minmax(0, 1fr) auto; max-height: 84vh; }
  h2 { padding: 16px 20px 4px; font-size: var(--large); }
  .fields { display: grid; grid-template-columns: repeat(auto-fit, minmax(200px, 1fr)); gap: 12px 16px; padding: 12px 20px 20px; overflow: auto; grid-row: 4; }
  .about { grid-row: 2; padding: 0 20px; color: var(--quiet); }
  .field.text, .field.names, .field.structure, .field.points, .field.references { grid-column: 1 / -1; }
  .field.structure textarea, .field.points textarea { font-family: ui-monospace, monospace; font-size: var(--small); }
  .faults { grid-row: 3; margin: 4px 20px; padding: 8px 12px; border-left: 4px solid var(--clashes); background: var(--raised); font-size: var(--small); }
  .foot { grid-row: 5; display: flex; justify-content: flex-end; gap: 8px; padding: 12px 20px; border-top: 1px solid var(--faint); }
`;
