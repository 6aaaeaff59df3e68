import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-rows: auto minmax(0, 1fr) auto; background: var(--table); color: var(--table-ink); min-height: 0; position: relative; --map-line: color-mix(in srgb, var(--table-ink) 25%, transparent); }
  .map { contain: strict; min-height: 0; overflow: hidden; position: relative; touch-action: none; user-select: none; cursor: default; }
  .map, adjoin-matrix { grid-area: 2 / 1; }
  /* Nothing here may be inherited: the browser would style all of the map anew on the way back. */
  .map.resting { content-visibility: hidden; opacity: 0; z-index: -1; }
  @media print { .map.resting { display: none; } }
  .sheets { contain: layout size style; position: absolute; inset: 0; pointer-events: none; }
  .lying { transform-origin: 0 0; will-change: transform; }
  .sheets > svg { contain: layout size style; position: absolute; inset: 0; width: 100%; height: 100%; overflow: visible; }
  .sheets > svg > g:not([pointer-events]) { pointer-events: auto; }
  .map:focus-visible { outline-offset: -4px; box-shadow: none; }
  .map.look .hit { cursor: pointer; }
  .map.outline, .map.join { cursor: crosshair; }
  .map.outline .hit, .map.join .hit { pointer-events: none; }
  .handle { cursor: move; }
  .sample, .no-colour { forced-color-adjust: none; }
  .empty { position: absolute; inset: 0; display: grid; place-content: center; justify-items: center; gap: 12px; }
  .empty button { font: inherit; min-height: 32px; padding: 2px 14px; border: 1px solid currentColor; background: none; color: inherit; border-radius: var(--radius); cursor: pointer; }
  @media (max-width: 1080px) { .map { touch-action: pan-y; } }
  @media (max-width: 760px) { :host { grid-template-rows: auto auto auto; } .map { height: 256px; } }
`;
