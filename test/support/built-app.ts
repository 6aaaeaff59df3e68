import { cpSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import type { Server } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from 'vite';
import { listen, staticServer } from '../../src/cli/static-server.ts';

export interface ServedApp {
  /** Ends with a slash. */
  readonly address: string;
  close(): void;
}

/** Builds the workbench into a folder of its own and serves it with the demo cabins, as `npm start` does. */
export async function serveBuiltApp(firstPort: number): Promise<ServedApp> {
  const root = join(import.meta.dirname, '..', '..');
  const folder = mkdtempSync(join(tmpdir(), 'adjoin-built-'));
  // Vitest runs with NODE_ENV `test`, which would take the libraries' development builds.
  const before = process.env['NODE_ENV'];
  process.env['NODE_ENV'] = 'production';
  await build({
    root, configFile: false, base: './', publicDir: false, worker: { format: 'es' },
    build: { outDir: folder, emptyOutDir: true, target: 'es2023' }, logLevel: 'error',
  });
  process.env['NODE_ENV'] = before;
  for (const name of readdirSync(join(root, 'demo-data'))) {
    if (name.endsWith('.cabin.json')) cpSync(join(root, 'demo-data', name), join(folder, 'demo-data', name));
  }
  const server: Server = staticServer(folder);
  const address = `http://127.0.0.1:${await listen(server, firstPort)}/`;
  return {
    address,
    close: () => {
      server.close();
      server.closeAllConnections();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}
