import { css, html, LitElement } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import typeface from '../../../node_modules/@fontsource-variable/source-sans-3/files/source-sans-3-latin-wght-normal.woff2?url';

/** A long report is not laid out as a whole to be looked at; on paper it is. */
const asSeen = '@media screen { main > section { content-visibility: auto; contain-intrinsic-size: auto 60rem; } }';

/**
 * A report as its reader will see it, in a frame that runs no script. The page's style is put in as a constructed sheet, since the
 * workbench lets no style into a document as text, and its typeface is the workbench's own copy.
 */
export class AdjoinReportPage extends LitElement {
  static override styles = css`
    :host { display: block; min-height: 0; background: var(--table); }
    iframe { display: block; width: 100%; height: 100%; border: 0; background: #8c8c8c; }
  `;
  static override properties = { text: { attribute: false } };

  declare text: string;

  private get frame(): HTMLIFrameElement | null {
    return this.renderRoot.querySelector('iframe');
  }

  /** Prints the page by the browser's own dialog. */
  print(): void {
    this.frame?.contentWindow?.print();
  }

  protected override updated(changed: PropertyValues<this>): void {
    if (!changed.has('text') || this.frame === null) return;
    this.frame.srcdoc = this.text.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, '').replace(/<style>[\s\S]*?<\/style>/, '')
      // Shown once it has its style: it would be laid out twice otherwise.
      .replace('<body', '<body hidden');
  }

  private readonly loaded = (): void => {
    const inside = this.frame?.contentDocument;
    const view = this.frame?.contentWindow as (Window & { readonly CSSStyleSheet: typeof CSSStyleSheet }) | null | undefined;
    const style = /<style>([\s\S]*?)<\/style>/.exec(this.text ?? '')?.[1];
    if (!inside || !view || style === undefined) return;
    const sheet = new view.CSSStyleSheet();
    sheet.replaceSync(style.replace(/url\(data:font[^)]*\)/, `url(${new URL(typeface, document.baseURI).href})`) + asSeen);
    inside.adoptedStyleSheets = [sheet];
    inside.body.hidden = false;
    inside.addEventListener('click', this.follow);
    this.dispatchEvent(new CustomEvent('adjoin-shown', { bubbles: true, composed: true }));
  };

  /** Links of the report lead within it; a frame without an address of its own would leave the page. */
  private readonly follow = (event: Event): void => {
    const link = (event.target as Element | null)?.closest?.('a[href^="#"]');
    if (!link) return;
    event.preventDefault();
    const target = this.frame?.contentDocument?.getElementById(link.getAttribute('href')?.slice(1) ?? '');
    for (let folded = target?.closest('details'); folded; folded = folded.parentElement?.closest('details')) folded.open = true;
    target?.scrollIntoView({ block: 'start' });
  };

  override render(): TemplateResult {
    return html`<iframe title="Preview of the report" sandbox="allow-same-origin allow-modals" @load=${this.loaded}></iframe>`;
  }
}

customElements.define('adjoin-report-page', AdjoinReportPage);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-report-page': AdjoinReportPage;
  }
}
