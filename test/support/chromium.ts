import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const onSystem = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome-stable', '/usr/bin/google-chrome'];

/** Flags that keep a headless Chromium quiet on a machine without a network, and let it start as root. */
export const chromiumArguments = [
  '--no-sandbox', '--disable-background-networking', '--disable-component-update', '--disable-sync',
  '--no-first-run', '--disable-quic',
];

const projectRoot = join(dirname(fileURLToPath(import.meta.url)), '..', '..');

/**
 * Path of a Chromium: the CHROMIUM environment variable, the usual names on the
 * system, else the one that comes with the development dependencies, unpacked
 * once. Call it once before workers start: two processes unpacking at the same
 * time break each other.
 */
export async function chromiumPath(): Promise<string> {
  const asked = process.env['CHROMIUM'];
  if (asked) {
    if (existsSync(asked)) return asked;
    throw new Error(`CHROMIUM names ${asked}, which does not exist: set it to the path of a Chromium, or unset it.`);
  }
  const found = onSystem.find((path) => existsSync(path));
  if (found) return found;
  try {
    const bundled = createRequire(import.meta.url).resolve('@sparticuz/chromium');
    const root = bundled.slice(0, bundled.lastIndexOf('chromium') + 'chromium'.length);
    const { version } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string };
    const folder = join(projectRoot, 'node_modules', '.cache', `chromium-${version}`);
    mkdirSync(folder, { recursive: true });
    const before = process.env['TMPDIR'];
    process.env['TMPDIR'] = folder;
    try {
      const { default: chromium } = await import('@sparticuz/chromium');
      return await chromium.executablePath();
    } finally {
      if (before === undefined) delete process.env['TMPDIR'];
      else process.env['TMPDIR'] = before;
    }
  } catch (cause) {
    throw new Error('No Chromium found: install one (Debian: apt-get install chromium), or set CHROMIUM to its path, or run npm ci with development dependencies.', { cause });
  }
}
