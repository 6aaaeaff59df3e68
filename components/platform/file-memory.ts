/** A file that was taken beside the open cabin, as this tab keeps it for when the page is loaded anew. */
export interface KeptFile {
  readonly name: string;
  readonly text: string;
}

/** Longer texts are not kept: the storage of a tab is small. */
const longest = 2_000_000;
const keyOf = (place: string): string => `adjoin-file-${place}`;

/** Keeps the file of a place; a text that is too long, or a browser that keeps nothing, leaves none. */
export function keepFile(place: string, { name, text }: KeptFile): void {
  try {
    sessionStorage.removeItem(keyOf(place));
    if (text.length <= longest) sessionStorage.setItem(keyOf(place), JSON.stringify({ name, text }));
  } catch {
    // It is asked for again.
  }
}

/** The file that a place kept in this tab. */
export function keptFile(place: string): File | undefined {
  try {
    const found: unknown = JSON.parse(sessionStorage.getItem(keyOf(place)) ?? 'null');
    if (typeof found !== 'object' || found === null) return undefined;
    const { name, text } = found as Partial<KeptFile>;
    return typeof name === 'string' && typeof text === 'string' ? new File([text], name) : undefined;
  } catch {
    return undefined;
  }
}
