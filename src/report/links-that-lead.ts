import type { Markup, MarkupNode } from './markup.ts';

/** The page with links into sections that were left out made plain text. */
export function linksThatLead(main: Markup): Markup {
  const ids = new Set<string>();
  collect(main, ids);
  return mended(main, ids);
}

function collect(node: MarkupNode, ids: Set<string>): void {
  if (typeof node === 'string' || 'scene' in node) return;
  if (node.attributes.id !== undefined) ids.add(node.attributes.id);
  for (const child of node.children) collect(child, ids);
}

function mended(node: Markup, ids: ReadonlySet<string>): Markup {
  const children = node.children.map((child) => (typeof child === 'string' || 'scene' in child ? child : mended(child, ids)));
  const lost = node.tag === 'a' && node.attributes.href?.startsWith('#') === true && !ids.has(node.attributes.href.slice(1));
  return lost ? { tag: 'span', attributes: {}, children } : { ...node, children };
}
