import { existsSync, readdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const onSystem = [
  '/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome-stable', '/usr/bin/google-chrome', '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium', '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe', 'C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe',
];

/** Path of a Chromium: the one asked for and no other, else the usual places of the system, else one that the development dependencies of this program unpacked. */
export function findChromium(asked: string | undefined): string | undefined {
  if (asked !== undefined && asked !== '') return existsSync(asked) ? asked : undefined;
  return onSystem.find((path) => existsSync(path)) ?? unpacked();
}

function unpacked(): string | undefined {
  for (let folder = dirname(fileURLToPath(import.meta.url)); dirname(folder) !== folder; folder = dirname(folder)) {
    const cache = join(folder, 'node_modules', '.cache');
    if (!existsSync(cache)) continue;
    const found = readdirSync(cache).filter((name) => name.startsWith('chromium-')).sort().map((name) => join(cache, name, 'chromium')).find((path) => existsSync(path));
    if (found !== undefined) return found;
  }
  return undefined;
}
