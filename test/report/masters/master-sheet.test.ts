import { describe, expect, it } from 'vitest';
import { iso17972Reader } from '../../../src/formats/iso17972-reader.ts';
import { masterReadings } from '../../../src/formats/master-readings.ts';
import { judgeCabin } from '../../../src/harmony/judge.ts';
import { masterSheetHtml } from '../../../src/report/masters/index.ts';
import { builtInRuleBooks } from '../../../src/rules/index.ts';
import { smallCabin, smallCurves } from '../../support/small-cabin.ts';
import { serialiseCabin } from '../../../src/cabin/index.ts';
import { parsed, run } from '../../cli/memory-io.ts';
import type { MasterOverview } from '../../../src/harmony/index.ts';
import { markupFaults } from '../markup-faults.ts';

const [book] = builtInRuleBooks;
const cabin = smallCabin();
const judged = judgeCabin(cabin, book);
const files = { 'c.cabin.json': serialiseCabin(cabin) };

describe('the sheet of a master', () => {
  const page = masterSheetHtml(judged, 'm-slate') ?? '';

  it('is self-contained and without script', () => {
    expect(markupFaults(page)).toEqual([]);
    expect(page).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)|style=/iu);
    expect(masterSheetHtml(judged, 'm-slate')).toBe(page);
  });

  it('has the colour under every light that is judged, the spectrum and the dates', () => {
    const required = book.lights.filter(({ standing }) => standing === 'required');
    for (const { light } of required) expect(page).toContain(`<bdi>${light}</bdi>`);
    expect(page).toContain('expires on 2032-06-01');
    // The master was read on five spots that differ by a ripple about the curve; the ripple's mean over sin(2.4 k), k = 1 to 5, times 0.004.
    const ripple = [1, 2, 3, 4, 5].reduce((sum, spot) => sum + Math.sin(2.4 * spot), 0) / 5;
    expect(page).toContain(`>${(smallCurves.slate[0] * (1 + 0.004 * ripple)).toFixed(4)}</data>`);
  });

  it('lists the parts of one supplier only, when asked', () => {
    const own = masterSheetHtml(judged, 'm-slate', 'ferrow') ?? '';
    expect(own).toContain('Dash lower');
    expect(own).not.toContain('Door left');
    expect(page).toContain('Door left');
  });

  it('is none for an unknown master', () => {
    expect(masterSheetHtml(judged, 'm-nothing')).toBeUndefined();
  });
});

describe('the readings of a master as a file', () => {
  it('hold that master and nothing else', () => {
    const set = masterReadings(cabin, 'm-slate');
    expect(new Set(set?.records.map(({ specimen }) => specimen))).toEqual(new Set(['m-slate']));
    expect(set?.records).toHaveLength(10);
    expect(masterReadings(cabin, 'dl-1')).toBeUndefined();
  });
});

describe('adjoin masters', () => {
  it('lists masters and what clashes within them', async () => {
    const result = await run(['masters', 'c.cabin.json'], files);
    expect(result.exit).toBe(0);
    expect(result.stdout).toContain('m-slate');
    expect(parsed<MasterOverview>(await run(['masters', 'c.cabin.json', '--json'], files)).masters.map(({ master }) => master)).toEqual(['m-slate', 'm-cloth']);
  });

  it('writes one as a page, and as ISO 17972-1 that is read back to every digit', async () => {
    const page = await run(['masters', 'c.cabin.json', '--master', 'm-slate', '--out', 'out/m.html'], files);
    expect(page.files[0].content).toBe(masterSheetHtml(judged, 'm-slate'));
    const exchange = await run(['masters', 'c.cabin.json', '--master', 'm-slate', '--out', 'm.cxf'], files);
    const back = iso17972Reader.read({ text: exchange.files[0].content }).value;
    const spectra = back?.records.flatMap(({ data }) => (data.quantity === 'spectrum' ? [data.values] : []));
    expect(spectra).toEqual(cabin.masters?.[0].readings.flatMap((reading) => (reading.quantity === 'spectrum' ? [reading.values] : [])));
  });

  it('refuses an unknown master, a missing one and an unknown ending', async () => {
    for (const words of [['--master', 'm-slat'], ['--out', 'x.html'], ['--master', 'm-slate', '--out', 'x.doc'], ['--supplier', 'nobody']]) {
      expect(await run(['masters', 'c.cabin.json', ...words], files)).toMatchObject({ exit: 2, files: [], stdout: '' });
    }
  });
});
