import { css } from 'lit';

export const styles = css`
  .sheet { margin-top: 10vh; width: min(640px, calc(100vw - 32px)); display: flex; flex-direction: column; max-height: 72vh; overflow: hidden; }
  input { height: 48px; padding: 0 16px; border: 0; border-bottom: 1px solid var(--line); background: var(--field); font-size: var(--large); flex: none; }
  input::placeholder { color: var(--quiet); opacity: 1; }
  input:focus-visible { outline-offset: -3px; box-shadow: none; }
  ul { overflow: auto; padding: 6px; }
  li { display: flex; align-items: baseline; gap: 12px; padding: 6px 10px; border-radius: var(--radius); cursor: pointer; min-height: 32px; }
  li[aria-selected='true'] { background: var(--ink); color: var(--paper); }
  li[aria-selected='true'] .why { color: inherit; }
  li[aria-disabled='true'] { cursor: default; }
  li[aria-disabled='true'] .title { color: var(--quiet); }
  li[aria-selected='true'][aria-disabled='true'] { background: var(--faint); color: var(--ink); }
  .title { flex: none; max-width: 60%; }
  .why { flex: 1; color: var(--quiet); font-size: var(--small); text-align: right; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
  kbd { font: inherit; font-size: var(--tiny); border: 1px solid currentColor; border-radius: 2px; padding: 0 5px; flex: none; }
  .none { padding: 16px; color: var(--quiet); }
  @media (forced-colors: active) { li[aria-selected='true'] { forced-color-adjust: none; background: Highlight; color: HighlightText; } }
`;
