const voids = new Set(['meta', 'br', 'hr', 'col', 'link', 'wbr']);

/** Faults of an HTML page that a reader of tags can see: elements not closed in order, attributes not quoted, ids twice, links to nowhere. */
export function markupFaults(page: string): string[] {
  const faults: string[] = [];
  const open: string[] = [];
  const ids = new Set<string>();
  const links: string[] = [];
  const body = page.replace(/<style>[\s\S]*?<\/style>/, '<style></style>').replace(/^<!doctype html>/i, '');
  for (const [tag, slash, name, attributes, selfClosing] of body.matchAll(/<(\/?)([a-zA-Z][a-zA-Z0-9]*)((?:\s+[a-zA-Z][a-zA-Z0-9:_-]*(?:="[^"<>]*")?)*)\s*(\/?)>/g)) {
    if (slash) {
      const last = open.pop();
      if (last !== name) faults.push(`${tag} closes ${last ?? 'nothing'}`);
    } else if (!selfClosing && !voids.has(name)) open.push(name);
    else if (selfClosing && !open.includes('svg') && name !== 'svg') faults.push(`${tag} closes itself outside a drawing`);
    for (const [, key, value] of attributes.matchAll(/([a-zA-Z][a-zA-Z0-9:_-]*)="([^"]*)"/g)) {
      if (key === 'id' && ids.has(value)) faults.push(`id ${value} twice`);
      if (key === 'id') ids.add(value);
      if (key === 'href' && value.startsWith('#')) links.push(value.slice(1));
      if (key === 'aria-labelledby') links.push(value);
    }
  }
  faults.push(...open.map((name) => `${name} is not closed`), ...links.filter((link) => !ids.has(link)).map((link) => `nothing has the id ${link}`));
  const loose = body.replace(/<(\/?)([a-zA-Z][a-zA-Z0-9]*)((?:\s+[a-zA-Z][a-zA-Z0-9:_-]*(?:="[^"<>]*")?)*)\s*(\/?)>/g, '');
  if (/[<>]/.test(loose)) faults.push(`a loose angle bracket near ${loose.slice(Math.max(0, loose.search(/[<>]/) - 30)).slice(0, 80)}`);
  return faults;
}
