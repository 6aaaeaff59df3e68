/** SHA-256 of bytes in small hexadecimal digits; undefined on pages without a secure origin, which have no digests. */
export async function digestOf(bytes: Uint8Array): Promise<string | undefined> {
  if (globalThis.crypto?.subtle === undefined) return undefined;
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes as Uint8Array<ArrayBuffer>));
  return [...digest].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
