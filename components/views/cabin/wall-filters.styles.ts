import { css } from 'lit';

export const styles = css`
  :host { display: block; }
  .row { display: flex; flex-wrap: wrap; gap: 6px; align-items: center; }
  input[type='search'] { flex: 1 1 150px; }
  .verdicts { display: flex; flex-wrap: wrap; gap: 0; }
  .verdicts button { border-radius: 0; margin-left: -1px; gap: 6px; padding: 2px 8px; }
  .verdicts button:first-child { border-radius: var(--radius) 0 0 var(--radius); margin-left: 0; }
  .verdicts button:last-child { border-radius: 0 var(--radius) var(--radius) 0; }
  .verdicts svg { width: 22px; height: 10px; }
  .verdicts b { font-weight: 600; }
  .row + .row { margin-top: 6px; }
  .pick { flex: 1 1 110px; max-width: 190px; }
  @media (max-width: 760px) {
    .verdicts { width: 100%; } .verdicts button { flex: 1 1 auto; padding: 2px 6px; } .verdicts svg { display: none; }
    .pick { max-width: none; } input[type='search'], .pick select { height: 32px; }
    input[type='search'] { flex-basis: 100%; } .pick::after { top: 12px; }
  }
`;
