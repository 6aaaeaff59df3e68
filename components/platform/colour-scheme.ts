/** Ink and paper: as the system says, or as the user chose. */
export type Scheme = 'auto' | 'light' | 'dark';

const key = 'adjoin-scheme';
const schemes: readonly Scheme[] = ['auto', 'light', 'dark'];

/** The remembered choice; `auto` where there is none or the browser keeps nothing. */
export function readScheme(): Scheme {
  try {
    return schemes.find((scheme) => scheme === localStorage.getItem(key)) ?? 'auto';
  } catch {
    return 'auto';
  }
}

/** Applies a choice to the page and remembers it where the browser allows. */
export function applyScheme(scheme: Scheme): void {
  if (scheme === 'auto') delete document.documentElement.dataset['theme'];
  else document.documentElement.dataset['theme'] = scheme;
  try {
    localStorage.setItem(key, scheme);
  } catch {
    // Storage may be refused; the choice then lasts as long as the page.
  }
}

export const nextScheme = (scheme: Scheme): Scheme => schemes[(schemes.indexOf(scheme) + 1) % schemes.length] as Scheme;
