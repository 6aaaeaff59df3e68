import { expect, test } from 'vitest';
import { smallCabin } from '../support/small-cabin.ts';
import { faultsOfAccess, frames, setScheme, until } from '../support/screen.ts';
import { all, eachWithWorkbench, one, openByDrop, workbench, wordsOf as words } from '../support/whole-workbench.ts';

/** The report as one makes it: previewed, narrowed to some sections, exported. */
eachWithWorkbench();

const preview = (): Document | undefined => one<HTMLIFrameElement>('iframe')?.contentDocument ?? undefined;
const begin = async (hash: string): Promise<Document> => {
  await openByDrop(smallCabin({ ruleBook: 'ciede2000' }));
  location.hash = hash;
  return until('the preview', () => (preview()?.querySelector('#clashes-title') && preview()?.readyState === 'complete' ? preview() : undefined));
};

test('is previewed with its own style and typeface and runs no script', async () => {
  const page = await begin('#/report');
  const frame = one<HTMLIFrameElement>('iframe');
  expect(frame?.getAttribute('sandbox')).not.toContain('allow-scripts');
  await until('the style', () => page.adoptedStyleSheets.length > 0);
  expect(getComputedStyle(page.querySelector('h1') as Element).fontWeight).toBe('250');
  expect(getComputedStyle(page.querySelector('main') as Element).backgroundColor).toBe('rgb(255, 255, 255)');
  expect(page.querySelector('h1')?.textContent).toBe(smallCabin().name);
  page.querySelector<HTMLAnchorElement>('.contents a[href="#limits"]')?.click();
  await until('the section that was asked for', () => (page.scrollingElement?.scrollTop ?? 0) > 1000);
  expect(location.hash).toBe('#/report');
  expect(preview()).toBe(page);
  for (const scheme of ['light', 'dark'] as const) {
    setScheme(scheme);
    await frames(2);
    expect(await faultsOfAccess(workbench())).toEqual([]);
  }
});

test('leaves out the sections that are not wanted, in the address, but never the cautions', async () => {
  const page = await begin('#/report');
  expect(page.querySelector('#validation')).not.toBeNull();
  const box = all<HTMLLabelElement>('.sections label').find((label) => words(label) === 'Validation')?.querySelector('input');
  box?.click();
  await until('the shorter report', () => preview() !== undefined && preview()?.querySelector('#limits') !== null && preview()?.querySelector('#validation') === null);
  expect(location.hash).toContain('without=validation');
});

test('is exported with the numbers that are previewed', async () => {
  const page = await begin('#/report');
  const saved: { name: string; text: Promise<string> }[] = [];
  const blobs = new Map<string, Blob>();
  const { createObjectURL } = URL;
  URL.createObjectURL = (blob: Blob) => { const address = createObjectURL.call(URL, blob); blobs.set(address, blob); return address; };
  const click = HTMLAnchorElement.prototype.click;
  HTMLAnchorElement.prototype.click = function caught(this: HTMLAnchorElement) { saved.push({ name: this.download, text: (blobs.get(this.href) as Blob).text() }); };
  try {
    for (const format of ['HTML', 'JSON', 'CSV']) all('.actions button').find((button) => words(button) === format)?.click();
    await until('three files', () => saved.length === 3);
  } finally {
    URL.createObjectURL = createObjectURL;
    HTMLAnchorElement.prototype.click = click;
  }
  const text = async (ending: string): Promise<string> => (await saved.find(({ name }) => name.endsWith(ending))?.text) ?? '';
  const json = JSON.parse(await text('.json')) as { summary: { expectedWrongHolds: number }; files: { sha256: string }[] };
  const shown = page.querySelector<HTMLDataElement>('.short data[value]');
  expect(await text('.html')).toContain(`<data value="${json.summary.expectedWrongHolds}">`);
  expect(page.querySelector(`data[value="${json.summary.expectedWrongHolds}"]`)).not.toBeNull();
  expect(shown).not.toBeNull();
  expect(json.files[0]?.sha256).toMatch(/^[0-9a-f]{64}$/u);
  expect(await text('.csv')).toMatch(/^row,id,standard,trial,/u);
});

test('says so where there is nothing to report', async () => {
  await openByDrop(smallCabin({ ruleBook: 'ciede2000', parts: [], joints: [], runs: [] }));
  location.hash = '#/report';
  await until('the empty view', () => words(one('adjoin-report-view')?.shadowRoot?.querySelector('.empty')).startsWith('There is nothing to report'));
  expect(await faultsOfAccess(workbench())).toEqual([]);
});
