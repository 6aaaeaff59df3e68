import type { ReportInput } from './model.ts';
import type { Content } from './markup.ts';
import type { Page } from './page.ts';
import { figure, html } from './markup.ts';
import { reportModel } from './model.ts';
import { pageOf } from './page.ts';
import { markDefinitions } from './pictures.ts';
import { ageing } from './sections/ageing.ts';
import { booth } from './sections/booth.ts';
import { acceptedClashes, clashes } from './sections/clashes.ts';
import { comparison } from './sections/comparison.ts';
import { decisions } from './sections/decisions.ts';
import { drift } from './sections/drift.ts';
import { front } from './sections/front.ts';
import { holding } from './sections/holding.ts';
import { limits, signOff } from './sections/limits-and-sign-off.ts';
import { method } from './sections/method.ts';
import { nearMisses } from './sections/near-misses.ts';
import { openJoints } from './sections/open-joints.ts';
import { partChecks } from './sections/part-checks.ts';
import { ruleBookSection } from './sections/rule-book.ts';
import { sourcesCompared } from './sections/sources-compared.ts';
import { traceability } from './sections/traceability.ts';
import { validation } from './sections/validation.ts';
import { selfContainedPage } from './self-contained-page.ts';
import type { Paper } from './styles/style-sheet.ts';

/** The harmony report as one self-contained page: no script, no network, same input, same bytes. `paper` fixes the format it prints on. */
export function reportHtml(input: ReportInput, paper?: Paper): string {
  const model = reportModel(input);
  const page = pageOf(model, input);
  const sections = [clashes, openJoints, acceptedClashes, nearMisses, partChecks, drift, comparison, ageing, decisions, booth, sourcesCompared, holding, method, ruleBookSection, traceability, validation, limits, signOff]
    .map((make) => make(page))
    .filter((made) => made !== undefined && made !== false);
  const title = `Harmony report, ${model.cabin.name}, ${model.asOf}`;
  return selfContainedPage(title, footText(page), html('main', {}, figure(markDefinitions()), front(page), contents(sections), sections), paper);
}

/** Foot of every printed page. */
const footText = ({ model }: Page): string => `${model.cabin.name}, as of ${model.asOf}`;

function contents(sections: readonly Content[]): Content {
  const links = sections.flatMap((made) => {
    if (made === undefined || made === false || typeof made === 'string' || Array.isArray(made) || !('tag' in made)) return [];
    const heading = made.children.find((child) => typeof child !== 'string' && 'tag' in child && child.tag === 'h2');
    return heading && typeof heading !== 'string' && 'tag' in heading ? [{ id: made.attributes.id, title: heading.children.join('') }] : [];
  });
  return html('nav', { class: 'contents', 'aria-label': 'Contents' }, html('ol', {}, links.map((link) => html('li', {}, html('a', { href: `#${link.id}` }, link.title)))));
}
