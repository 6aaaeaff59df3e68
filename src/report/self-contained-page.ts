import type { Markup } from './markup.ts';
import { escapeText, serialiseMarkup } from './markup.ts';
import { software } from './software.ts';
import type { Paper } from './styles/style-sheet.ts';
import { styleSheet } from './styles/style-sheet.ts';

/** One page that needs no script and no network; `foot` stands at the foot of every printed page. Same input, same bytes. */
export const selfContainedPage = (title: string, foot: string, main: Markup, paper?: Paper): string => [
  '<!doctype html>',
  '<html lang="en">',
  '<head>',
  '<meta charset="utf-8">',
  '<meta name="viewport" content="width=device-width, initial-scale=1">',
  `<meta name="generator" content="${escapeText(`${software.name} ${software.version}`)}">`,
  '<meta http-equiv="Content-Security-Policy" content="default-src \'none\'; style-src \'unsafe-inline\'; font-src data:">',
  `<title>${escapeText(title)}</title>`,
  `<style>${styleSheet(foot, paper)}</style>`,
  '</head>',
  `<body>${serialiseMarkup(main)}</body>`,
  '</html>',
  '',
].join('\n');
