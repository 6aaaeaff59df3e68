import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { listen, staticServer } from './static-server.ts';

/** Serves the built workbench with the demo cabin open; builds it first where it has not been built. */
const root = join(import.meta.dirname, '..', '..');
const folder = join(root, 'dist', 'app');

if (!existsSync(join(folder, 'index.html'))) {
  const build = spawnSync('npm', ['run', '--silent', 'build'], { cwd: root, stdio: ['ignore', 'ignore', 'inherit'], shell: process.platform === 'win32' });
  if (build.status !== 0) {
    process.stderr.write('The workbench could not be built; `npm run build` shows why.\n');
    process.exit(3);
  }
}

const server = staticServer(folder);
const port = await listen(server, 4173);
process.stdout.write(`The workbench is at http://localhost:${port}/#/cabin?open=demo-data/shuttle-slate.cabin.json (Ctrl+C ends it)\n`);

for (const signal of ['SIGINT', 'SIGTERM'] as const) {
  process.on(signal, () => {
    server.close();
    server.closeAllConnections();
  });
}
