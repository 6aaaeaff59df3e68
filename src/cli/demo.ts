import { spawnSync } from 'node:child_process';
import { join } from 'node:path';

/** Judges the demo cabin and writes its report with the built command line; clashes found (exit 1) are what the demo is for. */
const program = join('dist', 'adjoin.mjs');
const cabin = 'demo-data/shuttle-slate.cabin.json';
for (const words of [['check', cabin], ['report', cabin, '--out', 'out/report.html']]) {
  const { status } = spawnSync(process.execPath, [program, ...words], { stdio: 'inherit' });
  if (status !== 0 && status !== 1) process.exit(status ?? 3);
}
