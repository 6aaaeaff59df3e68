import { css } from 'lit';

export const styles = css`
  :host { display: block; scroll-margin: 120px 0 16px; }
  a {
    display: grid; grid-template-columns: 148px minmax(0, 1fr) 92px; gap: 0 12px; padding: 12px 16px 10px; text-decoration: none; border-bottom: 1px solid var(--faint);
  }
  a:hover, :host([lit]) a { background: var(--raised); }
  a:focus-visible { outline-offset: -3px; box-shadow: none; }
  .names { display: grid; grid-template-rows: 1fr 1fr; text-align: right; font-size: var(--small); line-height: 1.15; height: 52px; }
  .names span { align-self: center; overflow: hidden; text-overflow: ellipsis; display: -webkit-box; -webkit-line-clamp: 2; -webkit-box-orient: vertical; text-wrap: balance; }
  .figure { min-width: 0; }
  .figure svg { width: 100%; }
  adjoin-surface-strip { height: 52px; outline: 1px solid var(--line); }
  .result { line-height: 1.15; padding-top: 1px; }
  .use { font-size: 1.375rem; font-weight: 600; letter-spacing: -0.01em; display: block; line-height: 1.1; white-space: nowrap; }
  .use small { font-size: var(--small); font-weight: 400; letter-spacing: 0; }
  .each { grid-column: 1; display: grid; align-content: start; justify-items: end; font-size: var(--tiny); line-height: 1.35; color: var(--quiet); margin-top: 4px; }
  .each b { display: inline-block; min-width: 44px; text-align: right; font-weight: 400; }
  .each .clashes, .each .clashes b { color: var(--clashes); font-weight: 600; }
  .each .open, .each .open b { color: var(--open); font-weight: 600; }
  .sentence { grid-column: 2 / -1; font-size: var(--small); line-height: 1.35; color: var(--quiet); margin-top: 2px; overflow-wrap: anywhere; display: -webkit-box; -webkit-line-clamp: 4; -webkit-box-orient: vertical; overflow: hidden; }
  @media (max-width: 760px) {
    a { grid-template-columns: minmax(0, 1fr) 84px; }
    .names { grid-column: 1 / -1; display: block; height: auto; text-align: left; margin-bottom: 4px; font-weight: 600; }
    .names span { display: inline; }
    .names span + span::before { content: ' / '; font-weight: 400; color: var(--quiet); }
    .each { grid-column: 1 / -1; display: flex; flex-wrap: wrap; gap: 0 12px; } .each b { min-width: 0; }
    .sentence { grid-column: 1 / -1; }
  }
  @media (forced-colors: active) { :host([lit]) a { outline: 2px solid Highlight; outline-offset: -2px; } }
`;
