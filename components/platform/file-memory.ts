/** A file that was taken beside the open cabin, as this tab keeps it for when the page is loaded anew. */
export interface KeptFile {
  readonly name: string;
  readonly text: string;
}

/** Longer texts are not kept: the storage of a tab is small. */
export const longestKept = 2_000_000;
const keyOf = (place: string): string => `adjoin-file-${place}`;

/** Keeps the file of a place in place of the one before; a text that is too long, or a browser that keeps nothing, leaves none. */
export function keepFile(place: string, file: KeptFile | undefined): void {
  try {
    sessionStorage.removeItem(keyOf(place));
    if (file !== undefined && file.text.length <= longestKept) sessionStorage.setItem(keyOf(place), JSON.stringify(file));
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
