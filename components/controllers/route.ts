/** What the joints of a cabin are filtered by; an absent field lets everything through. */
export interface JointFilter {
  readonly search?: string;
  readonly zone?: string;
  readonly verdict?: string;
  readonly check?: string;
  readonly supplier?: string;
}

export const views = ['start', 'cabin', 'joint', 'parts', 'import', 'readings', 'surfaces', 'masters', 'rules', 'sources', 'mend', 'apportion', 'series', 'compare', 'report', 'review'] as const;
export type View = (typeof views)[number];

/** Everything a colleague must see to see the same screen. */
export interface Route {
  readonly view: View;
  readonly joint?: string;
  /** What a view other than the joint's shows of several: a part, a supplier. */
  readonly item?: string;
  /** Address of a cabin to open, relative to the page. */
  readonly open?: string;
  readonly light?: string;
  readonly filter: JointFilter;
  /** Choices of a view by their own names, such as the tint of the map. */
  readonly options?: Readonly<Record<string, string>>;
  /** Sections that are not as they begin. */
  readonly folds?: Folds;
}

/** Sections of a place by name: whether they are unfolded. */
export type Folds = Readonly<Record<string, boolean>>;

const filterFields = { q: 'search', zone: 'zone', verdict: 'verdict', check: 'check', supplier: 'supplier' } as const;
const reserved = new Set(['open', 'light', 'unfold', 'fold', ...Object.keys(filterFields)]);
/** Choices with names and values of reasonable length are kept; an address is no place for data. */
const longestChoice = 1000;

/** Reads `#/cabin?light=A&zone=doors` and its like; whatever it does not know is left out, an unknown view is the start. */
export function parseRoute(hash: string): Route {
  const [path = '', query = ''] = hash.replace(/^#?\/?/, '').split('?', 2);
  const parameters = new URLSearchParams(query);
  const filter: Record<string, string> = {};
  for (const [key, field] of Object.entries(filterFields)) {
    const value = parameters.get(key);
    if (value) filter[field] = value;
  }
  const options = Object.fromEntries([...parameters].filter(([key, value]) => !reserved.has(key) && /^[a-z][a-z-]{0,30}$/.test(key) && value !== '' && value.length <= longestChoice));
  const [head, id] = path.split('/', 2);
  const rest = {
    open: parameters.get('open') || undefined, light: parameters.get('light') || undefined, filter,
    ...(Object.keys(options).length === 0 ? {} : { options }), ...foldsOf(parameters),
  };
  if (head === 'joint' && id) return { view: 'joint', joint: decoded(id), ...rest };
  const view = views.find((one) => one === head && one !== 'joint') ?? 'start';
  return { view, ...(id && view !== 'start' ? { item: decoded(id) } : {}), ...rest };
}

/** Names with commas between them, each written as in an address. */
function foldsOf(parameters: URLSearchParams): { readonly folds?: Folds } {
  const named = (key: string, unfolded: boolean): [string, boolean][] => (parameters.get(key) ?? '').slice(0, longestChoice).split(',').filter(Boolean).map((name) => [decoded(name), unfolded]);
  const folds = [...named('unfold', true), ...named('fold', false)];
  return folds.length === 0 ? {} : { folds: Object.fromEntries(folds) };
}

/** A malformed escape in a hand-written address stays as it was written. */
function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** A route with some of it changed; sections are those of their place, so another place does not take them over. */
export function changedRoute(route: Route, change: Partial<Route>): Route {
  const elsewhere = change.view !== undefined && change.view !== route.view && !('folds' in change);
  return { ...route, ...(elsewhere ? { folds: undefined } : {}), ...change };
}

/** The hash of a route; `parseRoute` reads it back to the same route. */
export function formatRoute(route: Route): string {
  const parameters = new URLSearchParams();
  if (route.light !== undefined) parameters.set('light', route.light);
  for (const [key, field] of Object.entries(filterFields)) {
    const value = route.filter[field];
    if (value) parameters.set(key, value);
  }
  for (const [key, value] of Object.entries(route.options ?? {})) if (value !== '') parameters.set(key, value);
  for (const [key, unfolded] of [['unfold', true], ['fold', false]] as const) {
    const names = Object.entries(route.folds ?? {}).filter(([, is]) => is === unfolded).map(([name]) => encodeURIComponent(name));
    if (names.length > 0) parameters.set(key, names.join(','));
  }
  if (route.open !== undefined) parameters.set('open', route.open);
  const query = parameters.toString().replaceAll('%2F', '/').replaceAll('%2C', ',');
  return `#/${pathOf(route)}${query === '' ? '' : `?${query}`}`;
}

function pathOf({ view, joint, item }: Route): string {
  if (view === 'start') return '';
  const id = view === 'joint' ? joint ?? '' : item;
  return id === undefined ? view : `${view}/${encodeURIComponent(id)}`;
}
