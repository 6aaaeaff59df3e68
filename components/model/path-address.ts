/** Parts of a path as an address carries them, in their order; empty below two. */
export const pathAddress = (parts: readonly string[]): string => (parts.length < 2 ? '' : parts.map(encodeURIComponent).join(','));

/** Reads them back; parts that the cabin does not have, or that come again, are left out. */
export function pathOfAddress(text: string | undefined, has: (part: string) => boolean): readonly string[] {
  const names = (text === undefined || text === '' ? [] : text.split(',')).flatMap((piece) => {
    try {
      return [decodeURIComponent(piece)];
    } catch {
      return [];
    }
  });
  return [...new Set(names)].filter(has);
}
