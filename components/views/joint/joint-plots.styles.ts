import { css } from 'lit';

export const styles = css`
  :host { display: block; }
  .plots { display: grid; grid-template-columns: minmax(0, 3fr) minmax(0, 2fr); gap: 40px; }
  .plots svg { max-width: 100%; height: auto; }
  h2 { font-size: var(--large); padding-bottom: 8px; margin-bottom: 16px; border-bottom: 1px solid var(--line); }
  @media (max-width: 900px) { .plots { grid-template-columns: minmax(0, 1fr); } }
`;
