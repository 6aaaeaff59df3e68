import { html } from 'lit';
import type { ReactiveControllerHost, TemplateResult } from 'lit';
import type { View } from '../controllers/route.ts';
import type { ViewElement, ViewProperties } from './view-element.ts';
import { registeredView } from './view-registry.ts';

/** Views of the registry, each loaded when it is first gone to and kept from then on, so that it is found as it was left. */
export class LoadedViews {
  constructor(host: ReactiveControllerHost) {
    this.host = host;
  }

  private readonly host: ReactiveControllerHost;
  private readonly loaded = new Map<View, ViewElement>();
  /** A view that could not be loaded. */
  private failed: View | undefined;

  /** A view that is loaded by now. */
  get(view: View): ViewElement | undefined {
    return this.loaded.get(view);
  }

  /** A view that lies over the whole page is still on it. */
  get isCovering(): boolean {
    return [...this.loaded.values()].some((one) => one.covers && one.isConnected);
  }

  /** Undefined where there is no such view or it could not be loaded, as without a network. */
  async load(view: View): Promise<ViewElement | undefined> {
    const registered = registeredView(view);
    if (registered === undefined) return undefined;
    const known = this.loaded.get(view);
    if (known !== undefined) return known;
    try {
      await registered.load();
    } catch {
      this.fail(view);
      return undefined;
    }
    const element = this.loaded.get(view) ?? (document.createElement(registered.tag) as ViewElement);
    this.loaded.set(view, element);
    this.fail(undefined);
    this.host.requestUpdate();
    return element;
  }

  /** The view with what the shell gives it, or what stands there until it is loaded. */
  show(view: View, properties: ViewProperties): TemplateResult | ViewElement {
    const element = this.loaded.get(view);
    if (element !== undefined) return Object.assign(element, properties);
    if (this.failed === view) {
      return html`<div class="missing"><h1>This place could not be loaded.</h1><button type="button" @click=${() => void this.load(view)}>Try again</button></div>`;
    }
    void this.load(view);
    return html`<div class="missing"></div>`;
  }

  private fail(view: View | undefined): void {
    if (this.failed === view) return;
    this.failed = view;
    this.host.requestUpdate();
  }
}
