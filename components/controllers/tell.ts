/** Tells everything above an element, out of shadow trees too. */
export const tell = (from: EventTarget, name: string, detail?: unknown): boolean => from.dispatchEvent(new CustomEvent(name, { detail, bubbles: true, composed: true }));
