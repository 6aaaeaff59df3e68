import { html } from 'lit';
import type { TemplateResult } from 'lit';
import { jointLinks } from '../controllers/joint-links.ts';
import type { OpenCabin } from '../controllers/open-cabin.ts';
import { formatRoute } from '../controllers/route.ts';
import type { Route } from '../controllers/route.ts';
import { partsById, passes } from '../model/joint-filter.ts';
import { orderedJoints } from '../model/joint-order.ts';
import '../views/joint/adjoin-joint-view.ts';
import type { ShellParts } from './shell-parts.ts';

const none: Readonly<Record<string, string>> = {};

/** The joint that the address names, among those that pass the filter of the wall; where there is no such one that is said, with the way back. */
export function jointPlace(open: OpenCabin, route: Route, { desk, whereabouts, lighting }: ShellParts): TemplateResult {
  if (open.judging) return html`<div class="missing"></div>`;
  const { joints } = open.judgement;
  const joint = joints.find((one) => one.id === route.joint);
  const back = formatRoute({ ...route, view: 'cabin', joint: undefined, options: { ...route.options, try: '' }, folds: undefined });
  if (joint === undefined) {
    return html`<div class="missing">
      <h1>There is no joint “${route.joint}” in ${open.cabin.name}.</h1><a class="button" href=${back}>To the cabin</a>
    </div>`;
  }
  const parts = partsById(open.cabin);
  const listed = orderedJoints(joints).filter((one) => one === joint || passes(one, route.filter, parts));
  return html`<adjoin-joint-view
    .cabin=${open.cabin} .judgement=${open.judgement} .joint=${joint} .listed=${listed} .light=${lighting.light} .gamut=${lighting.gamut}
    .back=${back} .linkTo=${jointLinks(route)} .options=${route.options ?? none} .desk=${desk} .locked=${open.locked} .selection=${open.selection}
    @adjoin-option=${(event: CustomEvent<Readonly<Record<string, string>>>) => whereabouts.refine({ options: { ...whereabouts.route.options, ...event.detail } })}
  ></adjoin-joint-view>`;
}
