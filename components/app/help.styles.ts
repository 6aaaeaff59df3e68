import { css } from 'lit';

export const styles = css`
  dialog {
    margin: 6vh auto auto; width: min(720px, calc(100vw - 24px)); max-height: 86vh; padding: 0; border: 1px solid var(--line); border-radius: 6px;
    background: var(--paper); color: var(--ink); box-shadow: 0 16px 48px var(--shade); overflow: hidden;
  }
  dialog[open] { display: grid; grid-template-rows: auto minmax(0, 1fr); }
  dialog::backdrop { background: var(--shade); }
  .head { display: flex; justify-content: space-between; align-items: center; padding: 14px 20px; border-bottom: 1px solid var(--faint); }
  h2 { font-size: var(--large); }
  h3 { margin: 20px 0 8px; font-size: var(--body); }
  .body { overflow: auto; padding: 16px 20px 24px; }
  .purpose { font-size: 1.0625rem; text-wrap: pretty; }
  ol { list-style: decimal; padding-left: 22px; margin-top: 10px; display: grid; gap: 4px; }
  dl { display: grid; grid-template-columns: minmax(110px, 160px) 1fr; gap: 8px 20px; }
  dt { font-weight: 600; }
  .keys dt { font-weight: 400; }
  kbd { font: inherit; font-size: var(--small); border: 1px solid var(--line); border-radius: 2px; padding: 1px 6px; }
  @media (max-width: 520px) { dl { grid-template-columns: 1fr; gap: 2px; } dd { margin-bottom: 8px; } }
`;
