/**
 * Writes the faulty files and their manifest: `node --import tsx test/cabin/faulty/generate.ts`.
 * The expectations stand in cases.ts and ../../formats/faulty-cases.ts, written by hand.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { tableCases } from '../../formats/faulty-cases.ts';
import { withNode } from '../../support/edit-json.ts';
import { faultyBase } from './base.ts';
import { documentCases } from './cases.ts';

const test = join(import.meta.dirname, '..', '..');

// Lists of numbers and objects without others in them stand on one line; the writer under test is not used here.
const print = (value: unknown): string => JSON.stringify(value, null, 2)
  .replace(/\[\s+(-?[\d.e+-]+(?:,\s+-?[\d.e+-]+)*)\s+\]/gu, (_, numbers: string) => `[${numbers.replace(/\s+/gu, ' ')}]`)
  .replace(/\{\n\s+([^{}]*?)\n\s+\}/gu, (_, members: string) => `{${members.replace(/\n\s+/gu, ' ')}}`);

const manifest = [];
mkdirSync(join(test, 'cabin', 'faulty'), { recursive: true });
mkdirSync(join(test, 'formats', 'faulty'), { recursive: true });
for (const { name, set = {}, text = (same: string) => same, issues } of documentCases) {
  const changed = Object.entries(set).reduce<unknown>((root, [path, value]) => withNode(root, path, value), JSON.parse(JSON.stringify(faultyBase())));
  const file = `cabin/faulty/${name}.cabin.json`;
  writeFileSync(join(test, file), text(`${print(changed)}\n`));
  manifest.push({ file, verb: 'check', args: ['check', file, '--json'], issues });
}
for (const { name, verb, text, issues } of tableCases) {
  const file = `formats/faulty/${name}.csv`;
  writeFileSync(join(test, file), text);
  manifest.push({ file, verb, args: [verb, file, '--json'], issues });
}
writeFileSync(join(test, 'cabin', 'faulty', 'manifest.json'), `${JSON.stringify(manifest, null, 1)}\n`);
