import axe from 'axe-core';
import type { LitElement } from 'lit';
import { resting } from '../../components/model/focus-path.ts';
import '../../components/styles/tokens.css';

/** Puts an element on the page with its properties and waits until it and everything in it has drawn. */
export async function mount<E extends LitElement>(tag: string, properties: Partial<E>): Promise<E> {
  document.body.replaceChildren();
  document.documentElement.lang = 'en';
  document.title = 'Test';
  const element = document.createElement(tag) as E;
  Object.assign(element, properties);
  const frame = document.createElement('div');
  frame.append(element);
  document.body.append(frame);
  await settled(element);
  return element;
}

/** Waits for two frames beyond the element's own update, so that sizes are measured and drawn by. */
export async function settled(element: LitElement): Promise<void> {
  await element.updateComplete;
  await frames(3);
}

export async function frames(count: number): Promise<void> {
  for (let i = 0; i < count; i += 1) await new Promise((resolve) => requestAnimationFrame(resolve));
}

/** Waits until something is there; fails with its name after a while. */
export async function until<T>(what: string, found: () => T | null | undefined | false, timeoutMs = 20_000): Promise<T> {
  const end = performance.now() + timeoutMs;
  for (;;) {
    const value = found();
    if (value !== null && value !== undefined && value !== false) return value;
    if (performance.now() > end) throw new Error(`waited in vain for ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 25));
  }
}

/** What axe finds wrong by WCAG 2.2 A and AA and its own good habits, a line each. */
export async function faultsOfAccess(context: Element): Promise<string[]> {
  const results = await axe.run(context, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'], rules: { region: { enabled: false } } });
  return results.violations.flatMap((violation) => violation.nodes.map((node) => `${violation.id}: ${node.target.join(' ')} ${node.failureSummary ?? ''}`));
}

/** All elements that fit a selector, through open shadow roots, but for those of a view that lies at rest on the page. */
export function deep<E extends Element = HTMLElement>(root: ParentNode, selector: string): E[] {
  const shown = (element: Element): boolean => element.closest(`.${resting}`) === null;
  const found = [...root.querySelectorAll<E>(selector)].filter(shown);
  for (const element of root.querySelectorAll('*')) if (element.shadowRoot && shown(element)) found.push(...deep<E>(element.shadowRoot, selector));
  return found;
}

export const setScheme = (scheme: 'light' | 'dark'): void => {
  document.documentElement.dataset['theme'] = scheme;
};
