import { css } from 'lit';

export const styles = css`
  :host { display: block; margin-bottom: 12px; }
  article { border: 1px solid var(--faint); border-left: 6px solid var(--faint); border-radius: var(--radius); padding: 4px 12px 8px; background: var(--paper); }
  article.stands { border-left-color: var(--ink); }
  header { display: flex; flex-wrap: wrap; gap: 4px 12px; align-items: center; justify-content: space-between; }
  .title { display: flex; flex-wrap: wrap; gap: 0 10px; justify-content: flex-start; text-align: left; padding: 3px 4px 3px 20px; position: relative; min-height: 28px; }
  .title::before { content: ''; position: absolute; left: 5px; top: 10px; width: 6px; height: 6px; border: solid var(--quiet); border-width: 0 1.5px 1.5px 0; transform: rotate(-45deg); }
  button.title[aria-expanded='true'] { background: none; color: var(--ink); border-color: transparent; }
  .title[aria-expanded='true']::before { transform: rotate(45deg); top: 8px; }
  .quiet { color: var(--quiet); font-size: var(--small); align-self: center; }
  .mark { font-size: var(--small); font-weight: 600; }
  .fields { padding: 8px 4px 4px 20px; }
  h4 { margin: 14px 0 6px; font-size: var(--small); color: var(--quiet); font-weight: 400; border-bottom: 1px solid var(--faint); }
  li { border-top: 1px solid var(--faint); padding: 1px 0; }
  li.here { background: var(--raised); }
  ul { margin-top: 4px; border-bottom: 1px solid var(--faint); }
  .does { margin-top: 8px; display: flex; gap: 8px; }
  .does button { font-size: var(--small); }
  button:disabled { color: var(--quiet); border-style: dashed; cursor: default; }
`;
