import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { entries } from '../../src/cli/router.ts';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { run } from './memory-io.ts';

const fixture = (name: string): Uint8Array => readFileSync(join(import.meta.dirname, '..', 'formats', 'fixtures', name));
const cabin = serialiseCabin(smallCabin({ ruleBook: 'ciede2000' }));
const pairs = 'id,pair,role,400,420,440,460,480,500,520,540,560,580,600,620,640,660,680,700\n'
  + ['standard', 'trial'].map((role, i) => `${role},p,${role},${Array.from({ length: 16 }, (_, k) => 0.06 + 0.001 * i * k).join(',')}`).join('\n');

/** Every verb that reads a file, with something it takes. */
const inputs: Readonly<Record<string, { readonly input: string | Uint8Array; readonly words?: readonly string[] }>> = {
  check: { input: cabin }, report: { input: cabin, words: ['--out', 'r.json'] }, requests: { input: cabin }, masters: { input: cabin },
  choose: { input: cabin }, mend: { input: cabin }, apportion: { input: cabin }, series: { input: cabin },
  colour: { input: pairs }, difference: { input: 'id,L1,a1,b1,L2,a2,b2\np,50,0,0,51,0,0\n' }, metamerism: { input: pairs },
  gloss: { input: 'specimen,angle,gloss\np,60,1.5\n' }, convert: { input: fixture('spectra-wide.csv'), words: ['--to', 'json', '--out', 'x.json'] },
  texture: { input: '0,1,0,1\n1,0,1,0\n0,1,0,1\n1,0,1,0\n', words: ['--spacing-mm', '0.1', '--height-unit', 'um'] },
};

test('no verb that reads a file is left out here', () => {
  expect(Object.keys(inputs).toSorted()).toEqual(entries.map(({ name }) => name).filter((name) => !['verify', 'init'].includes(name)).toSorted());
});

test.each(Object.entries(inputs))('%s reads the standard input as it reads a file, and prints one JSON document', async (verb, { input, words = [] }) => {
  const [piped, read] = await Promise.all([
    run([verb, '-', ...words, '--json'], { '-': input }), run([verb, 'in.file', ...words, '--json'], { 'in.file': input }),
  ]);
  expect(piped.exit, piped.stdout + piped.stderr).toBeLessThan(2);
  expect(piped.exit).toBe(read.exit);
  expect(typeof JSON.parse(piped.stdout)).toBe('object');
  const unnamed = (text: string): string => text.replaceAll('standard input', 'in.file');
  expect(unnamed(piped.stdout)).toBe(read.stdout);
}, 60_000);
