import type { Page } from 'playwright-core';
import { expect } from 'vitest';

/** What has the focus, in words; a fault where nothing has it or it cannot be seen. */
export interface Focus {
  readonly words: string;
  readonly tag: string;
  readonly fault: string | undefined;
}

/** The focused element through shadow roots, after all that the last key set off has been drawn. */
export const focusOf = (page: Page): Promise<Focus> => page.evaluate(async () => {
  for (let i = 0; i < 2; i += 1) await new Promise((resolve) => { requestAnimationFrame(() => setTimeout(resolve)); });
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  if (active === null || active === document.body || active === document.documentElement) return { words: '', tag: 'body', fault: 'the focus is lost' };
  const root = active.getRootNode() as Document | ShadowRoot;
  const labels = (active as HTMLInputElement).labels;
  const labelledBy = active.getAttribute('aria-labelledby');
  const words = (active.getAttribute('aria-label') ?? (labelledBy === null ? undefined : root.querySelector(`#${labelledBy}`)?.textContent) ?? (labels?.length ? [...labels].map((label) => label.textContent).join(' ') : active.textContent) ?? '')
    .replace(/\s+/g, ' ').trim();
  const { width, height } = active.getBoundingClientRect();
  const style = getComputedStyle(active);
  const shown = style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 1;
  const fault = !active.checkVisibility() || width === 0 || height === 0 ? `the focus is on something hidden: ${active.localName}` : !shown ? `the focus cannot be seen on ${active.localName} ${words.slice(0, 40)}` : undefined;
  return { words, tag: active.localName, fault };
});

/** Presses keys one after the other; after each the focus must be somewhere and be seen. */
export async function press(page: Page, ...keys: readonly string[]): Promise<Focus> {
  let focus: Focus = { words: '', tag: 'body', fault: undefined };
  for (const key of keys) {
    await page.keyboard.press(key);
    focus = await focusOf(page);
    // After the last stop of the page a browser goes through its own before it begins again.
    if (key.endsWith('Tab') && focus.tag === 'body') {
      await page.keyboard.press(key);
      focus = await focusOf(page);
    }
    // On a busy machine what closes or goes may need some frames more until the focus is put beside it.
    for (let again = 0; focus.tag === 'body' && again < 20; again += 1) {
      await page.waitForTimeout(50);
      focus = await focusOf(page);
    }
    expect(focus.fault, `after ${key}`).toBeUndefined();
  }
  return focus;
}

/** Goes on by Tab, or another key, until something whose words fit has the focus. */
export async function pressUntil(page: Page, words: RegExp, key = 'Tab', most = 80): Promise<Focus> {
  const met: string[] = [];
  for (let i = 0; i < most; i += 1) {
    const focus = await press(page, key);
    if (words.test(focus.words)) return focus;
    met.push(focus.words.slice(0, 30));
  }
  throw new Error(`${words} was not reached by ${most} times ${key}; met ${met.join(' | ')}`);
}

/** Types into the field that has the focus. */
export async function type(page: Page, text: string): Promise<void> {
  await page.keyboard.type(text);
  expect((await focusOf(page)).fault).toBeUndefined();
}

/** Chooses a command of the palette by some words of it. */
export async function command(page: Page, words: string): Promise<Focus> {
  await press(page, 'Control+k');
  await type(page, words);
  return press(page, 'Enter');
}
