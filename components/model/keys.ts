/** Keys as actions write them: `Delete`, `F2`, `Mod+Shift+Z`; `Mod` is Ctrl, or Cmd on a Mac. */
export function keysOf(event: KeyboardEvent, mac = isMac()): string {
  const mod = mac ? event.metaKey : event.ctrlKey;
  const key = event.key.length === 1 ? event.key.toUpperCase() : event.key;
  return [mod ? 'Mod' : '', event.altKey ? 'Alt' : '', event.shiftKey && (mod || event.key.length > 1) ? 'Shift' : '', key].filter(Boolean).join('+');
}

export const isMac = (): boolean => /mac/i.test(navigator.platform);

/** Keys as a person reads them. */
export function keysText(keys: string, mac = isMac()): string {
  const words = keys.split('+').map((key) => (key === 'Mod' ? (mac ? '⌘' : 'Ctrl') : key === 'Delete' ? 'Del' : key.startsWith('Arrow') ? { Up: '↑', Down: '↓', Left: '←', Right: '→' }[key.slice(5)] ?? key : key));
  return words.join(mac ? ' ' : '+');
}

/** Whether typing belongs to a field and not to the workbench. */
export function isTyping(event: Event): boolean {
  const [target] = event.composedPath();
  if (!(target instanceof HTMLElement)) return false;
  return target.isContentEditable || target instanceof HTMLTextAreaElement || target instanceof HTMLSelectElement
    || (target instanceof HTMLInputElement && !['button', 'checkbox', 'radio', 'range', 'submit'].includes(target.type));
}
