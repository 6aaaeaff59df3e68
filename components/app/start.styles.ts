import { css } from 'lit';

export const styles = css`
  :host { --start-bar: light-dark(#d0d0d0, #8f8f8f); display: grid; min-height: 100%; background: var(--table); color: var(--table-ink); align-content: center; }
  .sheet { width: min(1080px, 100%); margin: 0 auto; padding: 40px 24px; display: grid; grid-template-columns: 5fr 6fr; gap: 40px 64px; align-items: center; }
  h1 { font-size: clamp(1.75rem, 3.2vw, 2.5rem); font-weight: 600; letter-spacing: -0.015em; line-height: 1.1; }
  .lead { font-size: 1.0625rem; line-height: 1.45; margin-top: 16px; max-width: 50ch; }
  .ways { margin-top: 28px; display: grid; gap: 8px; }
  .way {
    display: grid; grid-template-columns: 1fr auto; align-items: baseline; gap: 0 16px; padding: 10px 14px; text-decoration: none;
    background: var(--paper); color: var(--ink); border: 1px solid transparent; border-radius: var(--radius); text-align: left; min-height: 0; line-height: 1.3;
  }
  .way:hover { background: var(--field); border-color: var(--ink); }
  .way b { font-weight: 600; }
  .way span { color: var(--quiet); font-size: var(--small); }
  .way.first { background: var(--ink); color: var(--paper); }
  .way.first span { color: inherit; }
  .way.first:hover { background: var(--quiet); }
  .drop { font-size: var(--small); margin-top: 12px; }
  .lesson { display: grid; gap: 20px; }
  .lesson li { display: grid; grid-template-columns: 84px 1fr; gap: 4px 16px; align-items: start; }
  .lesson .verdict { font-weight: 600; line-height: 1.2; padding-top: 10px; text-align: right; }
  .lesson p { grid-column: 2; font-size: var(--small); max-width: none; }
  .lesson svg { width: 100%; height: auto; }
  figcaption { font-size: var(--small); margin-top: 20px; padding-left: 100px; max-width: none; }
  .caution { grid-column: 1 / -1; font-size: var(--small); border-top: 1px solid var(--table-ink); padding-top: 12px; max-width: none; }
  @media (max-width: 900px) {
    :host { align-content: start; }
    .sheet { grid-template-columns: 1fr; padding: 24px 16px; gap: 32px; }
    .lesson li { grid-template-columns: 1fr; }
    .lesson p { grid-column: 1; }
    .lesson .verdict { text-align: left; padding: 0; }
    figcaption { padding: 0; }
  }
  .kept { border: 1px solid var(--line); background: var(--raised); padding: 12px 16px; border-radius: 4px; margin-bottom: 16px; }
  .kept h2 { font-size: var(--body); margin-bottom: 6px; }
  .kept li { display: flex; flex-wrap: wrap; gap: 6px 8px; align-items: center; padding: 4px 0; }
  .kept li > span { flex: 1 1 220px; }
  .kept .quiet { color: var(--quiet); font-size: var(--small); }
`;
