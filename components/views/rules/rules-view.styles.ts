import { css } from 'lit';

export const styles = css`
  :host { display: block; background: var(--paper); min-height: 100%; container-type: inline-size; }
  header { display: grid; grid-template-columns: minmax(0, 1fr) auto; gap: 8px 32px; align-items: end; padding: 20px 24px 0; }
  h1 { font-size: var(--huge); letter-spacing: -0.015em; } header .book { font-size: 1.0625rem; } header .note { color: var(--quiet); font-size: var(--small); max-width: 170ch; text-wrap: pretty; }
  .actions { display: flex; flex-wrap: wrap; gap: 6px; justify-content: flex-end; }
  nav { grid-column: 1 / -1; display: flex; flex-wrap: wrap; gap: 4px 20px; border-bottom: 1px solid var(--line); }
  nav button { border: 0; border-bottom: 3px solid transparent; border-radius: 0; background: none; padding: 6px 2px 5px; min-height: 34px; } nav button:hover { border-color: var(--faint); background: none; }
  nav button[aria-pressed='true'] { background: none; color: var(--ink); border-bottom-color: var(--ink); font-weight: 600; }
  .content { padding: 16px 24px 64px; display: grid; gap: 16px; grid-template-columns: minmax(0, 1fr); }
  .filters { display: flex; flex-wrap: wrap; gap: 8px 12px; align-items: end; } .filters .field { min-width: 116px; } .filters .views { margin-left: auto; display: flex; gap: 6px; }
  .filters > .small { min-height: 28px; line-height: 28px; } .about { font-weight: 600; padding-bottom: 6px; }
  .check { display: flex; gap: 4px; align-items: center; min-height: 28px; font-size: var(--small); }
  .two { display: grid; grid-template-columns: minmax(0, 1.75fr) minmax(400px, 1fr); gap: 24px 32px; align-items: start; }
  .two > .side { border-left: 1px solid var(--line); padding-left: 28px; min-width: 0; } .two > .stay { position: sticky; top: 12px; min-width: 0; }
  .quiet { color: var(--quiet); } .small { font-size: var(--small); } h2 { font-size: 1.25rem; letter-spacing: -0.01em; }
  table { border-collapse: collapse; width: 100%; } th, td { text-align: left; font-weight: 400; padding: 5px 12px 5px 0; border-bottom: 1px solid var(--faint); vertical-align: baseline; } thead th { color: var(--quiet); font-size: var(--small); border-color: var(--line); vertical-align: bottom; } .n { text-align: right; font-variant-numeric: tabular-nums; }
  tr.here th, tr.here td { background: var(--raised); } th button { min-height: 26px; } th button.bare[aria-pressed='true'] { background: none; color: var(--ink); font-weight: 600; } caption { text-align: left; font-weight: 600; padding-bottom: 6px; }
  .scroll { overflow-x: auto; position: relative; } .side { display: grid; gap: 16px; align-content: start; }
  .teach { display: grid; gap: 10px; max-width: 64ch; padding: 12px 0; } .teach .ask { font-size: var(--huge); font-weight: 300; line-height: 1.15; letter-spacing: -0.015em; text-wrap: balance; }
  .begin { display: flex; flex-wrap: wrap; gap: 8px 12px; align-items: end; padding: 12px; border: 1px dashed var(--line); grid-column: 1 / -1; } .begin .field { min-width: 180px; }
  .two.even { grid-template-columns: minmax(0, 1fr) minmax(0, 1fr); } .two > .side.first { border: 0; padding: 0; }
  th button { text-align: left; justify-content: flex-start; }
  @media (min-width: 761px) { [aria-labelledby='classes'] thead th:first-child { padding-left: 11px; } }
  @media (max-width: 760px) { .stacked th button { padding-left: 0; } }
  @media (forced-colors: active) { nav button { border-bottom-color: Canvas; } nav button[aria-pressed='true'] { forced-color-adjust: auto; background: Canvas; color: CanvasText; border-bottom-color: Highlight; } th button.bare[aria-pressed='true'] { forced-color-adjust: auto; color: CanvasText; } }
  @container (max-width: 1080px) { .two, .two.even { grid-template-columns: minmax(0, 1fr); } .two > .side { border-left: 0; padding-left: 0; border-top: 1px solid var(--line); padding-top: 16px; } .two > .stay { position: static; } }
  @container (max-width: 620px) { header { grid-template-columns: minmax(0, 1fr); padding: 12px 12px 0; } .actions { justify-content: flex-start; } .content { padding: 12px 12px 48px; } h1 { font-size: 1.375rem; } .filters .views { margin-left: 0; } .filters .field { min-width: 0; flex: 1 1 30%; } }
`;
