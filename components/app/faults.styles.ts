import { css } from 'lit';

export const styles = css`
  dialog {
    width: min(860px, calc(100vw - 32px)); max-height: calc(100vh - 64px); padding: 0; border: 1px solid var(--line); border-radius: 4px;
    background: var(--paper); color: var(--ink); box-shadow: 0 20px 60px var(--shade); overflow: hidden;
  }
  dialog[open] { display: flex; flex-direction: column; }
  dialog::backdrop { background: var(--shade); }
  .head { padding: 20px 24px 16px; border-bottom: 1px solid var(--faint); }
  h2 { font-size: var(--large); overflow-wrap: anywhere; }
  .head p { color: var(--quiet); margin-top: 4px; max-width: 70ch; }
  .list { overflow: auto; padding: 0 24px; }
  table { border-collapse: collapse; width: 100%; }
  th { text-align: left; font-size: var(--tiny); font-weight: 600; color: var(--quiet); padding: 8px 16px 4px 0; position: sticky; top: 0; background: var(--paper); }
  td { vertical-align: top; padding: 8px 16px 8px 0; border-top: 1px solid var(--faint); overflow-wrap: anywhere; }
  .place { width: 38%; }
  .path { font-weight: 600; display: block; }
  .at { color: var(--quiet); font-size: var(--small); display: block; }
  dl { display: grid; grid-template-columns: auto 1fr; gap: 0 8px; }
  dt { color: var(--quiet); }
  .hint { margin-top: 4px; }
  .severity { font-weight: 600; }
  .severity.error { color: var(--clashes); }
  .severity.warning { color: var(--open); }
  .foot { display: flex; gap: 8px; justify-content: flex-end; align-items: center; padding: 12px 24px; border-top: 1px solid var(--faint); }
  .foot span { flex: 1; color: var(--quiet); font-size: var(--small); }
  @media (max-width: 760px) {
    .head, .foot, .list { padding-left: 16px; padding-right: 16px; }
    thead { display: none; }
    tr { display: block; border-top: 1px solid var(--faint); padding: 8px 0; }
    td { display: block; border: 0; padding: 2px 0; width: auto; }
    .foot span { display: none; }
  }
`;
