import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { run } from '../cli/memory-io.ts';

const folder = '/home/a-person/secret-project/cabins';
const demo = (name: string): string => readFileSync(join(import.meta.dirname, '..', '..', 'demo-data', `${name}.cabin.json`), 'utf8');
/** The whole cabin as a page; a small one is enough for what JSON and CSV say of files. */
const asked = { html: ['slate', 'chalk'], json: ['lots', 'lots-before'], csv: ['lots', 'lots-before'] } as const;
const files = {
  [`${folder}/slate.cabin.json`]: demo('shuttle-slate'), [`${folder}/before/chalk.cabin.json`]: demo('shuttle-chalk'), [`${folder}/lots.cabin.json`]: demo('lots'), [`${folder}/before/lots-before.cabin.json`]: demo('lots'),
};

/** A report leaves the desk: it carries what it says, and nothing of the place that it was made in. */
describe('a report is safe to send', () => {
  const written = new Map<string, string>();
  beforeAll(async () => {
    for (const [ending, [cabin, before]] of Object.entries(asked)) {
      const { exit, files: [file] } = await run(['report', `${folder}/${cabin}.cabin.json`, '--against', `${folder}/before/${before}.cabin.json`, '--out', `${folder}/r.${ending}`], files);
      expect(exit).toBe(0);
      written.set(ending, file.content);
    }
  }, 60_000);

  test.each(['html', 'json', 'csv'] as const)('%s names files and no folders', (ending) => {
    const text = written.get(ending) ?? '';
    expect(text).not.toMatch(/secret-project|a-person|\/home\/|[A-Z]:\\\\/);
    if (ending !== 'csv') for (const name of asked[ending]) expect(text).toContain(`${name}.cabin.json`);
  });

  test('the page asks for nothing, leads nowhere else and lets nothing run', () => {
    const page = written.get('html') ?? '';
    const style = /<style>([\s\S]*?)<\/style>/.exec(page)?.[1] ?? '';
    // Addresses in the page: the name of SVG, which is no address to be fetched, and the typeface in its own bytes.
    const addresses = page.match(/[a-z][a-z+.-]*:\/\/[^\s"'<>)]+/gi) ?? [];
    expect(new Set(addresses)).toEqual(new Set(['http://www.w3.org/2000/svg']));
    expect(style.match(/url\([^)]{0,27}/g)).toEqual(['url(data:font/woff2;base64,d09G']);
    expect(style).not.toMatch(/@import|expression\(|behavior:/);
    expect(page).not.toMatch(/<(?:script|iframe|object|embed|form|link|base|img|audio|video)\b|\son\w+\s*=|http-equiv="refresh"/i);
    expect(page).toMatch(/Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:"/);
  });

  test('the cautions stand in it, and again where a change is spoken of', () => {
    const text = (written.get('html') ?? '').replace(/<style>[\s\S]*?<\/style>/, '').replace(/<[^>]+>/g, ' ');
    const limits = text.slice(text.lastIndexOf('Limits and cautions'));
    for (const words of ['flammability', 'emissions', 'airbag cover', 'glare', 'Local codes and the responsible licensed engineer decide', 'do not replace a visual assessment', 'Colours on a screen or on paper are no proof', 'Legal requirements on visibility']) expect(limits).toContain(words);
    // Beside who acts on the first page, and under the sources compared.
    const changes = 'flammability, emissions, airbag cover and glare requirements that are not judged here: local codes and the responsible licensed engineer decide';
    expect(text.split(changes).length - 1).toBe(2);
    expect(text).toContain('A design aid against veiling glare in the windscreen; legal visibility requirements and the responsible engineer decide.');
    // At the first map, at the maps of both states and at the samples of the joints.
    expect(text.split(/no proof of colour/).length - 1).toBeGreaterThanOrEqual(3);
  });
});
