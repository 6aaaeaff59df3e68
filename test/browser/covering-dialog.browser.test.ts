import { userEvent } from 'vitest/browser';
import { expect, test } from 'vitest';
import { deepFocus } from '../../components/model/focus-path.ts';
import { until } from '../support/screen.ts';
import { desk, eachWithWorkbench, expectAccessible, one, openByDrop } from '../support/whole-workbench.ts';

/**
 * Palette and forms lie over the page as modal dialogs do, as the dialog pattern of the ARIA Authoring Practices Guide asks: Tab goes round in
 * them, Escape closes them, what lies below takes neither keys nor pointer, and the focus goes back where it was.
 */
eachWithWorkbench();

const strip = (): HTMLElement => one('adjoin-strip')?.shadowRoot?.querySelector('a') as HTMLElement;
const dialogOf = (tag: string): HTMLDialogElement => one(tag)?.shadowRoot?.querySelector('dialog') as HTMLDialogElement;
const holds = (dialog: HTMLDialogElement): boolean => dialog.contains(deepFocus() ?? null);

/** What a pointer at the middle of an element would hit, through shadow roots. */
function hitAt(element: Element): Element | null {
  const { left, top, width, height } = element.getBoundingClientRect();
  let hit = document.elementFromPoint(left + width / 2, top + height / 2);
  for (let within = hit?.shadowRoot?.elementFromPoint(left + width / 2, top + height / 2); within && within !== hit; within = hit?.shadowRoot?.elementFromPoint(left + width / 2, top + height / 2)) hit = within;
  return hit;
}

async function onStrip(): Promise<void> {
  await openByDrop();
  await until('the first strip', strip);
  strip().focus();
  desk().select({ joint: desk().present?.joints[0]?.id ?? '' });
}

async function shown(tag: string): Promise<HTMLDialogElement> {
  return until(tag, () => (dialogOf(tag)?.open && holds(dialogOf(tag)) ? dialogOf(tag) : undefined));
}

test('the palette keeps the focus and the pointer to itself, and gives the focus back', async () => {
  await onStrip();
  const before = strip();
  expect(hitAt(before)?.closest('dialog')).toBeNull();
  await userEvent.keyboard('{Control>}k{/Control}');
  const palette = await shown('adjoin-palette');
  expect(palette.contains(hitAt(before))).toBe(true);
  for (const keys of ['{Tab}', '{Tab}', '{Shift>}{Tab}{/Shift}', '{Shift>}{Tab}{/Shift}']) {
    await userEvent.keyboard(keys);
    expect(holds(palette), keys).toBe(true);
  }
  await expectAccessible();
  await userEvent.keyboard('{Escape}');
  expect(palette.open).toBe(false);
  await until('the focus on the strip', () => deepFocus() === before);
  expect(hitAt(before)?.closest('dialog')).toBeNull();
});

test('a press beside the palette closes it and does nothing below', async () => {
  await onStrip();
  await userEvent.keyboard('{Control>}k{/Control}');
  const palette = await shown('adjoin-palette');
  const address = location.hash;
  await userEvent.click(palette, { position: { x: 4, y: palette.getBoundingClientRect().height - 4 } });
  await until('the palette to be gone', () => !palette.open);
  expect(location.hash).toBe(address);
});

test('Tab goes round in a form, and its keys are no commands for what lies below', async () => {
  await onStrip();
  const before = strip();
  const joints = desk().present?.joints.length;
  await userEvent.keyboard('{F2}');
  const form = await shown('adjoin-action-form');
  const first = deepFocus();
  const met = new Set<Element | undefined>();
  for (let step = 0; step < 12 && !met.has(deepFocus()); step += 1) {
    met.add(deepFocus());
    await userEvent.keyboard('{Tab}');
    expect(holds(form)).toBe(true);
  }
  expect(deepFocus()).toBe(first);
  expect(met.size).toBe(form.querySelectorAll('input, select, textarea, button').length);
  await userEvent.keyboard('{Shift>}{Tab}{/Shift}');
  expect(deepFocus()?.matches('[type=submit]')).toBe(true);
  await userEvent.keyboard('{Delete}');
  expect(form.open).toBe(true);
  expect(desk().present?.joints.length).toBe(joints);
  await expectAccessible();
  await userEvent.keyboard('{Escape}');
  expect(form.open).toBe(false);
  await until('the focus on the strip', () => deepFocus() === before);
});

test('of two over each other the upper one has the keys, and the lower one the focus after it', async () => {
  await onStrip();
  await userEvent.keyboard('{F2}');
  const form = await shown('adjoin-action-form');
  const field = deepFocus();
  await userEvent.keyboard('{Control>}k{/Control}');
  const palette = await shown('adjoin-palette');
  await userEvent.keyboard('{Tab}');
  expect(holds(palette)).toBe(true);
  await userEvent.keyboard('{Escape}');
  expect([palette.open, form.open]).toEqual([false, true]);
  await until('the focus in the form', () => deepFocus() === field);
  await userEvent.keyboard('{Escape}');
  expect(form.open).toBe(false);
});

test('over a review, which is modal, a form can be filled in, and Escape leaves the form only', async () => {
  await onStrip();
  location.hash = '#/review';
  const review = await until('the review', () => one('adjoin-review-view')?.shadowRoot?.querySelector<HTMLDialogElement>('dialog[open]'));
  await until('the first joint', () => review.querySelector('.told'));
  await userEvent.keyboard('d');
  const form = await shown('adjoin-action-form');
  await userEvent.keyboard('{Tab}');
  expect(holds(form)).toBe(true);
  await userEvent.keyboard('{Escape}');
  await until('the form to be gone', () => !form.open);
  expect(review.open).toBe(true);
  expect(location.hash).toMatch(/^#\/review/u);
});
