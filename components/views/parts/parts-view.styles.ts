import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: minmax(0, 1fr); grid-template-rows: auto minmax(0, 1fr); height: 100%; min-height: 0; background: var(--paper); }
  header { display: flex; flex-wrap: wrap; gap: 8px; align-items: center; padding: 12px 24px; border-bottom: 1px solid var(--line); }
  h1 { font-size: var(--huge); letter-spacing: -0.015em; margin-right: 16px; }
  nav { display: flex; gap: 8px; flex-wrap: wrap; flex: 1; }
  input[type='search'] { width: 180px; }
  button:disabled { color: var(--quiet); border-style: dashed; cursor: default; }
  adjoin-registers { overflow: auto; min-height: 0; }
  .desk { min-height: 0; display: grid; grid-template-columns: minmax(0, 1fr); grid-template-rows: minmax(0, 1fr); }
  .desk.chosen { grid-template-columns: minmax(360px, 5fr) minmax(0, 7fr); }
  adjoin-part-panel { overflow: auto; min-height: 0; border-left: 1px solid var(--line); }
  .gone { padding: 24px; }
  .teach { align-self: center; justify-self: center; width: min(720px, 100%); padding: 24px; }
  .teach h2 { font-size: var(--huge); letter-spacing: -0.015em; margin-bottom: 24px; }
  .teach li { display: flex; gap: 16px; align-items: center; justify-content: space-between; padding: 14px 0; border-top: 1px solid var(--line); }
  .teach li:last-child { border-bottom: 1px solid var(--line); }
  .teach p { color: var(--quiet); max-width: 56ch; }
  .teach .button, .teach button { flex: none; }
  .teach .tick { color: var(--holds); font-weight: 600; }
  @media (max-width: 1080px) { .desk.chosen { grid-template-columns: minmax(0, 1fr); } adjoin-part-panel { border-left: 0; } }
  @media (max-width: 760px) {
    :host { height: auto; }
    header { padding: 10px 12px; } h1 { font-size: 1.375rem; } nav { flex-basis: 100%; }
    input[type='search'] { flex: 1; min-width: 120px; }
    adjoin-part-panel { overflow: visible; }
    .teach { padding: 16px 12px; } .teach h2 { font-size: 1.375rem; } .teach li { flex-direction: column; align-items: flex-start; gap: 8px; }
  }
`;
