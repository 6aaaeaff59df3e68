import type { Markup } from '../markup.ts';
import type { Page } from '../page.ts';
import { html } from '../markup.ts';
import { section, table } from '../pieces.ts';

/** What the report does not say. */
export const limits = (page: Page): Markup => section('limits', 'Limits and cautions',
  html('ul', { class: 'caution' }, page.model.cautions.map((caution) => html('li', {}, caution))));

/** Roles that sign, left blank. */
export const signOff = (): Markup => section('sign-off', 'Sign-off',
  table<string>('Seen and agreed', [
    { title: 'Role', cell: (role) => role },
    { title: 'Name', wide: true, cell: () => '' },
    { title: 'Date', cell: () => '' },
    { title: 'Signature', wide: true, cell: () => '' },
  ], ['Design quality', 'Colour and trim design', 'Material engineering', 'Supplier quality', 'Responsible engineer'], 'sign'));
