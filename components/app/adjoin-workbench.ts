import { html, LitElement, nothing } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import { Desk } from '../controllers/desk.ts';
import { KeyBindings } from '../controllers/key-bindings.ts';
import { LeavingGuard } from '../controllers/leaving-guard.ts';
import { Lighting } from '../controllers/lighting.ts';
import { LiveRegion } from '../controllers/live-region.ts';
import { NewerVersion } from '../controllers/newer-version.ts';
import type { OpenCabin } from '../controllers/open-cabin.ts';
import type { Route } from '../controllers/route.ts';
import { Whereabouts } from '../controllers/whereabouts.ts';
import { actionCommands } from '../model/commands.ts';
import type { Command, DeskCall } from '../model/commands.ts';
import { lightGroups, sweepLights } from '../model/light-groups.ts';
import { applyScheme, readScheme } from '../platform/colour-scheme.ts';
import { loadFormulasWhenIdle } from '../platform/formulas.ts';
import { base, controls } from '../styles/shared.ts';
import { LoadedViews } from '../views/loaded-views.ts';
import type { ViewElement } from '../views/view-element.ts';
import { registeredView } from '../views/view-registry.ts';
import './adjoin-faults.ts';
import './adjoin-start.ts';
import { DroppedFiles } from './dropped-files.ts';
import { EditRequests } from './edit-requests.ts';
import { jointPlace } from './joint-place.ts';
import { KeptCabin } from './kept-cabin.ts';
import { notice } from './notice.ts';
import { Opening } from './opening.ts';
import { pageTitle, placeTitle } from './page-title.ts';
import { placeRow } from './place-row.ts';
import { removal } from './removal.ts';
import { ShellCalls } from './shell-calls.ts';
import { menuCommands } from './shell-commands.ts';
import type { ShellParts } from './shell-parts.ts';
import { waiting } from './waiting.ts';
import { styles } from './workbench.styles.ts';

/** The shell: what is open, where one is, under which light, what can be done, and the things that float above, put together. */
export class AdjoinWorkbench extends LitElement implements ShellParts {
  static override styles = [base, controls, styles];

  private readonly live = new LiveRegion(this);
  readonly desk = new Desk(this, this.live.say);
  readonly whereabouts: Whereabouts = new Whereabouts(this, {
    arrived: (route) => void this.opening.follow(route),
    reveal: (place) => {
      this.kept.reveal(place);
      this.views.get(this.whereabouts.route.view)?.reveal(place);
    },
  });
  readonly lighting = new Lighting(this, this.desk, this.whereabouts);
  readonly opening = new Opening(this, this.desk, this.whereabouts, this.live.say);
  readonly views = new LoadedViews(this);
  readonly requests = new EditRequests(this, this.desk, this.live.say);
  private readonly kept = new KeptCabin(this, this);
  private readonly drop = new DroppedFiles(this, this);
  private readonly calls = new ShellCalls(this, this);
  private readonly newer = new NewerVersion(this, { openAddress: () => this.whereabouts.route.open, flush: () => this.desk.flush() });

  constructor() {
    super();
    this.addController(new KeyBindings({ call: this.calls.call, run: this.calls.run, edits: () => this.edits }));
    this.addController(new LeavingGuard(() => this.desk.keeping !== undefined));
    applyScheme(readScheme());
  }

  override connectedCallback(): void {
    super.connectedCallback();
    loadFormulasWhenIdle();
  }

  private get edits(): readonly Command[] {
    const { open } = this.desk;
    return open === undefined ? [] : actionCommands(open.cabin, open.selection, open.locked);
  }

  /** What is left was looked through for what had the focus and was scrolled: to draw what comes in the same task would keep the page too long. */
  protected override async scheduleUpdate(): Promise<void> {
    if (this.whereabouts.left !== undefined) await this.whereabouts.left;
    await super.scheduleUpdate();
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const title = pageTitle(this.desk.open, this.whereabouts.route);
    if (document.title !== title) document.title = title;
  }

  override render(): TemplateResult {
    const { open } = this.desk;
    const { route } = this.whereabouts;
    const places = placeRow(this.whereabouts);
    return html`
      <button class="skip strong" type="button" @click=${() => this.renderRoot.querySelector('main')?.focus()}>To the content</button>
      <adjoin-header
        .open=${open} .groups=${lightGroups(open?.cabin, open?.judgement)} .light=${this.lighting.light} .sweep=${sweepLights(open?.judgement)} .places=${places}
        .home=${open ? places[0].address : '#/'}
        @adjoin-light=${this.light} @adjoin-call=${(event: CustomEvent<DeskCall>) => this.calls.call(event.detail)}
      ></adjoin-header>
      <main tabindex="-1" aria-label=${open === undefined ? 'Start' : placeTitle(route)} @adjoin-light=${this.light}>
        ${notice(this.desk, this.newer)}
        <div class="view">${this.kept.show(open, route)}${open === undefined ? this.start(route) : this.place(open, route)}</div>
      </main>
      <adjoin-faults
        .refusal=${this.desk.refusal} .kept=${open?.cabin.name}
        @adjoin-dismiss=${() => this.desk.refuse(undefined)} @adjoin-pick=${() => void this.opening.pick()}
      ></adjoin-faults>
      <adjoin-action-form .cabin=${open?.cabin}></adjoin-action-form>
      <adjoin-palette @adjoin-command=${this.command}></adjoin-palette>
      <adjoin-context-menu .commands=${open === undefined || this.requests.menuFor === undefined ? [] : menuCommands(open)} @adjoin-command=${this.command}></adjoin-context-menu>
      <adjoin-help .view=${open === undefined ? 'start' : route.view === 'start' ? 'cabin' : route.view}></adjoin-help>
      ${this.opening.isSlow && this.desk.loading !== undefined ? waiting(this.desk.loading, this.desk) : nothing}
      ${this.removal(open)}
      ${this.drop.over ? html`<div class="drop"><p>${open ? 'Let go to open a cabin or import readings' : 'Let go to open the cabin file'}</p></div>` : nothing}
      <div class="unseen" role="status">${this.live.said}</div>
    `;
  }

  private start({ view }: Route): TemplateResult {
    // What is being opened for another place is not yet there; the ways in would only flash up.
    if (this.desk.loading !== undefined && view !== 'start') return html`<div class="missing"></div>`;
    return html`<adjoin-start
      .recoverable=${this.desk.recoverable}
      @adjoin-pick=${() => void this.opening.pick()} @adjoin-new=${() => void this.opening.makeNew()}
      @adjoin-recover=${(event: CustomEvent<string>) => void this.opening.takeUp(event.detail)}
      @adjoin-forget=${(event: CustomEvent<string>) => void this.desk.forget(event.detail)}
    ></adjoin-start>`;
  }

  private place(open: OpenCabin, route: Route): TemplateResult | ViewElement | typeof nothing {
    if (route.view === 'joint') return jointPlace(open, route, this);
    if (registeredView(route.view) === undefined) return nothing;
    const { desk, lighting: { light, gamut }, whereabouts: { linkTo, go } } = this;
    return this.views.show(route.view, { open, desk, route, light, gamut, colours: this.lighting.colours(open), linkTo, go });
  }

  /** It is of no use once something else was done since. */
  private removal(open: OpenCabin | undefined): TemplateResult | typeof nothing {
    const { removed } = this.requests;
    return removed === undefined || open?.undo !== removed ? nothing : removal(removed, () => this.desk.undo(), () => this.requests.forgetRemoved());
  }

  private readonly light = (event: CustomEvent<string>): void => this.whereabouts.refine({ light: event.detail });

  private readonly command = (event: CustomEvent<Command>): void => this.calls.run(event.detail);
}

customElements.define('adjoin-workbench', AdjoinWorkbench);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-workbench': AdjoinWorkbench;
  }
}
