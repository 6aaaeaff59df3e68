/** What the joints of a cabin are filtered by; an absent field lets everything through. */
export interface JointFilter {
  readonly search?: string;
  readonly zone?: string;
  readonly verdict?: string;
  readonly check?: string;
  readonly supplier?: string;
}

export type View = 'start' | 'cabin' | 'joint';

/** Everything a colleague must see to see the same screen. */
export interface Route {
  readonly view: View;
  readonly joint?: string;
  /** Address of a cabin to open, relative to the page. */
  readonly open?: string;
  readonly light?: string;
  readonly filter: JointFilter;
}

const filterFields = { q: 'search', zone: 'zone', verdict: 'verdict', check: 'check', supplier: 'supplier' } as const;

/** Reads `#/cabin?light=A&zone=doors` and its like; whatever it does not know is left out, an unknown view is the start. */
export function parseRoute(hash: string): Route {
  const [path = '', query = ''] = hash.replace(/^#?\/?/, '').split('?', 2);
  const parameters = new URLSearchParams(query);
  const filter: Record<string, string> = {};
  for (const [key, field] of Object.entries(filterFields)) {
    const value = parameters.get(key);
    if (value) filter[field] = value;
  }
  const [head, id] = path.split('/', 2);
  const rest = { open: parameters.get('open') || undefined, light: parameters.get('light') || undefined, filter };
  if (head === 'joint' && id) return { view: 'joint', joint: decoded(id), ...rest };
  return { view: head === 'cabin' ? 'cabin' : 'start', ...rest };
}

/** A malformed escape in a hand-written address stays as it was written. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** The hash of a route; `parseRoute` reads it back to the same route. */
export function formatRoute(route: Route): string {
  const parameters = new URLSearchParams();
  if (route.light !== undefined) parameters.set('light', route.light);
  for (const [key, field] of Object.entries(filterFields)) {
    const value = route.filter[field];
    if (value) parameters.set(key, value);
  }
  if (route.open !== undefined) parameters.set('open', route.open);
  const query = parameters.toString().replaceAll('%2F', '/');
  const path = route.view === 'joint' ? `joint/${encodeURIComponent(route.joint ?? '')}` : route.view === 'cabin' ? 'cabin' : '';
  return `#/${path}${query === '' ? '' : `?${query}`}`;
}
