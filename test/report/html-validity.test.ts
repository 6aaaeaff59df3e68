import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { parseCabin } from '../../src/cabin/index.ts';
import { publishedValues } from '../../src/report/published-values.ts';
import { prepareReport, reportHtml } from '../../src/report/index.ts';
import { builtInRuleBooks } from '../../src/rules/index.ts';
import { bigCabin } from '../bench/big-cabin.ts';
import { smallCabin } from '../support/small-cabin.ts';

interface Validator {
  readonly validateString: (page: string) => Promise<{ readonly results: readonly { readonly messages: readonly { readonly ruleId: string; readonly message: string; readonly line: number; readonly column: number }[] }[] }>;
}
const { HtmlValidate } = createRequire(import.meta.url)('html-validate') as { readonly HtmlValidate: new (configuration: object) => Validator };

/** The page against the content model of the HTML standard, by a validator that knows nothing of this program. */
const validator = new HtmlValidate({
  extends: ['html-validate:standard', 'html-validate:a11y'],
  rules: {
    // The style of a page that loads nothing stands in it.
    'no-inline-style': 'off',
    // Names out of a file may be long; the title of the page carries one of them.
    'long-title': 'off',
  },
});

async function faultsOf(page: string): Promise<string[]> {
  const { results } = await validator.validateString(page.replace(/<style>[\s\S]*?<\/style>/, '<style></style>'));
  return results.flatMap(({ messages }) => messages.map(({ ruleId, message, line, column }) => `${ruleId} ${line}:${column} ${message}`));
}

const demo = parseCabin(readFileSync(join(import.meta.dirname, '..', '..', 'demo-data', 'shuttle-slate.cabin.json'), 'utf8')).value;
const asked = { files: [{ role: 'cabin' as const, name: 'x.cabin.json', sha256: '0'.repeat(64) }], validation: publishedValues() };
const [book] = builtInRuleBooks;

describe('the report is valid HTML', () => {
  test('of the demo, compared and aged', async () => {
    if (demo === undefined) throw new Error('the demo cabin does not restore');
    expect(await faultsOf(reportHtml(await prepareReport(demo, book, { ...asked, against: { stage: 'light-exposed' } })))).toEqual([]);
  }, 60_000);

  test('of a cabin with hostile names', async () => {
    const names = ['<script>alert(1)</script>', '"><img src=x onerror=alert(1)>', '\u202Egnp.exe', 'ידית דלת', '</table></main>', 'A'.repeat(3000)];
    const cabin = smallCabin({ name: names[0], parts: smallCabin().parts.map((part, index) => ({ ...part, name: names[index % names.length] ?? '' })) });
    expect(await faultsOf(reportHtml(await prepareReport(cabin, book, asked)))).toEqual([]);
  }, 60_000);

  test('of a cabin whose tables run over many pages', async () => {
    const page = reportHtml(await prepareReport({ ...bigCabin({ parts: 120, joints: 260, seed: 3 }), ruleBook: book.id }, book, asked));
    expect(page).toContain(' of 1');
    expect(await faultsOf(page)).toEqual([]);
  }, 60_000);

  test('and the validator sees a fault where there is one', async () => {
    expect(await faultsOf('<!doctype html><html lang="en"><head><title>x</title></head><body><p><div></div></p></body></html>')).not.toEqual([]);
  });
});
