import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(560px, 100%), 1fr)); gap: 28px 48px; padding: 16px 24px 48px; align-content: start; align-items: start; }
  h2 { display: flex; gap: 10px; align-items: center; font-size: var(--large); padding-bottom: 6px; border-bottom: 1px solid var(--line); min-height: 37px; }
  h2 .quiet { flex: 1; font-weight: 400; }
  h2 button { font-weight: 400; font-size: var(--small); }
  .quiet { color: var(--quiet); font-size: var(--small); } p.quiet { padding: 6px 0; max-width: 84ch; }
  .none { color: var(--quiet); padding: 6px 0; }
  li { border-bottom: 1px solid var(--faint); } li li { border-bottom: 0; border-top: 1px solid var(--faint); }
  li ul { padding-left: 20px; }
  .line { display: flex; gap: 10px; align-items: center; padding: 4px 0; min-height: 36px; }
  .line svg { flex: none; color: var(--quiet); }
  .what { flex: 1; min-width: 0; overflow-wrap: anywhere; }
  .does { display: flex; gap: 4px; flex: none; flex-wrap: wrap; justify-content: flex-end; } .does button { font-size: var(--small); padding: 1px 8px; min-height: 26px; }
  button:disabled { color: var(--quiet); border-style: dashed; cursor: default; }
  @media (max-width: 760px) { :host { padding: 12px; } .line { flex-wrap: wrap; } .what { flex-basis: 100%; } h2 { flex-wrap: wrap; } }
`;
