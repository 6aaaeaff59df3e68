import { css } from 'lit';

export const styles = css`
  .menu {
    position: fixed; margin: 0; inset: auto; padding: 4px; border: 1px solid var(--line); border-radius: 4px; background: var(--paper); color: var(--ink);
    box-shadow: 0 8px 24px var(--shade); min-width: 220px; max-width: calc(100vw - 16px); max-height: 80vh; overflow: auto;
  }
  button { display: flex; justify-content: space-between; gap: 24px; width: 100%; text-align: left; padding: 4px 10px; }
  button:focus-visible { outline-offset: -2px; }
  kbd { font: inherit; font-size: var(--tiny); color: var(--quiet); }
  hr { border: 0; border-top: 1px solid var(--faint); margin: 4px 0; }
`;
