import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: minmax(0, 1fr); grid-template-rows: auto minmax(0, 1fr); height: 100vh; height: 100dvh; background: var(--paper); }
  main { min-height: 0; overflow: auto; display: flex; flex-direction: column; }
  main:focus-visible { outline-offset: -2px; box-shadow: none; border-radius: 0; }
  main:not(:focus-visible) { outline: none; }
  .view { flex: 1 1 auto; min-height: 0; min-width: 0; isolation: isolate; position: relative; }
  .view > * { height: 100%; }
  /* Nothing here may be inherited: the browser would style all that rests anew on the way back. */
  .view > .resting { content-visibility: hidden; opacity: 0; position: absolute; z-index: -1; top: 0; left: 0; width: 100%; }
  @media print { .view > .resting { display: none; } }
  .notice {
    flex: none; display: flex; gap: 16px; align-items: center; justify-content: space-between; padding: 6px 16px; background: var(--raised); border-bottom: 1px solid var(--line);
    border-left: 6px solid var(--ink);
  }
  .skip { position: fixed; left: 8px; top: 8px; z-index: 10; }
  .skip:not(:focus) { clip-path: inset(50%); pointer-events: none; }
  .drop {
    position: fixed; inset: 0; z-index: 20; display: grid; place-content: center; text-align: center; background: var(--shade); pointer-events: none;
  }
  .drop p { padding: 24px 40px; background: var(--paper); border: 2px dashed var(--ink); font-size: var(--large); font-weight: 600; border-radius: 4px; }
  .wait { position: fixed; inset: auto 0 24px; z-index: 15; display: flex; justify-content: center; pointer-events: none; }
  .wait div {
    pointer-events: auto; display: flex; gap: 16px; align-items: center; padding: 8px 8px 8px 16px; background: var(--paper); border: 1px solid var(--line);
    border-radius: 4px; box-shadow: 0 8px 24px var(--shade); max-width: calc(100vw - 32px);
  }
  .wait .removal { padding-left: 16px; flex-wrap: wrap; gap: 8px; } .wait .removal p { margin-right: 8px; overflow-wrap: anywhere; min-width: 0; }
  .wait svg { flex: none; }
  .wait .count { display: block; font-size: var(--small); color: var(--quiet); font-variant-numeric: tabular-nums; }
  .wait .mover { animation: along 1.4s ease-in-out infinite alternate; }
  @keyframes along { from { transform: translateX(0); } to { transform: translateX(24px); } }
  @media (prefers-reduced-motion: reduce) { .wait .mover { animation: none; } }
  .missing { display: grid; place-content: center; justify-items: start; gap: 12px; min-height: 100%; padding: 24px; background: var(--table); color: var(--table-ink); }
  @media (max-width: 760px) { :host { height: auto; min-height: 100dvh; } main { overflow: visible; } .view > * { height: auto; } }
`;
