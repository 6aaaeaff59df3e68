import { nothing } from 'lit';
import { directive, Directive } from 'lit/directive.js';
import type { SceneElement, SceneNode } from '../../src/report/scene.ts';

const namespace = 'http://www.w3.org/2000/svg';

const create = (scene: SceneNode): Node =>
  typeof scene === 'string' ? document.createTextNode(scene) : patch(document.createElementNS(namespace, scene.tag), undefined, scene);

const fits = (node: Node, scene: SceneNode): boolean =>
  typeof scene === 'string' ? node.nodeType === Node.TEXT_NODE : node instanceof SVGElement && node.tagName === scene.tag;

function patch(target: SVGElement, before: SceneElement | undefined, after: SceneElement): SVGElement {
  if (before === after) return target;
  for (const name of Object.keys(before?.attributes ?? {})) if (!(name in after.attributes)) target.removeAttribute(name);
  for (const [name, value] of Object.entries(after.attributes)) {
    if (name !== 'xmlns' && before?.attributes[name] !== value) target.setAttribute(name, String(value));
  }
  patchChildren(target, before?.children ?? [], after.children);
  return target;
}

/** Children that are the same objects as before keep their nodes, wherever one was put in or taken out before them. */
function patchChildren(target: SVGElement, before: readonly SceneNode[], after: readonly SceneNode[]): void {
  let old = 0;
  let node: ChildNode | null = target.firstChild;
  after.forEach((child, place) => {
    const was = before[old];
    if (was !== child && typeof child === 'object') {
      if (before[old + 1] === child) {
        const gone = node;
        node = gone?.nextSibling ?? null;
        gone?.remove();
        old += 1;
      } else if (was !== undefined && was === after[place + 1]) {
        target.insertBefore(create(child), node);
        return;
      }
    }
    const present = node;
    node = present?.nextSibling ?? null;
    const drawn = before[old];
    old += 1;
    if (present === null) target.append(create(child));
    else if (drawn === child) return;
    else if (!fits(present, child)) present.replaceWith(create(child));
    else if (typeof child === 'string') present.nodeValue = child;
    else patch(present as SVGElement, typeof drawn === 'object' && drawn.tag === child.tag ? drawn : undefined, child);
  });
  while (node !== null) {
    const gone = node;
    node = gone.nextSibling;
    gone.remove();
  }
}

class SceneDirective extends Directive {
  private drawn: SceneElement | undefined;
  private root: SVGElement | undefined;

  override render(scene: SceneElement | undefined): unknown {
    if (scene === undefined) return nothing;
    this.root = this.root?.tagName === scene.tag
      ? patch(this.root, this.drawn, scene)
      : patch(document.createElementNS(namespace, scene.tag), undefined, scene);
    this.drawn = scene;
    return this.root;
  }
}

/** Renders a scene where the template puts it; a changed scene is patched into the nodes that are there. */
export const scene = directive(SceneDirective);
