import type { ReportInput } from './model.ts';
import type { Content } from './markup.ts';
import type { Page } from './page.ts';
import { figure, html } from './markup.ts';
import { reportModel } from './model.ts';
import { linksThatLead } from './links-that-lead.ts';
import { pageOf } from './page.ts';
import { markDefinitions } from './pictures.ts';
import { reportSections } from './sections/all-sections.ts';
import { front } from './sections/front.ts';
import { selfContainedPage } from './self-contained-page.ts';
import type { Paper } from './styles/style-sheet.ts';

export interface ReportForm {
  /** Fixes the format that it prints on. */
  readonly paper?: Paper;
  /** Ids of sections that are left out; those that are needed stay. */
  readonly without?: readonly string[];
}

/** The harmony report as one self-contained page: no script, no network, same input, same bytes. */
export function reportHtml(input: ReportInput, { paper, without = [] }: ReportForm = {}): string {
  const model = reportModel(input);
  const page = pageOf(model, input);
  const wanted = reportSections.filter(({ id, needed }) => needed === true || !without.includes(id));
  const made = [front(page), ...wanted.map(({ make }) => make(page)).filter((one) => one !== undefined && one !== false)];
  const [head, ...sections] = made;
  const title = `Harmony report, ${model.cabin.name}, ${model.asOf}`;
  const main = html('main', {}, figure(markDefinitions()), head, contents(sections), sections);
  return selfContainedPage(title, footText(page), linksThatLead(main), paper);
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
