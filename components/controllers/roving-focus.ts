/**
 * Moves the focus among items of one tab stop by the arrow keys, Home and End, PageUp and PageDown.
 * Returns whether the key was taken.
 */
export function roveFocus(event: KeyboardEvent, items: readonly HTMLElement[], axis: 'vertical' | 'horizontal' | 'both' = 'vertical'): boolean {
  if (event.altKey || event.ctrlKey || event.metaKey || items.length === 0) return false;
  const path = event.composedPath();
  const here = items.findIndex((item) => path.includes(item));
  const steps: Readonly<Record<string, number>> = {
    ...(axis === 'horizontal' ? {} : { ArrowDown: 1, ArrowUp: -1, PageDown: 8, PageUp: -8 }),
    ...(axis === 'vertical' ? {} : { ArrowRight: 1, ArrowLeft: -1 }),
  };
  const step = steps[event.key];
  const target = event.key === 'Home' ? 0 : event.key === 'End' ? items.length - 1 : step === undefined ? undefined : here + step;
  if (target === undefined) return false;
  event.preventDefault();
  items[Math.max(0, Math.min(items.length - 1, target))]?.focus();
  return true;
}
