import { css } from 'lit';

/** What every element starts from: box model, focus rings, links, sections that fold. */
export const base = css`
  *, *::before, *::after { box-sizing: border-box; }
  :host { color: var(--ink); }
  :host([hidden]), [hidden] { display: none !important; }
  h1, h2, h3, p, ol, ul, dl, dd, figure { margin: 0; padding: 0; }
  :host { overflow-wrap: break-word; }
  h1, h2, h3, p, dd, legend, figcaption { overflow-wrap: anywhere; }
  ol, ul { list-style: none; }
  h1, h2, h3 { font-weight: 600; line-height: 1.2; text-wrap: balance; }
  svg { display: block; }
  a { color: inherit; text-underline-offset: 2px; text-decoration-thickness: 1px; }
  :focus-visible { outline: 2px solid var(--focus); outline-offset: 1px; box-shadow: 0 0 0 1px var(--focus-gap); border-radius: var(--radius); }
  summary { cursor: pointer; list-style: none; }
  summary::-webkit-details-marker { display: none; }
  summary::before { content: ''; display: inline-block; flex: none; width: 6px; height: 6px; margin: 0 9px 2px 2px; border: solid currentColor; border-width: 0 1.5px 1.5px 0; rotate: -45deg; vertical-align: middle; }
  details[open] > summary::before { rotate: 45deg; }
  .unseen {
    position: absolute; width: 1px; height: 1px; margin: -1px; overflow: hidden;
    clip-path: inset(50%); white-space: nowrap;
  }
  .sample { forced-color-adjust: none; }
  .word { font-weight: 600; }
  .word.holds { color: var(--holds); }
  .word.open { color: var(--open); }
  .word.clashes { color: var(--clashes); }
`;

/** Buttons, fields and selects in quiet ink; 28 px high, never less than 24 px to hit. */
export const controls = css`
  button, select, input { font: inherit; color: inherit; font-variant-numeric: inherit; }
  button, .button {
    min-height: 28px; padding: 2px 10px; border: 1px solid var(--line); border-radius: var(--radius);
    background: var(--raised); color: var(--ink); cursor: pointer; text-decoration: none;
    display: inline-flex; align-items: center; justify-content: center; gap: 6px; line-height: 1.2;
  }
  button:hover, .button:hover { background: var(--field); border-color: var(--ink); }
  button:active, .button:active { background: var(--faint); }
  button[aria-pressed='true'], button[aria-checked='true'], button[aria-expanded='true'] { background: var(--ink); color: var(--paper); border-color: var(--ink); }
  button.bare { border-color: transparent; background: none; }
  button.bare:hover { border-color: var(--line); }
  button[aria-disabled='true'] { color: var(--quiet); cursor: default; border-style: dashed; }
  .strong { background: var(--ink); color: var(--paper); border-color: var(--ink); }
  .strong[aria-disabled='true'] { background: none; }
  .strong:not([aria-disabled='true']):hover { background: var(--quiet); color: var(--paper); }
  input[type='search'] {
    height: 28px; padding: 0 8px; border: 1px solid var(--line); border-radius: var(--radius);
    background: var(--field); appearance: none; min-width: 0;
  }
  input[type='search']::placeholder { color: var(--quiet); opacity: 1; }
  input[type='search']::-webkit-search-cancel-button { appearance: none; }
  .pick { position: relative; display: inline-flex; min-width: 0; }
  .pick select {
    appearance: none; height: 28px; padding: 0 24px 0 8px; border: 1px solid var(--line); border-radius: var(--radius);
    background: var(--raised); cursor: pointer; min-width: 0; width: 100%; text-overflow: ellipsis;
  }
  .pick select:hover { background: var(--field); border-color: var(--ink); }
  .pick select option { background: var(--field); color: var(--ink); }
  .pick::after {
    content: ''; position: absolute; right: 9px; top: 10px; width: 6px; height: 6px; pointer-events: none;
    border: solid var(--quiet); border-width: 0 1.5px 1.5px 0; transform: rotate(45deg);
  }
  .pick.on select { background: var(--ink); color: var(--paper); border-color: var(--ink); }
  .pick.on::after { border-color: var(--paper); }
  @media (forced-colors: active) {
    button[aria-pressed='true'], button[aria-checked='true'], button[aria-expanded='true'], .pick.on select {
      forced-color-adjust: none; background: Highlight; color: HighlightText; border-color: Highlight;
    }
    .strong:not([aria-disabled='true']) { forced-color-adjust: none; background: ButtonText; color: ButtonFace; border-color: ButtonText; }
  }
`;
