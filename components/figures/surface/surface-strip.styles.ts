import { css } from 'lit';

export const styles = css`
  :host { display: block; position: relative; overflow: hidden; forced-color-adjust: none; }
  svg, canvas { position: absolute; left: 0; top: 0; display: block; }
  canvas { image-rendering: auto; print-color-adjust: exact; }
  canvas.stale { visibility: hidden; }
`;
