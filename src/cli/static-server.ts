import type { Server } from 'node:http';
import { createReadStream, realpathSync, statSync } from 'node:fs';
import { createServer } from 'node:http';
import { extname, join, sep } from 'node:path';

const types: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json; charset=utf-8',
  '.svg': 'image/svg+xml; charset=utf-8',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.txt': 'text/plain; charset=utf-8',
};

/** Nothing from elsewhere, no inline script or style, no frame around the page. */
export const contentSecurityPolicy = [
  "default-src 'self'", "script-src 'self' 'wasm-unsafe-eval'", "style-src 'self'", "img-src 'self' data: blob:", "font-src 'self'",
  "connect-src 'self'", "worker-src 'self'", "object-src 'none'", "base-uri 'none'", "form-action 'none'", "frame-ancestors 'none'",
].join('; ');

const headers = {
  'Content-Security-Policy': contentSecurityPolicy,
  'Cache-Control': 'no-cache',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Opener-Policy': 'same-origin',
};

/**
 * The file of a folder that a request names, or undefined: no dot files, nothing outside the folder,
 * not by `..`, an encoded separator or a link. A folder stands for its `index.html`.
 */
export function fileOf(folder: string, url: string): string | undefined {
  let path: string;
  try {
    path = decodeURIComponent(url.replace(/[?#].*$/s, ''));
  } catch {
    return undefined;
  }
  const steps = path.split('/').filter((step) => step !== '');
  if (!path.startsWith('/') || steps.some((step) => step.startsWith('.') || /[\\\0:]/.test(step))) return undefined;
  try {
    const root = realpathSync(folder);
    const named = realpathSync(join(root, ...steps));
    const file = statSync(named).isDirectory() ? realpathSync(join(named, 'index.html')) : named;
    return file.startsWith(root + sep) && statSync(file).isFile() ? file : undefined;
  } catch {
    return undefined;
  }
}

/** A server of the files of one folder, for this machine only: GET and HEAD, nothing else. */
export function staticServer(folder: string): Server {
  return createServer((request, response) => {
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { ...headers, Allow: 'GET, HEAD' }).end();
      return;
    }
    const file = fileOf(folder, request.url ?? '/');
    if (file === undefined) {
      response.writeHead(404, { ...headers, 'Content-Type': 'text/plain; charset=utf-8' }).end('not found\n');
      return;
    }
    response.writeHead(200, { ...headers, 'Content-Type': types[extname(file)] ?? 'application/octet-stream', 'Content-Length': statSync(file).size });
    if (request.method === 'HEAD') response.end();
    else createReadStream(file).on('error', () => response.destroy()).pipe(response);
  });
}

/** Listens on the loopback interface at `first` or the next free port of the `tries` after it; gives the port. */
export async function listen(server: Server, first: number, tries = 20): Promise<number> {
  for (let port = first; ; port += 1) {
    const problem = await new Promise<NodeJS.ErrnoException | undefined>((settle) => {
      server.once('error', settle);
      server.listen(port, '127.0.0.1', () => {
        server.off('error', settle);
        settle(undefined);
      });
    });
    if (problem === undefined) return port;
    if (problem.code !== 'EADDRINUSE' || port >= first + tries) throw problem;
  }
}
