import axe from 'axe-core';
import { afterEach, describe, expect, test } from 'vitest';
import { reportHtml } from '../../src/report/index.ts';
import { publishedValues } from '../../src/report/published-values.ts';
import { builtInRuleBooks } from '../../src/rules/index.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { inventedJudgement } from './invented-judgement.ts';

const cabin = smallCabin();
const longName = 'Türverkleidungsoberteil'.repeat(20);
const hostile = smallCabin({ name: longName, parts: cabin.parts.map((part) => ({ ...part, name: `${longName} ${part.name}` })) });

/** The report in a frame of a width, as a reader opens it. */
async function opened(of: typeof cabin, width: number): Promise<Document> {
  const frame = document.createElement('iframe');
  frame.width = String(width);
  frame.height = '900';
  frame.title = 'report';
  frame.srcdoc = reportHtml({ cabin: of, ruleBook: builtInRuleBooks[0], judgement: inventedJudgement(of), files: [], validation: publishedValues() });
  const loaded = new Promise((settle) => { frame.addEventListener('load', settle, { once: true }); });
  document.body.append(frame);
  await loaded;
  const content = frame.contentDocument;
  if (!content) throw new Error('the frame has no document');
  await content.fonts.ready;
  return content;
}

afterEach(() => document.body.replaceChildren());

describe('the report in a browser', () => {
  test('has no violation of WCAG 2.2 AA that axe can see', async () => {
    const content = await opened(cabin, 1100);
    // The report lets no script run, so axe runs in a copy of the page beside it.
    const frame = document.createElement('iframe');
    frame.width = '1100';
    frame.height = '900';
    frame.title = 'copy';
    document.body.append(frame);
    const copy = frame.contentDocument;
    if (!copy) throw new Error('the frame has no document');
    copy.write(`<!doctype html>${content.documentElement.outerHTML.replace(/<meta http-equiv[^>]*>/, '')}`);
    copy.close();
    const script = copy.createElement('script');
    script.textContent = axe.source;
    copy.head.append(script);
    const inside = (frame.contentWindow as (Window & { readonly axe?: typeof axe }) | null)?.axe;
    if (!inside) throw new Error('axe did not load');
    const { violations, passes } = await inside.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] });
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' ')}`)).toEqual([]);
    expect(passes.length).toBeGreaterThan(10);
  });

  test.each([[390, cabin], [1100, cabin], [390, hostile], [1100, hostile]])('fits a window of %i px', async (width, of) => {
    const content = await opened(of, width);
    expect(content.documentElement.scrollWidth).toBeLessThanOrEqual(width);
  });

  test('shows its own typeface', async () => {
    const content = await opened(cabin, 1100);
    expect([...content.fonts].map((face) => face.status)).toEqual(['loaded']);
  });

  test('is not in quirks mode and keeps every table and heading that it was given', async () => {
    const content = await opened(cabin, 1100);
    expect(content.compatMode).toBe('CSS1Compat');
    const source = reportHtml({ cabin, ruleBook: builtInRuleBooks[0], judgement: inventedJudgement(cabin), files: [], validation: publishedValues() });
    for (const tag of ['table', 'tr', 'td', 'h2', 'article', 'svg', 'data']) {
      expect(content.querySelectorAll(tag).length, tag).toBe((source.match(new RegExp(`<${tag}[ >]`, 'g')) ?? []).length);
    }
  });
});
