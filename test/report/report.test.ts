import type { ReportInput } from '../../src/report/index.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { describe, expect, test } from 'vitest';
import packageFile from '../../package.json' with { type: 'json' };
import { publishedValues } from '../../src/report/published-values.ts';
import { reportCsv, reportHtml, reportJson, software } from '../../src/report/index.ts';
import { builtInRuleBooks } from '../../src/rules/index.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { inventedJudgement } from './invented-judgement.ts';
import { readCsv } from './read-csv.ts';
import { markupFaults } from './markup-faults.ts';

const inputOf = (cabin: Cabin = smallCabin()): ReportInput => ({
  cabin, ruleBook: builtInRuleBooks[0], judgement: inventedJudgement(cabin), validation: publishedValues(),
  files: [{ role: 'cabin', name: 'small.cabin.json', sha256: 'ab'.repeat(32) }],
});
const page = reportHtml(inputOf());
const text = page.replace(/<style>[\s\S]*?<\/style>/, '').replace(/<[^>]+>/g, '');

/** Every number in a JSON value, as text of full precision. */
function numbersIn(value: unknown, found = new Set<string>()): Set<string> {
  if (typeof value === 'number') found.add(String(value));
  else if (typeof value === 'object' && value !== null) for (const member of Object.values(value)) numbersIn(member, found);
  return found;
}

describe('numbers', () => {
  const json = JSON.parse(reportJson(inputOf())) as { joints: { result: { id: string; checks: { check: string; value?: number; limitUse?: number; withinProbability?: number; lights: { light: string; value: number }[] }[] } }[] };
  const rows = readCsv(reportCsv(inputOf()));

  test('every number that the page marks as data is in the JSON or counted from it, in full precision', () => {
    const values = [...page.matchAll(/<data value="([^"]*)">/g)].map((match) => match[1]);
    expect(values.length).toBeGreaterThan(150);
    const known = numbersIn(json);
    // Counts and shares of the validation record are derived from its rows; all else is a number of the model.
    const shownBeforeValidation = page.slice(0, page.indexOf('id="validation"'));
    const strange = [...shownBeforeValidation.matchAll(/<data value="([^"]*)">/g)].map((match) => match[1]).filter((value) => !known.has(value));
    expect(strange).toEqual([]);
  });

  test('every printed number is its data value rounded', () => {
    for (const [, value, print] of page.matchAll(/<data value="([^"]*)">([^<]*)<\/data>/g)) {
      const shown = /^([+\u2212]?\d+(?:\.\d+)?)(\u00a0%)?$/.exec(print);
      if (shown === null) {
        expect(print).toMatch(/^(&lt;|&gt;)\u00a0\d+\u00a0%$/);
        continue;
      }
      const number = Number(shown[1].replace('\u2212', '-')) / (shown[2] === undefined ? 1 : 100);
      const decimals = (shown[1].split('.')[1] ?? '').length + (shown[2] === undefined ? 0 : 2);
      expect(Math.abs(number - Number(value)), `${value} printed as ${print}`).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-12);
    }
  });

  test('the rows of the CSV are the checks and lights of the JSON, number for number', () => {
    for (const { result } of json.joints) {
      for (const check of result.checks) {
        const row = rows.find((candidate) => candidate.row === 'joint check' && candidate.id === result.id && candidate.check === check.check);
        expect(row).toBeDefined();
        for (const name of ['value', 'limitUse', 'withinProbability'] as const) expect(row?.[name]).toBe(check[name] === undefined ? '' : String(check[name]));
        const lights = rows.filter((candidate) => candidate.row === 'joint light' && candidate.id === result.id && candidate.check === check.check);
        expect(lights.map((light) => [light.light, light.value])).toEqual(check.lights.map((light) => [light.light, String(light.value)]));
      }
    }
  });

  test('the headline counts the joints', () => {
    expect(page).toContain('aria-label="1 clashes, 1 accepted, 2 are open, 2 joints hold"');
    expect(text).toContain('the expected number of them that in truth do not is 0.1');
  });
});

describe('content', () => {
  test('clashes stand worst first, then open joints, accepted ones and those that hold', () => {
    const order = [...page.matchAll(/id="(joint-\d+)"/g)].map((match) => match[1]);
    expect(order).toEqual(['joint-1', 'joint-3', 'joint-4', 'joint-2', 'joint-5', 'joint-6']);
    expect(page.indexOf('id="clashes"')).toBeLessThan(page.indexOf('id="open"'));
  });

  test.each([
    'not replace a visual assessment', 'ISO 3668', 'responsible licensed engineer', 'no proof of colour', 'common practice, no source', 'JCGM 106', 'ASTM E2022', 'ISO 2813',
    '12 spots in all (5 there now)', 'Readings asked of Quill (invented)', 'design aid against veiling glare', 'small.cabin.json', 'ab'.repeat(32), 'Bench one (invented)',
    'uv-unknown', 'One side was measured with UV included.', 'agree on 0 of 1 joint', 'Responsible engineer', 'readings borrowed from its mirror part'.slice(0, 8),
  ])('says %j', (words) => {
    expect(text).toContain(words);
  });

  test('a decision that was voided is not among those in force', () => {
    expect(text).toMatch(/void: decision d1 was agreed under D65, the worst light now is FL11/);
  });

  test('the version printed is that of the package', () => {
    expect(software.version).toBe(packageFile.version);
  });
});

describe('form', () => {
  test('the same input gives the same bytes', () => {
    for (const write of [reportHtml, reportJson, reportCsv]) expect(write(inputOf())).toBe(write(inputOf()));
  });

  test('the page is well formed, ids are single and links lead somewhere', () => {
    expect(markupFaults(page)).toEqual([]);
  });

  test('nothing is loaded, run or styled by attribute', () => {
    expect(page).not.toMatch(/<script|<link|<iframe|<img|\son[a-z]+=|\sstyle=|javascript:/i);
    const addresses = [...page.matchAll(/(?:href|src)="([^"]{0,60})|url\(([^)]{0,60})/g)].map((match) => match[1] ?? match[2]);
    expect(addresses.length).toBeGreaterThan(20);
    expect(addresses.filter((address) => !address.startsWith('#') && !address.startsWith('data:font/woff2;'))).toEqual([]);
    expect(page).toContain("default-src 'none'");
  });

  test('every table has a caption and headers with scope, every drawing a name or is hidden', () => {
    expect((page.match(/<table/g) ?? []).length).toBe((page.match(/<caption>/g) ?? []).length);
    expect(page).not.toMatch(/<th(?![a-z])(?![^>]*scope=)/);
    for (const [svg] of page.matchAll(/<svg[^>]*>/g)) expect(svg).toMatch(/aria-label=|aria-hidden="true"/);
  });
});

describe('a hostile cabin', () => {
  const names = ['<script>alert(1)</script>', '"><img src=x onerror=alert(1)>', '\u202Egnp.exe', 'ידית דלת', '=HYPERLINK("http://x","y")', '</style></title><b>', 'A'.repeat(5000), '@SUM(1)\t+1', "-2+3'", 'x\u0000\u001b[31m'];
  const base = smallCabin();
  const hostile = smallCabin({
    name: `${names[0]}${names[5]}`, colourway: names[2],
    parts: base.parts.map((part, index) => ({ ...part, name: names[index] })),
    zones: base.zones.map((zone) => ({ ...zone, name: names[1] })),
    suppliers: base.suppliers.map((supplier) => ({ ...supplier, name: names[7] })),
    joints: base.joints.map((joint) => ({ ...joint, visualRecords: joint.visualRecords?.map((record) => ({ ...record, note: names[4] })) })),
    instruments: base.instruments.map((instrument) => ({ ...instrument, name: names[8], serial: names[9] })),
    files: [{ id: 'f', name: names[1], sha256: '0'.repeat(64) }],
  });
  const hostilePage = reportHtml(inputOf(hostile));

  test('prints its names as text', () => {
    expect(markupFaults(hostilePage)).toEqual([]);
    expect(hostilePage).not.toMatch(/<script|<img|<b>/i);
    expect(hostilePage).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
    expect(hostilePage).toContain('<bdi>ידית דלת</bdi>');
    expect(hostilePage.match(/<\/style>/g)).toHaveLength(1);
    // No control character but line ends, no mark that reorders text.
    const obeyed = [...hostilePage].filter((character) => /[\p{Cc}\u202a-\u202e\u2066-\u2069]/u.test(character) && !/[\n\t]/.test(character));
    expect(obeyed).toEqual([]);
    expect(hostilePage).toContain('\\u{202e}gnp.exe');
  });

  test('no cell of the CSV is a formula', () => {
    for (const row of readCsv(reportCsv(inputOf(hostile)))) {
      for (const [column, cell] of Object.entries(row)) {
        if (/^-?\d+(\.\d+)?(e-?\d+)?$/i.test(cell)) continue;
        expect(cell, column).not.toMatch(/^[\s]*[=+\-@]/);
      }
    }
  });
});
