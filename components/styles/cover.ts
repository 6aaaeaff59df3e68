import { css } from 'lit';

/** A dialog of `CoveringDialog`: it covers the page, and what it says lies on a sheet. Where it has to be modal the browser's own backdrop is not seen. */
export const cover = css`
  dialog { position: fixed; inset: 0; z-index: 30; width: 100%; height: 100%; max-width: none; max-height: none; margin: 0; padding: 0; border: 0; background: var(--shade); color: var(--ink); overflow: hidden; }
  dialog::backdrop { background: none; }
  .sheet { margin-inline: auto; border: 1px solid var(--line); border-radius: 6px; background: var(--paper); box-shadow: 0 16px 48px var(--shade); }
`;
