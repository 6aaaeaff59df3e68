/** A drawing as data: SVG elements with plain attributes. Pages render it, reports serialise it. */
export interface SceneElement {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly SceneNode[];
}
export type SceneNode = SceneElement | string;

type Attribute = string | number | boolean | undefined;

/**
 * Makes one element of a scene.
 * Numbers are rounded to 1/100 px so that the same drawing gives the same bytes on every engine;
 * attributes that are `undefined` or `false` are left out, `true` becomes an empty attribute.
 */
export function element(
  tag: string,
  attributes: Readonly<Record<string, Attribute>> = {},
  ...children: readonly (SceneNode | undefined | readonly SceneNode[])[]
): SceneElement {
  const kept: Record<string, string | number> = {};
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined || value === false) continue;
    kept[name] = value === true ? '' : typeof value === 'number' ? round(value) : value;
  }
  return { tag, attributes: kept, children: children.flat().filter((child) => child !== undefined) as SceneNode[] };
}

/** Coordinate rounded to 1/100 px; negative zero becomes zero. */
export const round = (value: number): number => Math.round(value * 100) / 100 + 0;

/** Path data of a polyline through the points, in px. */
export const pathThrough = (points: readonly (readonly [number, number])[], closed = false): string =>
  points.length === 0 ? '' : `M${points.map(([x, y]) => `${round(x)} ${round(y)}`).join('L')}${closed ? 'Z' : ''}`;

/** The root of a drawing that fills a box of `width` x `height` px; `label` is its name for those who cannot see it. */
export function drawing(width: number, height: number, label: string | undefined, ...children: readonly (SceneNode | undefined | readonly SceneNode[])[]): SceneElement {
  return element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${round(width)} ${round(height)}`,
      width,
      height,
      role: label === undefined ? undefined : 'img',
      'aria-label': label,
      'aria-hidden': label === undefined ? 'true' : undefined,
    },
    ...children,
  );
}

const escapes: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (character) => escapes[character] as string);

/** The scene as SVG text, safe to place in HTML or XML. */
export function serialiseScene(node: SceneNode): string {
  if (typeof node === 'string') return escaped(node);
  const attributes = Object.entries(node.attributes).map(([name, value]) => ` ${name}="${escaped(String(value))}"`).join('');
  if (node.children.length === 0) return `<${node.tag}${attributes}/>`;
  return `<${node.tag}${attributes}>${node.children.map(serialiseScene).join('')}</${node.tag}>`;
}
