import { css } from 'lit';

export const styles = css`
  :host { display: block; background: var(--paper); }
  .head { position: sticky; top: 0; z-index: 2; background: var(--paper); border-bottom: 1px solid var(--line); padding: 12px 16px 0; }
  .summary { font-size: var(--small); color: var(--quiet); text-wrap: pretty; margin-bottom: 10px; }
  .summary b { color: var(--ink); font-weight: 600; }
  .scale { display: grid; grid-template-columns: 148px minmax(0, 1fr) 92px; gap: 12px; font-size: var(--tiny); color: var(--quiet); padding: 8px 0 4px; }
  .scale .ends { display: flex; justify-content: space-between; position: relative; }
  .scale .ends b { position: absolute; left: 50%; transform: translateX(-50%); font-weight: 600; color: var(--ink); }
  .scale .count { text-align: right; white-space: nowrap; }
  .nothing { padding: 48px 24px; text-align: center; display: grid; gap: 12px; justify-items: center; }
  .teach { justify-items: start; text-align: left; max-width: 56ch; margin: 0 auto; text-wrap: pretty; } .teach h2 { font-size: var(--large); }
  ol { display: flow-root; }
  .printed { display: none; padding: 16px; }
  .keys { padding: 12px 16px 32px; font-size: var(--tiny); color: var(--quiet); }
  @media print { .printed { display: block; } .keys { display: none; } }
  @media (max-width: 760px) {
    .head { position: static; }
    .scale { grid-template-columns: minmax(0, 1fr) 84px; }
    .scale .count { display: none; }
    .keys { display: none; }
  }
`;
