/**
 * The local name of an XML text's first element, without reading on; undefined where the text does not begin as XML.
 * Looks past a byte-order mark, comments, processing instructions and declarations in the first 100,000 characters.
 */
export function sniffRoot(text: string): string | undefined {
  const start = text.slice(0, 100_000);
  let at = start.charCodeAt(0) === 0xfeff ? 1 : 0;
  for (;;) {
    while (at < start.length && /\s/u.test(start.charAt(at))) at += 1;
    if (start[at] !== '<') return undefined;
    const end = start.startsWith('<!--', at) ? start.indexOf('-->', at) : start.startsWith('<?', at) ? start.indexOf('?>', at) : start.startsWith('<!', at) ? endOfDeclaration(start, at) : undefined;
    if (end === undefined) return /^<(?:[\p{L}_][\p{L}\p{N}_.-]{0,100}:)?([\p{L}_][\p{L}\p{N}_.-]{0,100})/u.exec(start.slice(at, at + 300))?.[1];
    if (end < 0) return undefined;
    at = start.indexOf('>', end) + 1;
    if (at === 0) return undefined;
  }
}

/** The last `]` of an internal subset, or the start where there is none. */
function endOfDeclaration(text: string, at: number): number {
  const close = text.indexOf('>', at);
  const bracket = text.indexOf('[', at);
  return bracket >= 0 && bracket < close ? text.indexOf(']', bracket) : at;
}
