import type { SceneElement } from './scene.ts';
import { serialiseScene } from './scene.ts';

/** An element of a page. Text is always escaped; drawings are scenes. */
export interface Markup {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly MarkupNode[];
}
export type MarkupNode = Markup | { readonly scene: SceneElement } | string;
export type Content = MarkupNode | undefined | false | readonly Content[];

type Attributes = Readonly<Record<string, string | number | boolean | undefined>>;

/** Makes an element; `undefined` and `false` attributes and children are left out, `true` is an empty attribute. */
export function html(tag: string, attributes: Attributes, ...content: readonly Content[]): Markup {
  const kept: Record<string, string> = {};
  for (const [name, value] of Object.entries(attributes)) {
    if (value !== undefined && value !== false) kept[name] = value === true ? '' : String(value);
  }
  return { tag, attributes: kept, children: flattened(content) };
}

function flattened(content: readonly Content[]): MarkupNode[] {
  return content.flatMap((item): MarkupNode[] => {
    if (item === undefined || item === false) return [];
    return Array.isArray(item) ? flattened(item as readonly Content[]) : [item as MarkupNode];
  });
}

/** A drawing in a page. */
export const figure = (scene: SceneElement): MarkupNode => ({ scene });

/** A value with its full precision for machines and its rounded print for people. */
export const data = (value: number | undefined, print: string): Content =>
  (value === undefined || !Number.isFinite(value) ? print : html('data', { value: String(value) }, print));

/** A name out of a file: kept apart from the direction of the text around it. */
export const named = (text: string): Markup => html('bdi', {}, text);

const voids = new Set(['br', 'col', 'hr', 'meta', 'link', 'wbr']);
const entities: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/**
 * Text safe in a page: markup escaped; control characters and marks that would reorder the text
 * around them (bidirectional embeddings, overrides and isolates) shown by their code point.
 */
export const escapeText = (text: string): string => obedient(text.replace(/[&<>"']/g, (character) => entities[character]));

const obedient = (text: string): string => text
  .replace(/[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u200e\u200f\u061c\u202a-\u202e\u2066-\u2069\ufeff]/g,
    (character) => `\\u{${character.charCodeAt(0).toString(16)}}`)
  .replace(/\p{Cs}/gu, '\ufffd');

/** The element and all in it as HTML. */
export function serialiseMarkup(node: MarkupNode): string {
  if (typeof node === 'string') return escapeText(node);
  if ('scene' in node) return obedient(serialiseScene(node.scene));
  const attributes = Object.entries(node.attributes).map(([name, value]) => ` ${name}="${escapeText(value)}"`).join('');
  const open = `<${node.tag}${attributes}>`;
  if (voids.has(node.tag)) return open;
  return `${open}${node.children.map(serialiseMarkup).join('')}</${node.tag}>${blocks.has(node.tag) ? '\n' : ''}`;
}

/** Elements after which a line end keeps the source readable. */
const blocks = new Set(['p', 'tr', 'table', 'section', 'article', 'header', 'footer', 'h1', 'h2', 'h3', 'li', 'ul', 'ol', 'div', 'dl', 'figure', 'head', 'title', 'style', 'body', 'details', 'main', 'nav']);
