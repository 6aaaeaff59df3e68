import { mkdtempSync, rmSync } from 'node:fs';
import type { Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { listen, staticServer } from '../../src/cli/static-server.ts';

export interface ServedApp {
  /** Ends with a slash. */
  readonly address: string;
  /** Holds the files that are served. */
  readonly folder: string;
  close(): void;
}

/** Builds the workbench into a folder of its own and serves it with the demo cabins, as `npm start` does; `under` is the path below the root of the server. */
export async function serveBuiltApp(firstPort: number, under = ''): Promise<ServedApp> {
  const root = join(import.meta.dirname, '..', '..');
  const parent = mkdtempSync(join(tmpdir(), 'adjoin-built-'));
  const folder = join(parent, ...under.split('/').filter(Boolean));
  // Vitest runs with NODE_ENV `test`, which would take the libraries' development builds.
  const before = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  await build({ root, mode: 'production', build: { outDir: folder, emptyOutDir: true }, logLevel: 'error' });
  process.env['NODE_ENV'] = before;
  const server: Server = staticServer(parent);
  const address = `http://127.0.0.1:${await listen(server, firstPort)}/${under}`;
  return {
    address,
    folder,
    close: () => {
      server.close();
      server.closeAllConnections();
      rmSync(parent, { recursive: true, force: true });
    },
  };
}
