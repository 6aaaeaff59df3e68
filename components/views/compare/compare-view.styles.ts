import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: minmax(0, 1fr); grid-template-rows: auto minmax(0, 1fr); height: 100%; min-height: 0; background: var(--paper); }
  header { display: grid; gap: 12px; padding: 16px 24px 12px; border-bottom: 1px solid var(--line); }
  h1 { font-size: var(--huge); letter-spacing: -0.015em; }
  h2 { font-size: var(--large); padding: 4px 0 8px; }
  .top { display: flex; flex-wrap: wrap; gap: 8px 20px; align-items: end; }
  .top h1 { margin-right: auto; }
  .top .field { min-width: 150px; }
  .quiet { color: var(--quiet); }
  .lead { font-size: var(--large); max-width: 90ch; text-wrap: pretty; }
  .notes { border-left: 4px dashed var(--open); padding-left: 12px; color: var(--quiet); }
  .kinds { display: flex; flex-wrap: wrap; gap: 6px; align-items: center; }
  .kinds .count { font-weight: 600; }
  .kinds .views { margin-left: auto; display: flex; gap: 6px; }
  .body { min-height: 0; display: grid; grid-template-columns: minmax(0, 1fr) minmax(0, 560px); }
  .body.table { display: block; overflow: auto; padding: 12px 24px 24px; }
  adjoin-cabin-map { min-height: 0; }
  .list { overflow: auto; min-height: 0; border-left: 1px solid var(--line); }
  .changes li { border-bottom: 1px solid var(--faint); content-visibility: auto; contain-intrinsic-size: auto 132px; }
  .changes a { display: grid; grid-template-columns: minmax(0, 1fr) 170px; gap: 4px 16px; padding: 12px 20px 14px; text-decoration: none; align-items: start; }
  .changes a:hover { background: var(--raised); }
  .changes .gone { display: block; padding: 12px 20px; }
  .names { font-weight: 600; font-size: var(--large); line-height: 1.2; }
  .names i { font-style: normal; font-weight: 300; }
  .words { display: flex; flex-wrap: wrap; gap: 2px 8px; align-items: center; padding: 4px 0; }
  .words .to { color: var(--quiet); }
  .sentence { color: var(--quiet); font-size: var(--small); grid-column: 1 / -1; }
  .pair { display: grid; grid-template-columns: 1fr 1fr; gap: 4px 6px; font-size: var(--tiny); color: var(--quiet); }
  .pair svg { width: 100%; height: 54px; }
  .use { display: grid; gap: 2px; grid-column: 1 / -1; } .use svg { width: 100%; height: auto; }
  .use b { font-size: var(--small); color: var(--ink); }
  .nothing { padding: 24px; color: var(--quiet); }
  table { border-collapse: collapse; width: 100%; margin-bottom: 20px; }
  caption { text-align: left; font-weight: 600; padding: 8px 0; }
  th, td { text-align: left; padding: 5px 14px 5px 0; border-bottom: 1px solid var(--faint); vertical-align: baseline; white-space: nowrap; }
  th[scope='row'] { font-weight: 600; white-space: normal; min-width: 14rem; }
  thead th { color: var(--quiet); font-size: var(--small); border-bottom: 1px solid var(--line); position: sticky; top: -12px; background: var(--paper); }
  .number { text-align: right; }
  .empty { place-self: center; display: grid; gap: 12px; max-width: 52ch; padding: 32px 24px; justify-items: start; }
  .empty b { font-size: var(--huge); font-weight: 300; line-height: 1.15; letter-spacing: -0.015em; }
  .empty .choices { display: flex; flex-wrap: wrap; gap: 8px; }
  .faults { border-left: 6px double var(--clashes); padding-left: 12px; display: grid; gap: 4px; overflow-wrap: anywhere; }
  .faults b { color: var(--clashes); }
  @media (max-width: 1000px) {
    :host { height: auto; min-height: 100%; }
    .body { grid-template-columns: minmax(0, 1fr); }
    .list { border-left: 0; border-top: 1px solid var(--line); overflow: visible; }
    adjoin-cabin-map { height: 340px; }
  }
  @media (max-width: 600px) {
    header, .body.table { padding-left: 16px; padding-right: 16px; }
    .changes a { grid-template-columns: minmax(0, 1fr); padding: 12px 16px 14px; }
    .pair { max-width: 260px; }
    .kinds .views { margin-left: 0; }
  }
  .top .field, .top .field .pick { min-width: 0; max-width: 100%; } .top .label { overflow-wrap: anywhere; }
`;
