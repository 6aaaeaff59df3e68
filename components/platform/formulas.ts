/** Lets the page parse formulas of rules. The parser is a file of its own, so that the first picture does not wait for it. */
export async function loadFormulas(): Promise<void> {
  const { provideMathjs } = await import('../../src/rules/mathjs-parser.ts');
  provideMathjs();
}

/** The same once the page has nothing better to do. */
export function loadFormulasWhenIdle(): void {
  const load = (): void => { void loadFormulas().catch(() => undefined); };
  if ('requestIdleCallback' in globalThis) requestIdleCallback(load, { timeout: 3000 });
  else setTimeout(load, 1000);
}
