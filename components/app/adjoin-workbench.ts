import { html, LitElement, nothing, svg } from 'lit';
import type { PropertyValues, TemplateResult } from 'lit';
import type { Selection } from '../../src/actions/index.ts';
import { announceEvent } from '../controllers/announcer.ts';
import { Desk } from '../controllers/desk.ts';
import { FocusKeeper } from '../controllers/focus-keeper.ts';
import { PlaceMemory } from '../controllers/place-memory.ts';
import { editEvent, formEvent, menuEvent, selectEvent } from '../controllers/edit-events.ts';
import type { WantedEdit, WantedForm, WantedMenu } from '../controllers/edit-events.ts';
import type { OpenCabin } from '../controllers/open-cabin.ts';
import { tabDocument } from '../controllers/keeper.ts';
import { foldEvent, showFolds } from '../controllers/sections.ts';
import type { Folded } from '../controllers/sections.ts';
import { RouteController } from '../controllers/route-controller.ts';
import { changedRoute, formatRoute, parseRoute } from '../controllers/route.ts';
import type { JointFilter, Route, View } from '../controllers/route.ts';
import { actionCommands, commandsOfSelection, innermost } from '../model/commands.ts';
import type { Command, DeskCall } from '../model/commands.ts';
import type { FocusMark } from '../model/focus-mark.ts';
import { resting } from '../model/focus-path.ts';
import { isTyping, keysOf } from '../model/keys.ts';
import { findLight, lightGroups, sweepLights } from '../model/light-groups.ts';
import { partsById, passes } from '../model/joint-filter.ts';
import { orderedJoints } from '../model/joint-order.ts';
import { partColours } from '../model/part-colours.ts';
import { offeredCabins } from '../model/offered-cabins.ts';
import { remembered } from '../model/remembered.ts';
import type { PartColour } from '../model/part-colours.ts';
import { loadFormulasWhenIdle } from '../platform/formulas.ts';
import { applyScheme, readScheme } from '../platform/colour-scheme.ts';
import { OfflineCopy } from '../platform/offline/offline-copy.ts';
import { DisplayGamut } from '../platform/display-gamut.ts';
import { FileDrop } from '../platform/file-drop.ts';
import { droppedCabin } from '../platform/dropped-cabin.ts';
import { openFile } from '../platform/open-save.ts';
import type { OpenedFile } from '../platform/open-save.ts';
import { base, controls } from '../styles/shared.ts';
import '../views/cabin/adjoin-cabin-view.ts';
import type { AdjoinCabinView } from '../views/cabin/adjoin-cabin-view.ts';
import '../views/joint/adjoin-joint-view.ts';
import type { ViewElement } from '../views/view-element.ts';
import { registeredView, registeredViews } from '../views/view-registry.ts';
import './adjoin-action-form.ts';
import './adjoin-context-menu.ts';
import './adjoin-faults.ts';
import './adjoin-header.ts';
import type { Place } from './adjoin-header.ts';
import './adjoin-palette.ts';
import './adjoin-start.ts';
import { styles } from './workbench.styles.ts';

const usualLight = 'D65';
const none: Readonly<Record<string, string>> = {};

interface RememberedColours {
  readonly judgement: OpenCabin['judgement'];
  readonly light: string;
  readonly gamut: string;
  readonly colours: ReadonlyMap<string, PartColour>;
}

/** Addresses of joints from a place, as one function as long as the place is the same, so that nothing is drawn anew for it. */
const jointLinks = remembered((route: Route) => (joint: string): string => formatRoute({ ...route, view: 'joint', joint, item: undefined, options: { ...route.options, try: '' }, folds: route.view === 'joint' ? route.folds : undefined }));

const choicesOf = ({ options, folds }: Route): Pick<Route, 'options' | 'folds'> => ({ options, folds });

const deskKeys: Readonly<Record<string, DeskCall>> = {
  'Mod+O': 'open', 'Mod+S': 'save', 'Mod+Shift+S': 'save as', 'Mod+Z': 'undo', 'Mod+Shift+Z': 'redo', 'Mod+Y': 'redo', 'Mod+K': 'palette', F1: 'help',
};

/** The shell: what is open, where one is, under which light, what can be done, and the things that float above: faults, forms, menus, waiting. */
export class AdjoinWorkbench extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = { said: { state: true }, removed: { state: true }, slow: { state: true }, menuFor: { state: true }, failed: { state: true } };

  declare said: string;
  /** What was taken away last, until the next edit. */
  declare removed: string | undefined;
  /** Opening takes long enough to say so. */
  declare slow: boolean;
  /** What the open menu is for. */
  declare menuFor: Selection | undefined;
  /** A view that could not be loaded. */
  declare failed: string | undefined;
  private readonly desk = new Desk(this, (text) => this.saySoon(text));
  private readonly focused = new FocusKeeper(this, () => this.renderRoot.querySelector('main'));
  private readonly memory = new PlaceMemory(() => this.renderRoot.querySelector('.view'), () => this.renderRoot.querySelector('main'), (mark) => this.reveal(mark));
  private readonly routes = new RouteController(this, {
    changed: (route) => this.arrived(route),
    leaving: (entry) => this.memory.leave(entry, this.focused.last),
    cameBack: (entry) => this.memory.comeBack(entry),
  });
  private readonly display = new DisplayGamut(this);
  private readonly drop = new FileDrop(this, (files) => void this.takeFiles(files));
  private readonly offline = new OfflineCopy();
  private address: string | undefined;
  private typedInto: EventTarget | undefined;
  private readonly loaded = new Map<string, ViewElement>();
  private remembered: RememberedColours | undefined;
  private cabinKept: AdjoinCabinView | undefined;
  /** The place that was shown last. */
  private seen: View | undefined;
  /** The joint that was looked at last. */
  private visited: string | undefined;
  /** What was chosen in each place as it was left: its link in the row of places leads back to that. */
  private readonly choices = new Map<View, Pick<Route, 'options' | 'folds'>>();

  constructor() {
    super();
    this.said = '';
    this.slow = false;
    applyScheme(readScheme());
    this.addEventListener(announceEvent, (event) => this.saySoon((event as CustomEvent<string>).detail));
    this.addEventListener(editEvent, (event) => {
      const wanted = (event as CustomEvent<WantedEdit>).detail;
      wanted.result = this.desk.do(wanted.action, wanted.values, wanted.options);
      this.removed = wanted.result.done && /\.(?:remove|withdraw)$/.test(wanted.action) ? wanted.result.label : undefined;
      const [fault] = wanted.result.done ? [] : wanted.result.issues;
      if (fault !== undefined) this.saySoon(`Not done: ${fault.hint ?? `expected ${fault.expected ?? fault.code}`}`);
    });
    this.addEventListener(formEvent, (event) => {
      if (this.desk.open?.locked === true) this.saySoon('Not done: the cabin is open in another tab. Take it over to change it here.');
      else this.form?.ask((event as CustomEvent<WantedForm>).detail, this.desk.open?.selection ?? {});
    });
    this.addEventListener('input', (event) => { this.typedInto = isTyping(event) ? event.composedPath()[0] : undefined; });
    this.addEventListener(foldEvent, (event) => this.routes.fold((event as CustomEvent<Folded>).detail));
    this.addEventListener(selectEvent, (event) => this.desk.select((event as CustomEvent<Selection>).detail));
    this.addEventListener(menuEvent, (event) => {
      const { x, y, selection } = (event as CustomEvent<WantedMenu>).detail;
      this.desk.select(selection);
      this.menuFor = selection;
      void this.updateComplete.then(() => this.renderRoot.querySelector('adjoin-context-menu')?.show(x, y));
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    loadFormulasWhenIdle();
    addEventListener('keydown', this.key);
    addEventListener('beforeunload', this.holdBack);
    this.arrived(this.routes.route);
    if (this.routes.route.open === undefined && tabDocument() !== undefined) {
      void this.waiting(this.desk.reopen()).then((taken) => {
        if (!taken) return;
        if (this.routes.route.view === 'start') this.routes.refine({ view: 'cabin' });
        this.opened();
      });
    }
    void this.desk.findRecoverable();
    this.offline.addEventListener('newer', () => this.requestUpdate());
    if (import.meta.env.PROD) {
      void this.offline.begin('./service-worker.js');
      const { open } = this.routes.route;
      void this.offline.keep([...offeredCabins.map(({ address }) => address), ...(open === undefined ? [] : [open])]);
    }
  }

  /** What was changed last is written before the page goes. */
  private async takeNewer(): Promise<void> {
    await this.desk.flush();
    this.offline.takeNewer();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    removeEventListener('keydown', this.key);
    removeEventListener('beforeunload', this.holdBack);
  }

  /** Leaving is asked about only while it would lose something. */
  private readonly holdBack = (event: BeforeUnloadEvent): void => {
    if (this.desk.keeping !== undefined) event.preventDefault();
  };

  private get form() {
    return this.renderRoot.querySelector('adjoin-action-form');
  }

  /** A sentence said twice is heard twice: the region is emptied in between. */
  private saySoon(text: string): void {
    this.said = '';
    void this.updateComplete.then(() => {
      this.said = text;
    });
  }

  /** A joint that was left for the wall is found there, however far down, and so is a row of a long table. */
  private reveal({ name }: FocusMark): void {
    const place = parseRoute(name);
    if (place.view === 'joint' && place.joint !== undefined) this.cabinKept?.reveal(place.joint);
    this.loaded.get(this.routes.route.view)?.reveal(place);
  }

  private arrived(route: Route): void {
    if (route.view !== this.seen) {
      this.seen = route.view;
      // Another place begins at its top, however far the one before was scrolled.
      void this.updateComplete.then(() => {
        this.renderRoot.querySelector('main')?.scrollTo({ top: 0, left: 0, behavior: 'instant' });
        document.scrollingElement?.scrollTo({ top: 0, left: 0, behavior: 'instant' });
      });
    }
    this.choices.set(route.view, choicesOf(route));
    showFolds(route.folds);
    if (route.open === undefined || route.open === this.address) return;
    this.address = route.open;
    void this.waiting(this.desk.openAddress(route.open)).then((taken) => {
      if (taken) this.opened();
    });
  }

  private async takeFiles(files: readonly File[]): Promise<void> {
    if (this.desk.open !== undefined && this.routes.route.view === 'compare' && files.length === 1) {
      (await this.load('compare'))?.dispatchEvent(new CustomEvent('adjoin-files', { detail: files }));
      return;
    }
    const cabin = await droppedCabin(files);
    if (cabin !== undefined) return this.take({ file: cabin, handle: undefined });
    if (this.desk.open !== undefined && this.routes.route.view === 'rules' && files.length === 1 && /\.json$/i.test(files[0]?.name ?? '')) {
      (await this.load('rules'))?.dispatchEvent(new CustomEvent('adjoin-files', { detail: files }));
      return;
    }
    if (this.desk.open !== undefined) {
      const target = files.length === 1 && /\.(sdf|x3p|png)$/i.test(files[0]?.name ?? '') ? 'surfaces' : 'import';
      if (this.routes.route.view !== target) this.routes.go({ view: target, item: undefined, joint: undefined, ...(this.choices.get(target) ?? { options: {} }) });
      const view = await this.load(target);
      // It has its route before it has its files.
      await this.updateComplete;
      view?.dispatchEvent(new CustomEvent('adjoin-files', { detail: files }));
      return;
    }
    const [file] = files;
    if (file !== undefined && files.length === 1) return this.take({ file, handle: undefined });
    this.desk.refuse({
      file: `${files.length} files`,
      issues: [{
        code: 'several-files', severity: 'error', found: files.map((one) => one.name).join(', '), expected: 'one cabin file',
        hint: 'Open a cabin, or make a new one, then drop files of readings on it.',
      }],
    });
  }

  private async take(file: OpenedFile): Promise<void> {
    if (!(await this.waiting(this.desk.openFile(file)))) return;
    this.arriveAtNew();
  }

  private arriveAtNew(): void {
    this.address = undefined;
    this.routes.go({ view: 'cabin', open: undefined, filter: {}, joint: undefined, item: undefined, options: {} });
    this.opened();
  }

  private async waiting(work: Promise<boolean>): Promise<boolean> {
    const timer = setTimeout(() => {
      this.slow = true;
    }, 300);
    const taken = await work;
    clearTimeout(timer);
    this.slow = false;
    return taken;
  }

  private opened(): void {
    const open = this.desk.open;
    if (open === undefined) return;
    this.choices.clear();
    this.choices.set(this.routes.route.view, choicesOf(this.routes.route));
    const { holds, clashes, open: undecided } = open.judgement.summary;
    this.saySoon(`${open.cabin.name} is open: ${holds} ${holds === 1 ? 'joint holds' : 'joints hold'}, ${clashes} ${clashes === 1 ? 'clashes' : 'clash'}, ${undecided} ${undecided === 1 ? 'is' : 'are'} open.`);
  }

  private async pick(): Promise<void> {
    this.desk.refuse(undefined);
    const file = await openFile();
    if (file !== undefined) await this.take(file);
  }

  private async makeNew(): Promise<void> {
    const today = new Date();
    const asOf = [today.getFullYear(), String(today.getMonth() + 1).padStart(2, '0'), String(today.getDate()).padStart(2, '0')].join('-');
    if (await this.waiting(this.desk.openNew('New cabin', asOf))) {
      this.address = undefined;
      this.routes.go({ view: registeredView('parts') === undefined ? 'cabin' : 'parts', open: undefined, filter: {}, joint: undefined, item: undefined, options: {} });
      this.opened();
    }
  }

  private async keep(key: string): Promise<void> {
    if (await this.waiting(this.desk.openKept(key))) this.arriveAtNew();
  }

  // Commands

  private readonly key = (event: KeyboardEvent): void => {
    if (event.defaultPrevented) return;
    const keys = keysOf(event);
    const call = deskKeys[keys];
    // A field that was typed into takes back its own typing; one that was merely gone to has nothing to take back.
    if (keys === 'Enter') this.typedInto = undefined;
    const fieldUndo = this.typedInto !== undefined && event.composedPath()[0] === this.typedInto && (call === 'undo' || call === 'redo');
    if (call !== undefined && !fieldUndo) {
      event.preventDefault();
      this.call(call);
      return;
    }
    const open = this.desk.open;
    if (open === undefined || isTyping(event) || this.renderRoot.querySelector('dialog[open]') !== null) return;
    const command = innermost(actionCommands(open.cabin, open.selection, open.locked).filter((one) => one.keys === keys));
    if (command === undefined) return;
    event.preventDefault();
    this.run(command);
  };

  private call(call: DeskCall): void {
    switch (call) {
      case 'open': void this.pick(); break;
      case 'new': void this.makeNew(); break;
      case 'save': void this.desk.save(); break;
      case 'save as': void this.desk.save(true); break;
      case 'undo': this.desk.undo(); break;
      case 'redo': this.desk.redo(); break;
      case 'close': void this.desk.close().then(() => { this.address = undefined; this.routes.go({ view: 'start', open: undefined, filter: {}, joint: undefined, item: undefined, options: {} }); }); break;
      case 'palette': this.renderRoot.querySelector('adjoin-palette')?.show(this.commands(this.desk.open)); break;
      case 'ink': this.renderRoot.querySelector('adjoin-header')?.changeScheme(); break;
      case 'help': void this.help(); break;
    }
  }

  private async help(): Promise<void> {
    await import('./adjoin-help.ts');
    this.requestUpdate();
    await this.updateComplete;
    this.renderRoot.querySelector('adjoin-help')?.show();
  }

  private run({ run }: Command): void {
    switch (run.kind) {
      case 'action': this.form?.ask({ action: run.action, preset: {} }, this.desk.open?.selection ?? {}); break;
      case 'place': this.routes.go({ view: run.view, item: undefined, joint: undefined, ...(this.choices.get(run.view) ?? { options: {} }) }); break;
      case 'desk': this.call(run.call); break;
    }
  }

  private commands(open: OpenCabin | undefined): readonly Command[] {
    const desk = (id: DeskCall, title: string, keys: string | undefined, enabled: true | string, ...keywords: string[]): Command =>
      ({ id: `desk.${id}`, title, group: 'File', keywords, ...(keys === undefined ? {} : { keys }), enabled, run: { kind: 'desk', call: id } });
    const there = open === undefined ? 'No cabin is open' : true;
    const places = open === undefined ? [] : [
      { view: 'cabin', title: 'Cabin', about: 'map and joint strips' } as const, ...registeredViews,
    ].map((place): Command => ({ id: `place.${place.view}`, title: `Go to ${place.title}`, group: 'Places', keywords: [place.about], enabled: true, run: { kind: 'place', view: place.view } }));
    return [
      ...places,
      desk('open', 'Open a cabin file', 'Mod+O', true, 'load'), desk('new', 'Make a new cabin', undefined, true, 'start', 'empty'),
      desk('save', 'Save', 'Mod+S', there, 'write', 'keep'), desk('save as', 'Save under another name', 'Mod+Shift+S', there, 'copy', 'export'),
      desk('undo', open?.undo === undefined ? 'Undo' : `Undo: ${open.undo}`, 'Mod+Z', open?.undo === undefined ? 'Nothing to undo' : true, 'back'),
      desk('redo', open?.redo === undefined ? 'Redo' : `Redo: ${open.redo}`, 'Mod+Shift+Z', open?.redo === undefined ? 'Nothing to redo' : true, 'again'),
      desk('close', 'Close the cabin', undefined, there), desk('ink', 'Change ink and paper', undefined, true, 'dark', 'light', 'night'), desk('help', 'Help: what to do here, words and keys', 'F1', true, 'glossary', 'legend', 'meaning'),
      ...(open === undefined ? [] : actionCommands(open.cabin, open.selection, open.locked)),
    ];
  }

  private menuCommands(open: OpenCabin | undefined): readonly Command[] {
    if (open === undefined || this.menuFor === undefined) return [];
    return commandsOfSelection(actionCommands(open.cabin, open.selection, open.locked));
  }

  // Places

  private placeTitle({ view }: Route): string {
    return view === 'joint' ? 'Joint' : registeredView(view)?.title ?? 'Cabin';
  }

  private readonly linkTo = (change: Partial<Route>): string => formatRoute(changedRoute(this.routes.route, change));

  private get lightName(): string {
    const wanted = this.routes.route.light;
    return wanted !== undefined && findLight(wanted, this.desk.open?.cabin.lights) !== undefined ? wanted : usualLight;
  }

  private places(route: Route): readonly Place[] {
    const address = (view: View): string => this.linkTo({ joint: undefined, item: undefined, ...(view === route.view ? { options: {}, folds: undefined } : this.choices.get(view) ?? { options: {}, folds: undefined }), view });
    const cabin: Place = {
      title: 'Cabin', about: 'Map and joint strips, worst first', address: address('cabin'), here: route.view === 'cabin' || route.view === 'joint', first: false,
    };
    return [cabin, ...registeredViews.map(({ view, title, about, group }, i): Place => ({
      title, about, address: address(view), here: route.view === view, first: group !== (registeredViews[i - 1]?.group ?? 'see'),
    }))];
  }

  /** A view of the registry, loaded once and kept. */
  private async load(view: Route['view']): Promise<ViewElement | undefined> {
    const registered = registeredView(view);
    if (registered === undefined) return undefined;
    const known = this.loaded.get(view);
    if (known !== undefined) return known;
    try {
      await registered.load();
    } catch {
      this.failed = view;
      return undefined;
    }
    const element = this.loaded.get(view) ?? (document.createElement(registered.tag) as ViewElement);
    this.loaded.set(view, element);
    this.failed = undefined;
    this.requestUpdate();
    return element;
  }

  /** Kept from one drawing to the next, since most of them change neither the cabin nor the light. */
  private colours(open: OpenCabin, name: string): ReadonlyMap<string, PartColour> {
    const gamut = this.display.gamut;
    const kept = this.remembered;
    if (kept !== undefined && kept.judgement.parts === open.judgement.parts && kept.light === name && kept.gamut === gamut) return kept.colours;
    const light = findLight(name, open.cabin.lights);
    const colours = light === undefined ? new Map<string, PartColour>() : partColours(open.judgement, light, gamut);
    this.remembered = { judgement: open.judgement, light: name, gamut, colours };
    return colours;
  }

  /** What is left was looked through for what had the focus and was scrolled: to draw what comes in the same task would keep the page too long. */
  protected override async scheduleUpdate(): Promise<void> {
    if (this.routes.left !== undefined) await this.routes.left;
    await super.scheduleUpdate();
  }

  protected override updated(changed: PropertyValues<this>): void {
    super.updated(changed);
    const title = this.titleOf(this.desk.open, this.routes.route);
    if (document.title !== title) document.title = title;
  }

  private titleOf(open: OpenCabin | undefined, route: Route): string {
    if (open === undefined) return 'Adjoin';
    const joint = route.view === 'joint' ? open.cabin.joints.find((one) => one.id === route.joint) : undefined;
    const place = joint === undefined ? registeredView(route.view)?.title : joint.parts.map((id) => open.cabin.parts.find((part) => part.id === id)?.name ?? id).join(' and ');
    return [place, open.cabin.name, 'Adjoin'].filter(Boolean).join(' – ');
  }

  override render(): TemplateResult {
    const { open } = this.desk;
    const { route } = this.routes;
    return html`
      <button class="skip strong" type="button" @click=${() => this.renderRoot.querySelector('main')?.focus()}>To the content</button>
      <adjoin-header
        .open=${open} .groups=${lightGroups(open?.cabin, open?.judgement)} .light=${this.lightName} .sweep=${sweepLights(open?.judgement)} .places=${this.places(route)}
        .home=${open ? this.places(route)[0]?.address ?? '#/' : '#/'}
        @adjoin-light=${(event: CustomEvent<string>) => this.routes.refine({ light: event.detail })}
        @adjoin-call=${(event: CustomEvent<DeskCall>) => this.call(event.detail)}
      ></adjoin-header>
      <main tabindex="-1" aria-label=${open === undefined ? 'Start' : this.placeTitle(route)} @adjoin-light=${(event: CustomEvent<string>) => this.routes.refine({ light: event.detail })}>
        ${this.notices(open)}
        <div class="view">${this.keptCabin(open, route)}${this.view(open, route)}</div>
      </main>
      <adjoin-faults
        .refusal=${this.desk.refusal} .kept=${open?.cabin.name}
        @adjoin-dismiss=${() => this.desk.refuse(undefined)} @adjoin-pick=${this.pick}
      ></adjoin-faults>
      <adjoin-action-form .cabin=${open?.cabin}></adjoin-action-form>
      <adjoin-palette @adjoin-command=${(event: CustomEvent<Command>) => this.run(event.detail)}></adjoin-palette>
      <adjoin-context-menu .commands=${this.menuCommands(open)} @adjoin-command=${(event: CustomEvent<Command>) => this.run(event.detail)}></adjoin-context-menu>
      <adjoin-help .view=${open === undefined ? 'start' : route.view === 'start' ? 'cabin' : route.view}></adjoin-help>
      ${this.slow && this.desk.loading !== undefined ? this.wait(this.desk.loading, open) : nothing}
      ${this.removed !== undefined && open?.undo === this.removed ? this.removal(this.removed) : nothing}
      ${this.drop.over ? html`<div class="drop"><p>${open ? 'Let go to open a cabin or import readings' : 'Let go to open the cabin file'}</p></div>` : nothing}
      <div class="unseen" role="status">${this.said}</div>
    `;
  }

  private notices(open: OpenCabin | undefined): TemplateResult | typeof nothing {
    const { keepFault } = this.desk;
    if (open?.locked === true) {
      return html`<div class="notice" role="status">
        <p>${open.cabin.name} is open in another tab. It can be looked at here, not changed.</p>
        <button type="button" @click=${() => void this.desk.takeOver()}>Take it over</button>
      </div>`;
    }
    if (open !== undefined && keepFault !== undefined) {
      return html`<div class="notice" role="status"><p><b>Changes are not kept.</b> ${keepFault.hint ?? keepFault.found}</p>
        <button type="button" @click=${() => void this.desk.save()}>Save to a file</button></div>`;
    }
    if (open !== undefined && this.desk.keeping !== undefined) {
      return html`<div class="notice" role="status"><p><b>Not safe from a crash yet.</b> The last change has so many readings that keeping it takes a while: a crash now would lose it and what follows it.</p>
        <span aria-hidden="true">${Math.round(100 * this.desk.keeping)} % kept</span></div>`;
    }
    if (this.offline.newer) {
      return html`<div class="notice" role="status"><p>A newer version of Adjoin is ready. It is used once the page is loaded anew; what is open stays open.</p>
        <button type="button" @click=${() => void this.takeNewer()}>Load anew</button></div>`;
    }
    return nothing;
  }

  private view(open: OpenCabin | undefined, route: Route): TemplateResult | HTMLElement | typeof nothing {
    if (open === undefined) {
      const waiting = this.desk.loading !== undefined && route.view !== 'start';
      return waiting ? html`<div class="missing"></div>` : html`<adjoin-start
        .recoverable=${this.desk.recoverable}
        @adjoin-pick=${this.pick} @adjoin-new=${this.makeNew}
        @adjoin-recover=${(event: CustomEvent<string>) => void this.keep(event.detail)}
        @adjoin-forget=${(event: CustomEvent<string>) => void this.desk.forget(event.detail)}
      ></adjoin-start>`;
    }
    if (registeredView(route.view) !== undefined) return this.registered(open, route, this.colours(open, this.lightName));
    if (route.view !== 'joint') return nothing;
    this.visited = route.joint;
    if (open.judging) return html`<div class="missing"></div>`;
    const joint = open.judgement.joints.find((one) => one.id === route.joint);
    const back = formatRoute({ ...route, view: 'cabin', joint: undefined, options: { ...route.options, try: '' }, folds: undefined });
    if (joint === undefined) {
      return html`<div class="missing">
        <h1>There is no joint “${route.joint}” in ${open.cabin.name}.</h1><a class="button" href=${back}>To the cabin</a>
      </div>`;
    }
    const parts = partsById(open.cabin);
    const listed = orderedJoints(open.judgement.joints).filter((one) => one === joint || passes(one, route.filter, parts));
    return html`<adjoin-joint-view
      .cabin=${open.cabin} .judgement=${open.judgement} .joint=${joint} .listed=${listed} .light=${this.lightName} .gamut=${this.display.gamut}
      .back=${back} .linkTo=${jointLinks(route)} .options=${route.options ?? none} .desk=${this.desk} .locked=${open.locked} .selection=${open.selection}
      @adjoin-option=${(event: CustomEvent<Readonly<Record<string, string>>>) => this.routes.refine({ options: { ...this.routes.route.options, ...event.detail } })}
    ></adjoin-joint-view>`;
  }

  /** Map and wall of the open cabin. They stay on the page while one is elsewhere, at rest and out of reach: to lay out a large cabin anew takes long. */
  private keptCabin(open: OpenCabin | undefined, route: Route): AdjoinCabinView | typeof nothing {
    if (open === undefined) this.cabinKept = undefined;
    const isThere = registeredView(route.view) === undefined && route.view !== 'joint';
    const view = open !== undefined && isThere ? (this.cabinKept ??= this.makeCabinView()) : this.cabinKept;
    if (view === undefined) return nothing;
    if (isThere && view.classList.contains(resting)) {
      // A dialog that closes has the whole page styled anew, more than once: what rests until it is gone is so just once.
      if ([...this.loaded.values()].some((one) => one.covers && one.isConnected)) {
        requestAnimationFrame(() => this.requestUpdate());
        return view;
      }
      view.wake();
    }
    view.classList.toggle(resting, !isThere);
    if (open === undefined || !isThere) return view;
    return Object.assign(view, {
      cabin: open.cabin, judgement: open.judgement, judging: open.judging, colours: this.colours(open, this.lightName), paths: open.paths, light: this.lightName, filter: route.filter,
      linkTo: jointLinks(route), selection: open.selection, desk: this.desk, route, go: this.go, locked: open.locked, visited: this.visited,
    });
  }

  private makeCabinView(): AdjoinCabinView {
    const view = document.createElement('adjoin-cabin-view');
    view.addEventListener('adjoin-filter', (event) => this.routes.refine({ view: 'cabin', filter: (event as CustomEvent<JointFilter>).detail }));
    view.addEventListener('adjoin-open-joint', (event) => this.routes.go({ view: 'joint', joint: (event as CustomEvent<string>).detail }));
    return view;
  }

  /** Another place that is gone to without a word of its choices is as it was left. */
  private readonly go = (change: Partial<Route>, refine = false): void => {
    const { view } = change;
    const whole = view === undefined || view === this.routes.route.view || 'options' in change ? change : { ...change, ...(this.choices.get(view) ?? { options: {} }) };
    if (refine) this.routes.refine(whole);
    else this.routes.go(whole);
  };

  private registered(open: OpenCabin, route: Route, colours: ReadonlyMap<string, PartColour>): TemplateResult | ViewElement {
    const element = this.loaded.get(route.view);
    if (element === undefined) {
      if (this.failed !== route.view) void this.load(route.view);
      return this.failed === route.view
        ? html`<div class="missing"><h1>This place could not be loaded.</h1><button type="button" @click=${() => void this.load(route.view)}>Try again</button></div>`
        : html`<div class="missing"></div>`;
    }
    element.open = open;
    element.desk = this.desk;
    element.route = route;
    element.light = this.lightName;
    element.gamut = this.display.gamut;
    element.colours = colours;
    element.linkTo = this.linkTo;
    element.go = this.go;
    return element;
  }

  /** What was taken away may have been out of sight: it is said where one looks, with the way back. */
  private removal(label: string): TemplateResult {
    return html`<div class="wait"><div class="removal">
      <p>Done: ${label}.</p>
      <button type="button" @click=${() => this.desk.undo()}>Undo</button><button type="button" @click=${() => { this.removed = undefined; }}>Close</button>
    </div></div>`;
  }

  private wait(file: string, open: OpenCabin | undefined): TemplateResult {
    const [judged, all] = open?.judging === true ? [this.desk.judged, open.cabin.joints.length] : [0, 0];
    const share = all === 0 ? 0 : judged / all;
    return html`
      <div class="wait">
        <div>
          <svg width="40" height="14" viewBox="0 0 40 14" aria-hidden="true">
            <path d="M0 0h40v6H0z" fill="currentColor" opacity="0.35" />
            ${judged === 0 ? svg`<path class="mover" d="M0 8h16v6H0z" fill="currentColor" />` : svg`<path d=${`M0 8h${40 * share}v6H0z`} fill="currentColor" />`}
          </svg>
          <span>
            <span role="status">Reading and judging ${file}</span>
            ${judged === 0 ? nothing : html`<span
              class="count" role="progressbar" aria-label="Joints judged" aria-valuenow=${judged} aria-valuemin="0" aria-valuemax=${all}
              aria-valuetext=${`${judged} of ${all} joints judged`}
            >${grouped(judged)} of ${grouped(all)} joints judged</span>`}
          </span>
          <button type="button" @click=${() => this.desk.cancel()}>Cancel</button>
        </div>
      </div>
    `;
  }
}

const figures = new Intl.NumberFormat('en-GB');
const grouped = (count: number): string => figures.format(count);

customElements.define('adjoin-workbench', AdjoinWorkbench);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-workbench': AdjoinWorkbench;
  }
}
