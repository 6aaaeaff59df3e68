import { css } from 'lit';

export const styles = css`
  :host { display: block; background: var(--paper); border-bottom: 1px solid var(--line); }
  header { display: flex; align-items: center; gap: 16px; min-height: var(--header); padding: 6px 16px; }
  .mark { min-width: 28px; justify-content: center; display: flex; align-items: center; gap: 9px; text-decoration: none; font-weight: 650; font-size: 1.1875rem; letter-spacing: -0.01em; min-height: 28px; }
  .mark svg { width: 20px; height: 20px; }
  .cabin { min-width: 0; border-left: 1px solid var(--faint); padding-left: 16px; line-height: 1.2; flex: 1; }
  .cabin .name { font-weight: 600; display: block; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
  .cabin button.name { text-align: left; padding: 0; border: 0; min-height: 24px; margin: -3px 0; max-width: 100%; line-height: 1.2; }
  .cabin button.name:hover { background: none; text-decoration: underline; text-underline-offset: 3px; text-decoration-thickness: 1px; }
  .cabin .about { font-size: var(--tiny); color: var(--quiet); display: block; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
  .spring { flex: 1; }
  adjoin-light-picker { flex: none; }
  .tools { display: flex; gap: 4px; }
  .tools button { min-height: 40px; }
  .icon { min-width: 40px; padding: 0; }
  .icon svg { width: 18px; height: 18px; }
  .cabin .about b { color: var(--ink); }
  nav { border-top: 1px solid var(--faint); position: relative; }
  #places { display: flex; flex-wrap: wrap; gap: 2px; padding: 0 12px; } .now { display: none; }
  nav a {
    flex: none; padding: 6px 10px 5px; min-height: 32px; text-decoration: none; color: var(--quiet); border-bottom: 3px solid transparent;
  }
  nav a:hover { color: var(--ink); border-bottom-color: var(--faint); }
  @media (forced-colors: active) { nav a { border-bottom-color: Canvas; } .now[aria-expanded='true'] { forced-color-adjust: auto; background: Canvas; color: CanvasText; } }
  nav a[aria-current] { color: var(--ink); font-weight: 600; border-bottom-color: var(--ink); }
  nav a.first { margin-left: 14px; position: relative; }
  nav a.first::before { content: ''; position: absolute; left: -8px; top: 9px; bottom: 8px; border-left: 1px solid var(--faint); }
  nav a:focus-visible { outline-offset: -3px; box-shadow: none; }
  @media (max-width: 920px) {
    header { flex-wrap: wrap; gap: 6px 8px; padding: 6px 8px; }
    .mark:has(+ .cabin) span { position: absolute; clip-path: inset(50%); }
    .cabin { padding-left: 8px; border: 0; }
    adjoin-light-picker { order: 3; flex: 1 1 100%; min-width: 0; }
    .tools button { min-height: 32px; }
    .icon { min-width: 32px; }
  }
  @media (max-width: 920px) {
    .now { display: flex; width: 100%; justify-content: space-between; min-height: 36px; padding: 4px 20px 4px 16px; border: 0; border-radius: 0; background: none; font-weight: 600; }
    .now[aria-expanded='true'] { background: none; color: var(--ink); }
    .now::after { content: ''; width: 7px; height: 7px; border: solid currentColor; border-width: 0 1.5px 1.5px 0; rotate: 45deg; translate: 0 -2px; } .now[aria-expanded='true']::after { rotate: 225deg; translate: 0 2px; }
    #places { display: none; }
    #places.unfolded { display: grid; grid-template-columns: repeat(3, minmax(0, 1fr)); gap: 0; position: absolute; inset: 100% 0 auto; z-index: 1; padding: 0 0 8px; background: var(--paper); border-bottom: 1px solid var(--line); box-shadow: 0 12px 24px var(--shade); overflow: hidden; }
    :host(:has(.unfolded)) { position: relative; z-index: 4; }
    nav a { padding: 10px 16px; min-height: 40px; border: 0; } nav a.first { grid-column-start: 1; margin: 0; } nav a.first::before { left: 0; right: auto; top: 0; bottom: auto; width: 100vw; border: 0; border-top: 1px solid var(--faint); }
    nav a[aria-current] { box-shadow: inset 4px 0 var(--ink); }
  }
  @media (max-width: 760px) { .now { padding: 4px 12px 4px 10px; } nav a { padding: 10px; } }
  @media (max-width: 480px) {
    .mark { margin-right: auto; }
    .cabin { order: 2; flex: 1 1 100%; padding: 0 2px; display: flex; align-items: baseline; gap: 6px; }
    .cabin .name { flex: 0 1 auto; min-width: 0; } .cabin .about { flex: 1 1 0; min-width: 0; }
    .spring { display: none; }
  }
  @media print { :host { display: none; } }
`;
