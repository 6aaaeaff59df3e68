const sniffedBytes = 4096;

/** The one cabin file among files that were dropped, told by its beginning; `undefined` where there is none, or it does not come alone. */
export async function droppedCabin(files: readonly File[]): Promise<File | undefined> {
  const [file] = files;
  if (file === undefined || files.length > 1) return undefined;
  const beginning = await file.slice(0, sniffedBytes).text().catch(() => '');
  return beginning.includes('"adjoin-cabin"') ? file : undefined;
}
