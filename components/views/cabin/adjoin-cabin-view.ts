import { css, html } from 'lit';
import type { TemplateResult } from 'lit';
import type { Cabin } from '../../../src/cabin/cabin.ts';
import { cabinIndex } from '../../../src/cabin/cabin-index.ts';
import type { JointResult, Judgement } from '../../../src/harmony/judgement.ts';
import type { JointPaths } from '../../../src/workers/session-protocol.ts';
import type { Selection } from '../../../src/actions/selection.ts';
import type { Desk } from '../../controllers/desk.ts';
import { InTurnElement } from '../../controllers/in-turn-element.ts';
import { PathTrial } from '../../controllers/path-trial.ts';
import type { JointFilter, Route } from '../../controllers/route.ts';
import { filterProperty, isOpenFilter, partsById, passes } from '../../model/joint-filter.ts';
import { orderedJoints } from '../../model/joint-order.ts';
import { pathOfAddress } from '../../model/path-address.ts';
import type { PartColour } from '../../model/part-colours.ts';
import { base } from '../../styles/shared.ts';
import './adjoin-cabin-map.ts';
import './adjoin-wall.ts';

const none = {} as const;

/** Map and wall of one cabin, linked: what is pointed at on one is lit on the other. */
export class AdjoinCabinView extends InTurnElement {
  static override styles = [base, css`
    :host { display: grid; grid-template-columns: minmax(0, 1fr) minmax(480px, 40%); height: 100%; min-height: 0; }
    adjoin-wall { overflow: auto; min-height: 0; border-left: 1px solid var(--line); }
    @media (max-width: 1080px) {
      :host { grid-template-columns: minmax(0, 1fr); grid-template-rows: 46vh auto; height: auto; }
      adjoin-wall { overflow: visible; border: 0; }
    }
    @media (max-width: 760px) { :host { grid-template-rows: auto auto; } }
  `];

  protected static override readonly inTurn = new Set(['cabin', 'judgement', 'filter']);
  static override properties = {
    cabin: { attribute: false }, judgement: { attribute: false }, judging: { type: Boolean }, colours: { attribute: false },
    paths: { attribute: false }, light: {},
    filter: filterProperty, linkTo: { attribute: false }, selection: { attribute: false }, desk: { attribute: false }, route: { attribute: false },
    go: { attribute: false }, locked: { type: Boolean }, visited: {}, pointed: { state: true },
  };

  declare cabin: Cabin;
  declare judgement: Judgement;
  /** The joints are still being judged. */
  declare judging: boolean;
  declare colours: ReadonlyMap<string, PartColour>;
  declare paths: JointPaths;
  declare light: string;
  declare filter: JointFilter;
  declare linkTo: (joint: string) => string;
  declare selection: Selection;
  /** Absent where the view stands without a workbench. */
  declare desk: Desk | undefined;
  declare route: Route;
  declare go: (change: Partial<Route>, refine?: boolean) => void;
  declare locked: boolean;
  /** The joint that was looked at last. */
  declare visited: string | undefined;
  declare pointed: string | undefined;
  private listed: readonly JointResult[] = [];

  constructor() {
    super();
    this.judging = false;
    this.colours = new Map();
    this.paths = new Map();
    this.light = 'D65';
    this.filter = {};
    this.linkTo = () => '#/';
    this.selection = {};
    this.route = { view: 'cabin', filter: {} };
    this.go = () => undefined;
    this.locked = false;
  }

  private readonly trial = new PathTrial(this);

  protected override willUpdate(changed: Map<PropertyKey, unknown>): void {
    const path = pathOfAddress(this.route.options?.['path'], (part) => cabinIndex(this.cabin).parts.has(part));
    this.trial.follow(path, this.cabin, this.judgement, this.judging ? undefined : this.desk);
    if (!changed.has('judgement') && !changed.has('filter') && !changed.has('cabin')) return;
    const ordered = orderedJoints(this.judgement.joints);
    const parts = partsById(this.cabin);
    this.listed = isOpenFilter(this.filter) ? ordered : ordered.filter((joint) => passes(joint, this.filter, parts));
  }

  /** Brings a joint onto the wall where only a part of it is drawn. */
  reveal(joint: string): void {
    this.renderRoot.querySelector('adjoin-wall')?.bring(joint);
  }

  /** After it lay at rest on the page. */
  wake(): void {
    this.renderRoot.querySelector('adjoin-wall')?.wake();
  }

  private readonly option = (event: CustomEvent<Readonly<Record<string, string>>>): void => {
    this.go({ options: { ...this.route.options, ...event.detail } }, true);
  };

  override render(): TemplateResult {
    const point = (event: CustomEvent<string | undefined>): void => {
      this.pointed = event.detail;
    };
    return html`
      <h1 class="unseen">${this.cabin.name}</h1>
      <adjoin-cabin-map
        .cabin=${this.cabin} .judgement=${this.judgement} .listed=${this.listed} .colours=${this.colours} .paths=${this.paths}
        .light=${this.light} .pointed=${this.pointed} .selection=${this.selection} .options=${this.route.options ?? none} .tried=${this.trial.run} .present=${this.judging ? undefined : this.desk?.present} .editable=${this.desk !== undefined && !this.locked}
        @adjoin-point=${point} @adjoin-option=${this.option}
      ></adjoin-cabin-map>
      <adjoin-wall
        .cabin=${this.cabin} .judgement=${this.judgement} .joints=${this.listed} .judging=${this.judging} .colours=${this.colours}
        .light=${this.light} .filter=${this.filter}
        .pointed=${this.pointed} .visited=${this.visited} .linkTo=${this.linkTo} .editable=${this.desk !== undefined && !this.locked} @adjoin-point=${point}
      ></adjoin-wall>
    `;
  }
}

customElements.define('adjoin-cabin-view', AdjoinCabinView);

declare global {
  interface HTMLElementTagNameMap {
    'adjoin-cabin-view': AdjoinCabinView;
  }
}
