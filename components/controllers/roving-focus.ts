type Axis = 'vertical' | 'horizontal' | 'both';

/**
 * The place among `count` items that a key leads to from `here`: by the arrow keys, Home and End, PageUp and PageDown; undefined for
 * any other key. Stays within the items.
 */
export function roveStep(event: KeyboardEvent, here: number, count: number, axis: Axis): number | undefined {
  if (event.altKey || event.ctrlKey || event.metaKey || count === 0) return undefined;
  const steps: Readonly<Record<string, number>> = {
    ...(axis === 'horizontal' ? {} : { ArrowDown: 1, ArrowUp: -1, PageDown: 8, PageUp: -8 }),
    ...(axis === 'vertical' ? {} : { ArrowRight: 1, ArrowLeft: -1 }),
  };
  const step = steps[event.key];
  const target = event.key === 'Home' ? 0 : event.key === 'End' ? count - 1 : step === undefined ? undefined : here + step;
  return target === undefined ? undefined : Math.max(0, Math.min(count - 1, target));
}

/**
 * Moves the focus among items of one tab stop by the arrow keys, Home and End, PageUp and PageDown.
 * Returns whether the key was taken.
 */
export function roveFocus(event: KeyboardEvent, items: readonly HTMLElement[], axis: Axis = 'vertical'): boolean {
  const path = event.composedPath();
  const target = roveStep(event, items.findIndex((item) => path.includes(item)), items.length, axis);
  if (target === undefined) return false;
  event.preventDefault();
  items[target]?.focus();
  return true;
}
