import { css } from 'lit';

export const styles = css`
  :host { display: block; background: var(--paper); border-bottom: 1px solid var(--line); }
  header { display: flex; align-items: center; gap: 16px; min-height: var(--header); padding: 6px 16px; }
  .mark { min-width: 28px; justify-content: center; display: flex; align-items: center; gap: 9px; text-decoration: none; font-weight: 650; font-size: 1.1875rem; letter-spacing: -0.01em; min-height: 28px; }
  .mark svg { width: 20px; height: 20px; }
  .cabin { min-width: 0; border-left: 1px solid var(--faint); padding-left: 16px; line-height: 1.2; flex: 1; }
  .cabin .name { font-weight: 600; display: block; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
  .cabin .about { font-size: var(--tiny); color: var(--quiet); display: block; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
  .spring { flex: 1; }
  adjoin-light-picker { flex: none; }
  .tools { display: flex; gap: 4px; }
  .tools button { min-height: 40px; }
  .scheme { min-width: 40px; padding: 0; }
  .scheme svg { width: 18px; height: 18px; }
  @media (max-width: 760px) {
    header { flex-wrap: wrap; gap: 6px 8px; padding: 6px 8px; }
    .mark:has(+ .cabin) span { position: absolute; clip-path: inset(50%); }
    .cabin { padding-left: 8px; border: 0; }
    adjoin-light-picker { order: 3; flex: 1 1 100%; min-width: 0; }
    .tools button { min-height: 32px; }
    .scheme { min-width: 32px; }
  }
  @media print { :host { display: none; } }
`;
