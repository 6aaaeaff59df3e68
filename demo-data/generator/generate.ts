import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { demoFiles } from './demo-files.ts';

for (const [name, text] of Object.entries(demoFiles())) {
  writeFileSync(fileURLToPath(new URL(`../${name}`, import.meta.url)), text);
  process.stdout.write(`${name}: ${text.length} characters\n`);
}
