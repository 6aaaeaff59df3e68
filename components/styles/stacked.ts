import { css } from 'lit';

/**
 * On a narrow screen a table of class `stacked` stands as a list, so that nothing is read by scrolling sideways: each row under its head, each
 * cell after the name of its column (`data-name`). A cell of class `none` says of a
 * column only that it has nothing. Of the heads of the columns those are left, in a line above, that have a word to explain.
 */
export const stacked = css`
  @media (max-width: 760px) {
    table.stacked, .stacked > table, .stacked caption, .stacked :is(tbody, tfoot) { display: block; min-width: 0; } .stacked colgroup, .stacked thead tr:not(:has(adjoin-term)), .stacked thead :is(th, td):not(:has(adjoin-term)) { display: none; }
    .stacked thead { display: block; } .stacked thead th { display: flex; gap: 4px; align-items: center; min-height: 24px; position: static; border: 0; padding: 0; width: auto; min-width: 0; text-align: left; box-shadow: none; }
    .stacked tr { display: flex; flex-wrap: wrap; gap: 2px 14px; align-items: baseline; padding: 8px 0; border-bottom: 1px solid var(--faint); } .stacked tr.bare-rows { padding: 0; border: 0; }
    .stacked :is(tbody, tfoot) :is(th, td) { display: block; border: 0; padding: 0; height: auto; min-width: 0; text-align: left; white-space: normal; }
    .stacked tbody th { flex: 1 1 100%; font-weight: 600; } .stacked tbody th.beside { flex: 0 1 auto; }
    .stacked tbody tr:is(.here, .on) { background: var(--raised); box-shadow: inset 4px 0 var(--ink); padding-left: 12px; } .stacked tbody tr:is(.here, .on) :is(th, td) { background: none; box-shadow: none; }
    .stacked td[data-name]::before { content: attr(data-name) ' '; color: var(--quiet); font-size: var(--small); font-weight: 400; }
    .stacked td:is(:empty, .none) { display: none; } .stacked td.whole { flex: 1 1 100%; } .stacked td.first { order: -1; } .stacked td.first + th { flex: 1 1 calc(100% - 44px); order: -1; }
    .stacked td svg { display: inline-block; vertical-align: middle; max-width: 100%; }
  }
`;
