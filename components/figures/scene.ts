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
  after.children.forEach((child, i) => {
    const present = target.childNodes[i];
    if (present === undefined) target.append(create(child));
    else if (!fits(present, child)) present.replaceWith(create(child));
    else if (typeof child === 'string') present.nodeValue = child;
    else {
      const old = before?.children[i];
      patch(present as SVGElement, typeof old === 'object' && old.tag === child.tag ? old : undefined, child);
    }
  });
  while (target.childNodes.length > after.children.length) target.lastChild?.remove();
  return target;
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
