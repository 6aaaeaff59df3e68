import { html, LitElement, nothing } from 'lit';
import type { TemplateResult } from 'lit';
import { announceEvent } from '../controllers/announcer.ts';
import { CabinController } from '../controllers/cabin-controller.ts';
import type { OpenCabin } from '../controllers/cabin-controller.ts';
import { RouteController } from '../controllers/route-controller.ts';
import { formatRoute } from '../controllers/route.ts';
import type { JointFilter, Route } from '../controllers/route.ts';
import { findLight, lightGroups, sweepLights } from '../model/light-groups.ts';
import { partsById, passes } from '../model/joint-filter.ts';
import { partColours } from '../model/part-colours.ts';
import type { PartColour } from '../model/part-colours.ts';
import { worstFirst } from '../../src/report/worst-first.ts';
import { applyScheme, readScheme } from '../platform/colour-scheme.ts';
import { DisplayGamut } from '../platform/display-gamut.ts';
import { FileDrop } from '../platform/file-drop.ts';
import { pickFile } from '../platform/pick-file.ts';
import { base, controls } from '../styles/shared.ts';
import '../views/cabin/adjoin-cabin-view.ts';
import '../views/joint/adjoin-joint-view.ts';
import './adjoin-faults.ts';
import './adjoin-header.ts';
import './adjoin-start.ts';
import { styles } from './workbench.styles.ts';

const usualLight = 'D65';

interface RememberedColours {
  readonly open: OpenCabin;
  readonly light: string;
  readonly gamut: string;
  readonly colours: ReadonlyMap<string, PartColour>;
}

/** The shell: what is open, where one is, under which light, and the things that float above: faults, drop, waiting. */
export class AdjoinWorkbench extends LitElement {
  static override styles = [base, controls, styles];
  static override properties = { said: { state: true }, slow: { state: true } };

  declare said: string;
  /** Opening takes long enough to say so. */
  declare slow: boolean;
  private readonly cabins = new CabinController(this);
  private readonly routes = new RouteController(this, (route) => this.arrived(route));
  private readonly display = new DisplayGamut(this);
  private readonly drop = new FileDrop(this, (files) => void this.takeFiles(files));
  private address: string | undefined;

  constructor() {
    super();
    this.said = '';
    this.slow = false;
    applyScheme(readScheme());
    this.addEventListener(announceEvent, (event) => {
      this.said = (event as CustomEvent<string>).detail;
    });
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.arrived(this.routes.route);
  }

  private arrived(route: Route): void {
    if (route.open === undefined || route.open === this.address) return;
    this.address = route.open;
    void this.waiting(this.cabins.openAddress(route.open)).then((taken) => {
      if (taken) this.opened();
    });
  }

  private async takeFiles(files: readonly File[]): Promise<void> {
    const [file] = files;
    if (file === undefined) return;
    if (files.length > 1) {
      this.cabins.refuse({
        file: `${files.length} files`,
        issues: [{
          code: 'several-files', severity: 'error', found: files.map((one) => one.name).join(', '), expected: 'one cabin file',
          hint: 'Drop the cabin file alone.',
        }],
      });
      return;
    }
    if (!(await this.waiting(this.cabins.openFile(file)))) return;
    this.address = undefined;
    this.routes.go({ view: 'cabin', open: undefined, filter: {}, joint: undefined });
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
    const open = this.cabins.open;
    if (open === undefined) return;
    document.title = `${open.cabin.name} – Adjoin`;
    const { holds, clashes, open: undecided } = open.judgement.summary;
    this.said = `${open.cabin.name} is open: ${holds} joints hold, ${clashes} clash, ${undecided} are open.`;
  }

  private async pick(): Promise<void> {
    this.cabins.refuse(undefined);
    const file = await pickFile('.json,application/json');
    if (file !== undefined) await this.takeFiles([file]);
  }

  private readonly linkTo = (joint: string): string => formatRoute({ ...this.routes.route, view: 'joint', joint });

  private get lightName(): string {
    const wanted = this.routes.route.light;
    return wanted !== undefined && findLight(wanted, this.cabins.open?.cabin.lights) !== undefined ? wanted : usualLight;
  }

  private remembered: RememberedColours | undefined;

  /** Kept from one drawing to the next, since most of them change neither the cabin nor the light. */
  private colours(open: OpenCabin, name: string): ReadonlyMap<string, PartColour> {
    const gamut = this.display.gamut;
    const kept = this.remembered;
    if (kept !== undefined && kept.open === open && kept.light === name && kept.gamut === gamut) return kept.colours;
    const light = findLight(name, open.cabin.lights);
    const colours = light === undefined ? new Map<string, PartColour>() : partColours(open.judgement, light, gamut);
    this.remembered = { open, light: name, gamut, colours };
    return colours;
  }

  override render(): TemplateResult {
    const open = this.cabins.open;
    const { route } = this.routes;
    return html`
      <button class="skip strong" type="button" @click=${() => this.renderRoot.querySelector('main')?.focus()}>To the content</button>
      <adjoin-header
        .open=${open} .groups=${lightGroups(open?.cabin, open?.judgement)} .light=${this.lightName} .sweep=${sweepLights(open?.judgement)}
        .home=${open ? formatRoute({ ...route, view: 'cabin', joint: undefined }) : '#/'}
        @adjoin-light=${(event: CustomEvent<string>) => this.routes.refine({ light: event.detail })}
        @adjoin-pick=${this.pick}
      ></adjoin-header>
      <main tabindex="-1">${this.view(open, route)}</main>
      <adjoin-faults
        .refusal=${this.cabins.refusal} .kept=${open?.cabin.name}
        @adjoin-dismiss=${() => this.cabins.refuse(undefined)} @adjoin-pick=${this.pick}
      ></adjoin-faults>
      ${this.slow && this.cabins.loading !== undefined ? this.wait(this.cabins.loading) : nothing}
      ${this.drop.over ? html`<div class="drop"><p>Let go to open the cabin file</p></div>` : nothing}
      <div class="unseen" role="status">${this.said}</div>
    `;
  }

  private view(open: OpenCabin | undefined, route: Route): TemplateResult {
    if (open === undefined) {
      const waiting = this.cabins.loading !== undefined && route.view !== 'start';
      return waiting ? html`<div class="missing"></div>` : html`<adjoin-start @adjoin-pick=${this.pick}></adjoin-start>`;
    }
    const colours = this.colours(open, this.lightName);
    if (route.view !== 'joint') {
      return html`<adjoin-cabin-view
        .cabin=${open.cabin} .judgement=${open.judgement} .judging=${open.judging} .colours=${colours} .paths=${open.paths}
        .light=${this.lightName} .filter=${route.filter} .linkTo=${this.linkTo}
        @adjoin-filter=${(event: CustomEvent<JointFilter>) => this.routes.refine({ view: 'cabin', filter: event.detail })}
        @adjoin-open-joint=${(event: CustomEvent<string>) => this.routes.go({ view: 'joint', joint: event.detail })}
      ></adjoin-cabin-view>`;
    }
    if (open.judging) return html`<div class="missing"></div>`;
    const joint = open.judgement.joints.find((one) => one.id === route.joint);
    const back = formatRoute({ ...route, view: 'cabin', joint: undefined });
    if (joint === undefined) {
      return html`<div class="missing">
        <h1>There is no joint “${route.joint}” in ${open.cabin.name}.</h1><a class="button" href=${back}>To the cabin</a>
      </div>`;
    }
    const parts = partsById(open.cabin);
    const listed = worstFirst(open.judgement.joints).filter((one) => one === joint || passes(one, route.filter, parts));
    return html`<adjoin-joint-view
      .cabin=${open.cabin} .judgement=${open.judgement} .joint=${joint} .listed=${listed} .light=${this.lightName} .gamut=${this.display.gamut}
      .back=${back} .linkTo=${this.linkTo}
      @adjoin-light=${(event: CustomEvent<string>) => this.routes.refine({ light: event.detail })}
    ></adjoin-joint-view>`;
  }

  private wait(file: string): TemplateResult {
    return html`
      <div class="wait">
        <div role="status">
          <svg width="40" height="14" viewBox="0 0 40 14" aria-hidden="true">
            <path d="M0 0h40v6H0z" fill="currentColor" opacity="0.35" /><path class="mover" d="M0 8h16v6H0z" fill="currentColor" />
          </svg>
          <span>Reading and judging ${file}</span>
          <button type="button" @click=${() => this.cabins.cancel()}>Cancel</button>
        </div>
      </div>
    `;
  }
}

customElements.define('adjoin-workbench', AdjoinWorkbench);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-workbench': AdjoinWorkbench;
  }
}
