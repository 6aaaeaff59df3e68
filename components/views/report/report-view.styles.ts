import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: 300px minmax(0, 1fr); height: 100%; min-height: 0; background: var(--paper); }
  aside { overflow: auto; border-right: 1px solid var(--line); padding: 20px 20px 24px 24px; display: grid; gap: 18px; align-content: start; }
  h1 { font-size: var(--huge); letter-spacing: -0.015em; }
  h2 { font-size: var(--body); padding-bottom: 4px; }
  .quiet { color: var(--quiet); font-size: var(--small); }
  .actions { display: grid; grid-template-columns: repeat(3, minmax(0, 1fr)); gap: 8px; }
  .actions .strong { grid-column: 1 / -1; min-height: 34px; }
  fieldset { border: 0; padding: 0; margin: 0; min-width: 0; }
  legend { font-weight: 600; padding: 0 0 4px; }
  .sections label { display: flex; align-items: center; gap: 4px; min-height: 26px; cursor: pointer; }
  .sections label:hover { background: var(--raised); }
  .against { display: grid; gap: 8px; }
  .other { display: flex; gap: 8px; align-items: center; justify-content: space-between; border-left: 3px solid var(--ink); padding-left: 10px; min-width: 0; }
  .other span { overflow-wrap: anywhere; }
  .faults { border-left: 6px double var(--clashes); padding-left: 12px; display: grid; gap: 6px; overflow-wrap: anywhere; }
  .faults b { color: var(--clashes); }
  .page { position: relative; min-height: 0; display: grid; background: var(--table); }
  .whole { grid-column: 1 / -1; }
  .working { position: absolute; inset: 16px auto auto 50%; translate: -50% 0; z-index: 1; display: flex; gap: 14px; align-items: center; padding: 8px 8px 8px 16px; background: var(--paper); border: 1px solid var(--line); border-radius: 4px; box-shadow: 0 8px 24px var(--shade); white-space: nowrap; }
  .empty { place-self: center; color: var(--table-ink); max-width: 44ch; padding: 24px; display: grid; gap: 8px; }
  .empty b { font-size: var(--large); }
  @media (max-width: 860px) {
    :host { grid-template-columns: minmax(0, 1fr); height: auto; }
    aside { border-right: 0; border-bottom: 1px solid var(--line); padding: 16px; }
    .sections .list { display: grid; grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 0 12px; }
    .page { height: 85dvh; }
  }
`;
