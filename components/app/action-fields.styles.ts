import { css } from 'lit';

export const styles = css`
  :host { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(100%, 148px), 1fr)); gap: 12px 20px; align-items: start; }
  .field.text { grid-column: 1 / -1; }
  .number input { text-align: right; }
`;
