import { css } from 'lit';

export const styles = css`
  :host { display: block; min-width: 0; container-type: inline-size; }
  .scroll { overflow-x: auto; position: relative; }
  .grid { border-collapse: separate; border-spacing: 2px; width: 100%; table-layout: fixed; }
  .grid th { font-weight: 400; font-size: var(--small); color: var(--ink); text-align: left; padding: 0 6px 0 0; vertical-align: middle; overflow-wrap: anywhere; line-height: 1.15; }
  .grid thead th { vertical-align: bottom; padding: 0 2px 4px; font-size: var(--tiny); } .grid thead td { width: 92px; height: auto; }
  .grid td { padding: 0; height: 58px; }
  .on { font-weight: 600 !important; }
  .cell { width: 100%; height: 100%; min-height: 56px; display: grid; grid-template-rows: auto auto 1fr; align-content: start; justify-content: stretch; justify-items: start; gap: 0; padding: 4px 6px 3px; border: 1px solid var(--faint); border-radius: 2px; background: none; text-align: left; line-height: 1.15; overflow: hidden; position: relative; }
  .cell.meets { background: var(--raised); border-color: var(--line); }
  .cell .top { display: flex; width: 100%; justify-content: space-between; gap: 4px; align-items: baseline; }
  .cell b { font-weight: 400; color: var(--quiet); } .cell.meets b { font-weight: 600; color: var(--ink); }
  .cell .count { font-size: var(--tiny); } .cell .by { font-size: 0.6875rem; color: var(--quiet); max-width: 100%; overflow: hidden; text-overflow: ellipsis; white-space: nowrap; }
  .cell .by.rule { color: var(--ink); font-weight: 600; white-space: normal; overflow-wrap: anywhere; display: -webkit-box; -webkit-line-clamp: 2; -webkit-box-orient: vertical; }
  .cell svg { width: min(100%, 72px); height: 12px; align-self: end; } .line svg { width: 72px; height: 12px; }
  details { margin-top: 16px; } summary { min-height: 28px; padding: 4px 0; color: var(--quiet); }
  .cell[aria-pressed='true'] { background: var(--field); border-color: var(--ink); outline: 2px solid var(--ink); outline-offset: -1px; color: var(--ink); }
  .cell[aria-pressed='true']:focus-visible { outline: 3px solid var(--focus); }
  .cell:focus-visible { z-index: 1; }
  .bad { font-weight: 600; color: var(--clashes); }
  .swatches { display: flex; gap: 1px; margin-top: 3px; } .swatches svg { display: block; }
  .legend { display: flex; flex-wrap: wrap; gap: 6px 18px; font-size: var(--small); color: var(--quiet); align-items: center; padding: 10px 0 0 2px; }
  .legend > span { display: inline-flex; gap: 6px; align-items: center; }
  .corner { position: absolute; top: 44px; right: 4px; max-width: min(46%, 330px); display: grid; gap: 6px; padding: 0; justify-items: start; text-align: left; pointer-events: none; } .corner p { text-wrap: pretty; }
  @container (max-width: 760px) { .corner { position: static; max-width: none; display: flex; padding: 10px 0 0 2px; } }
  .list { width: 100%; border-collapse: collapse; }
  .list th, .list td { text-align: left; padding: 5px 12px 5px 0; border-bottom: 1px solid var(--faint); vertical-align: baseline; font-weight: 400; }
  .list thead th { color: var(--quiet); font-size: var(--small); border-color: var(--line); }
  .list .n { text-align: right; font-variant-numeric: tabular-nums; } .list caption { text-align: left; font-weight: 600; padding-bottom: 6px; }
  .list button { min-height: 26px; padding: 1px 8px; text-align: left; } .list tr.here th, .list tr.here td { background: var(--raised); }
  .list button.bare[aria-pressed='true'] { background: none; color: var(--ink); font-weight: 600; }
  .list .small { font-size: var(--small); color: var(--quiet); }
  @container (max-width: 620px) {
    .list, .list caption, .list tbody, .list tr, .list td, .list th { display: block; border: 0; padding: 0; } .list caption { padding-bottom: 6px; } .list thead { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
    .list tr { display: flex; flex-wrap: wrap; gap: 0 10px; padding: 6px 0 7px; border-bottom: 1px solid var(--faint); align-items: center; } .list tr th { flex: 1 1 60%; } .list th button { padding: 2px 0; justify-content: flex-start; font-weight: 600; }
    .list tr.here { background: var(--raised); box-shadow: inset 4px 0 var(--ink); padding-left: 10px; } .list tr.here th, .list tr.here td { background: none; }
    .list td.line { order: -1; flex: 0 0 72px; } .list tr th { order: -2; } .list td { font-size: var(--small); } .list td::before { content: attr(data-name) ' '; color: var(--quiet); } .list td.line::before { content: none; } .list .gloss { flex: 1 1 100%; } .list .n { text-align: left; }
  }
  @media (forced-colors: active) { .list button.bare[aria-pressed='true'] { forced-color-adjust: auto; color: CanvasText; } .cell[aria-pressed='true'] { forced-color-adjust: auto; background: Canvas; color: CanvasText; border-color: Highlight; outline-color: Highlight; } }
`;
