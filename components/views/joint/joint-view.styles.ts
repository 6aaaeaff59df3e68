import { css } from 'lit';

export const styles = css`
  :host { display: block; background: var(--paper); }
  nav { display: flex; align-items: center; gap: 8px; padding: 10px 24px; border-bottom: 1px solid var(--faint); font-size: var(--small); }
  nav .place { color: var(--quiet); flex: 1; text-align: right; }
  nav .button[aria-disabled='true'] { color: var(--quiet); border-style: dashed; pointer-events: none; }
  .lead { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 8px 48px; padding: 20px 24px; align-items: end; }
  h1 { font-size: var(--huge); letter-spacing: -0.015em; width: fit-content; margin-top: 6px; }
  h1:focus-visible { outline-offset: 3px; box-shadow: none; }
  h1:not(:focus-visible) { outline: none; }
  h1 span { font-weight: 400; color: var(--quiet); }
  .lead .sentence { font-size: 1.0625rem; margin-top: 8px; max-width: 96ch; text-wrap: pretty; }
  .lead .verdict { display: flex; align-items: center; gap: 10px; font-size: var(--large); }
  .keys { display: flex; gap: 32px; text-align: right; }
  .keys dt { font-size: var(--tiny); color: var(--quiet); }
  .keys dd { font-size: var(--huge); font-weight: 600; letter-spacing: -0.01em; line-height: 1.1; white-space: nowrap; }
  .body { padding: 28px 24px 64px; display: grid; grid-template-columns: minmax(0, 1fr); gap: 40px; max-width: 1440px; }
  .terms { font-size: var(--small); color: var(--quiet); margin: -6px 0 12px; }
  .tried { font-size: var(--small); color: var(--quiet); }
  .trial {
    position: sticky; bottom: 0; z-index: 3; display: flex; flex-wrap: wrap; gap: 6px 16px; align-items: center; justify-content: space-between; padding: 8px 24px; background: var(--raised);
    border-top: 1px solid var(--line); border-left: 6px double var(--ink);
  }
  h3 { font-size: var(--body); margin: 20px 0 8px; }
  h2 { font-size: var(--large); padding-bottom: 8px; margin-bottom: 16px; border-bottom: 1px solid var(--line); }
  @media (max-width: 760px) {
    nav { padding: 8px 12px; } nav .place { order: 1; } nav .how { display: none; }
    .lead { grid-template-columns: minmax(0, 1fr); padding: 12px; }
    h1 { font-size: 1.375rem; }
    .keys { text-align: left; gap: 24px; } .keys dd { font-size: 1.375rem; }
    .body { padding: 20px 12px 48px; gap: 32px; }
  }
`;
