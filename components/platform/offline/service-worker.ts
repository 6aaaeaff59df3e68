/**
 * Keeps the files of one version of the workbench, so that it opens without a network. A version is fetched whole and each file is held to
 * its digest, or it is not taken: files of two versions never meet. A new version waits until the page asks for it or no page is open.
 */

/** File names relative to the scope, with their digests in the form of subresource integrity: written in by the build. */
declare const BUILT_FILES: Readonly<Record<string, string>>;

interface WorkerEvent extends Event { waitUntil(work: Promise<unknown>): void }
interface AskedEvent extends WorkerEvent { readonly request: Request; respondWith(answer: Promise<Response>): void }
interface Scope {
  readonly registration: ServiceWorkerRegistration;
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(kind: 'install' | 'activate', listener: (event: WorkerEvent) => void): void;
  addEventListener(kind: 'fetch', listener: (event: AskedEvent) => void): void;
  addEventListener(kind: 'message', listener: (event: MessageEvent<unknown> & WorkerEvent) => void): void;
}
const worker = globalThis as unknown as Scope;

const files = BUILT_FILES;
const scope = worker.registration.scope;
const prefix = `adjoin ${scope} `;
const version = prefix + digestOfAll();
const beside = `${prefix}beside`;

/** Short name of the list: not for safety, the digests of the files are. */
function digestOfAll(): string {
  let hash = 0;
  for (const character of JSON.stringify(files)) hash = (Math.imul(hash, 31) + character.charCodeAt(0)) >>> 0;
  return hash.toString(36);
}

const addressOf = (name: string): string => new URL(name, scope).href;

async function fetchAll(): Promise<void> {
  const cache = await caches.open(version);
  await Promise.all(Object.entries(files).map(async ([name, integrity]) => {
    const address = addressOf(name);
    if ((await cache.match(address)) !== undefined) return;
    const answer = await fetch(new Request(address, { integrity, cache: 'no-cache' }));
    if (!answer.ok) throw new Error(`the server answered ${answer.status} for ${name}`);
    await cache.put(address, answer);
  }));
}

async function dropOthers(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.startsWith(prefix) && name !== version && name !== beside).map((name) => caches.delete(name)));
}

/** The name in the list of what is asked for; the folder itself and any query to it is the page. */
function listed({ url, mode }: Request): string | undefined {
  const { origin, pathname } = new URL(url);
  const path = origin + pathname;
  if (mode === 'navigate' && (path === scope || path === addressOf('index.html'))) return 'index.html';
  if (!path.startsWith(scope)) return undefined;
  const name = decodeURI(path.slice(scope.length));
  return Object.hasOwn(files, name) ? name : undefined;
}

async function kept(name: string, request: Request): Promise<Response> {
  const cache = await caches.open(version);
  return (await cache.match(addressOf(name))) ?? fetch(request);
}

/** What lies beside the workbench, such as a demo cabin: from the server where it answers, else as it was last seen. */
async function seen(request: Request): Promise<Response> {
  const cache = await caches.open(beside);
  try {
    const answer = await fetch(request);
    if (answer.ok) await cache.put(request, answer.clone());
    return answer;
  } catch (fault) {
    const before = await cache.match(request);
    if (before === undefined) throw fault;
    return before;
  }
}

/** Keeps what may be asked for without a network although nobody asked for it while there was one; what was seen before is left. */
async function keepBeside(addresses: readonly unknown[]): Promise<void> {
  const cache = await caches.open(beside);
  await Promise.all(addresses.map(async (address) => {
    const { href, pathname } = new URL(String(address), scope);
    if (!href.startsWith(scope) || !pathname.endsWith('.cabin.json') || (await cache.match(href)) !== undefined) return;
    const answer = await fetch(href).catch(() => undefined);
    if (answer?.ok === true) await cache.put(href, answer);
  }));
}

worker.addEventListener('install', (event) => event.waitUntil(fetchAll()));

worker.addEventListener('activate', (event) => event.waitUntil(dropOthers().then(() => worker.clients.claim())));

worker.addEventListener('message', (event) => {
  const { data } = event;
  if (data === 'take over') event.waitUntil(worker.skipWaiting());
  else if (typeof data === 'object' && data !== null && 'keep' in data && Array.isArray(data.keep)) event.waitUntil(keepBeside(data.keep));
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET') return;
  const name = listed(request);
  if (name !== undefined) event.respondWith(kept(name, request));
  else if (request.url.startsWith(scope) && new URL(request.url).pathname.endsWith('.cabin.json')) event.respondWith(seen(request));
});
