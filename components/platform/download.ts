/** Gives a text to the user as a file among the downloads. Must be called from a click or key. */
export function downloadText(name: string, text: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** A name that any system takes for a file. */
export const fileName = (...words: readonly string[]): string =>
  words.map((word) => word.normalize('NFC').replaceAll(/[^\p{L}\p{N}._-]+/gu, '-').replaceAll(/^-+|-+$/gu, '')).filter(Boolean).join('-').slice(0, 120);
