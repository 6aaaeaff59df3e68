import { beforeEach, expect, test } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { faultsOfAccess, frames, setScheme, until } from '../support/screen.ts';
import { drop, eachWithWorkbench, one, openByDrop, wordsOf as words, workbench } from '../support/whole-workbench.ts';

/** A surface as a user brings it: a file dropped on the open cabin, measured, looked at, added to a specimen. */
const view = (): ShadowRoot => {
  const root = one('adjoin-surface-view')?.shadowRoot;
  if (!root) throw new Error('the view of surfaces is not shown');
  return root;
};

/** Binary SDF by ISO 25178-71 of an egg box of amplitude 20 um and period 1 mm: Sa = 4 A / pi^2 = 8.11 um, Sq = A / 2 = 10 um, closed forms. */
function eggBox(): File {
  const [points, spacingMm, period] = [400, 0.01, 100];
  const bytes = new Uint8Array(81 + 4 * points * points);
  bytes.set(new TextEncoder().encode('bISO-1.0invented  010120260900010120260900'));
  const data = new DataView(bytes.buffer);
  data.setUint16(42, points, true);
  data.setUint16(44, points, true);
  [spacingMm / 1000, spacingMm / 1000, 1e-6, -1].forEach((value, index) => data.setFloat64(46 + 8 * index, value, true));
  bytes[79] = 3;
  for (let y = 0; y < points; y += 1) {
    for (let x = 0; x < points; x += 1) data.setFloat32(81 + 4 * (y * points + x), 20 * Math.sin((2 * Math.PI * x) / period) * Math.sin((2 * Math.PI * y) / period), true);
  }
  return new File([bytes], 'egg-box.sdf');
}

const cabinNow = (): Cabin => (one('adjoin-surface-view') as unknown as { desk: { present: Cabin } }).desk.present;

eachWithWorkbench();

beforeEach(async () => {
  await openByDrop();
});

test('with no file it says what it takes, reached by its address', async () => {
  location.hash = '#/surfaces';
  await until('the target', () => one('adjoin-surface-view')?.shadowRoot?.querySelector('.target'));
  for (const scheme of ['light', 'dark'] as const) {
    setScheme(scheme);
    await frames(2);
    expect(await faultsOfAccess(workbench())).toEqual([]);
  }
});

test('a dropped height map is measured, shown, and added to a specimen in one step that undo takes back', async () => {
  drop(eggBox());
  const table = await until('the parameters', () => one('adjoin-surface-view')?.shadowRoot?.querySelector('.right table'));
  await until('its name in the address', () => location.hash === '#/surfaces?file=egg-box.sdf');
  const value = (symbol: string): number => Number.parseFloat(words([...table.querySelectorAll('tr')].find((row) => words(row.querySelector('th')) === symbol)?.querySelector('.number')));
  expect(Math.abs(value('Sa') / ((4 * 20) / Math.PI ** 2) - 1)).toBeLessThan(0.005);
  expect(Math.abs(value('Sq') / 10 - 1)).toBeLessThan(0.005);
  const canvas = view().querySelector('canvas')!;
  expect([canvas.width, canvas.height]).toEqual([400, 400]);
  const greys = new Set(canvas.getContext('2d')!.getImageData(0, 0, 400, 400).data);
  expect(greys.size).toBeGreaterThan(60);
  expect(words(view().querySelector('.curve p'))).toMatch(/At 0\.7 m the texture has [\d.]+ ± [\d.]+ times/);
  expect(await faultsOfAccess(workbench())).toEqual([]);

  const [specimen] = cabinNow().parts.flatMap((part) => part.sources.flatMap((source) => source.specimens));
  const select = view().querySelector<HTMLSelectElement>('footer select')!;
  select.value = specimen!.id;
  select.dispatchEvent(new Event('change'));
  await frames(2);
  view().querySelector<HTMLButtonElement>('footer .strong')!.click();
  await until('the empty view', () => view().querySelector('.target'));
  expect(location.hash).toBe(`#/surfaces?specimen=${specimen!.id}`);
  const after = cabinNow().parts.flatMap((part) => part.sources.flatMap((source) => source.specimens)).find(({ id }) => id === specimen!.id)!;
  const added = after.readings.at(-1)!;
  expect(added.quantity === 'texture' && added.parameters.saUm).toBeCloseTo((4 * 20) / Math.PI ** 2, 1);
  expect(cabinNow().files?.at(-1)?.name).toBe('egg-box.sdf');
  (one('adjoin-surface-view') as unknown as { desk: { undo: () => void } }).desk.undo();
  expect(cabinNow().parts.flatMap((part) => part.sources.flatMap((source) => source.specimens)).find(({ id }) => id === specimen!.id)!.readings).toHaveLength(specimen!.readings.length);
});

test('a file that is no surface is refused with what is wrong', async () => {
  drop(new File(['no height map'], 'broken.sdf'));
  const faults = await until('the faults', () => one('adjoin-surface-view')?.shadowRoot?.querySelector('.faults'));
  expect(words(faults)).toContain('broken.sdf was not taken');
  expect(faults.querySelectorAll('li').length).toBeGreaterThan(0);
});

test('what the fields say stands in the address and comes from it; a wrong length is shown and nothing is measured by it', async () => {
  location.hash = '#/surfaces?form=none&s-filter=0%2C02&of=tool&seen=1500&lux=250&factor=40&file=egg-box.sdf';
  const absent = await until('what is not here', () => one('adjoin-surface-view')?.shadowRoot?.querySelector('.absent'));
  expect(words(absent)).toContain('This address is of the file egg-box.sdf');
  expect(await faultsOfAccess(workbench())).toEqual([]);
  drop(eggBox());
  await until('the parameters', () => one('adjoin-surface-view')?.shadowRoot?.querySelector('.right table'));
  expect(words(view().querySelector('.right .quiet'))).toBe('ISO 25178-2; form: left in; S-filter 0.02 mm, L-filter none');
  expect(words(view().querySelector('.curve p'))).toMatch(/^At 1\.5 m/);
  const field = (label: string): HTMLInputElement | HTMLSelectElement =>
    [...view().querySelectorAll('label')].find((one) => words(one.querySelector('.label')).startsWith(label))!.querySelector<HTMLInputElement | HTMLSelectElement>('input, select')!;
  expect(field('The surface is of').value).toBe('tool');
  expect([field('Illuminance').value, field('Luminance factor').value]).toEqual(['250', '40']);
  const type = async (label: string, value: string): Promise<void> => {
    field(label).value = value;
    field(label).dispatchEvent(new Event('change', { bubbles: true }));
    await frames(2);
  };
  await type('Viewing distance', '900');
  expect(location.hash).toContain('seen=900');
  expect(words(view().querySelector('.curve p'))).toMatch(/^At 0\.9 m/);
  await type('L-filter', '2.5 mm');
  expect(field('L-filter').getAttribute('aria-invalid')).toBe('true');
  expect(view().querySelector<HTMLButtonElement>('form .strong')!.disabled).toBe(true);
  expect(await faultsOfAccess(workbench())).toEqual([]);
  drop(eggBox());
  await until('the fault', () => words(one('adjoin-surface-view')?.shadowRoot?.querySelector('.faults')).includes('2.5 mm'));
  await type('L-filter', '2.5');
  view().querySelector<HTMLButtonElement>('form .strong')!.click();
  await until('the parameters again', () => words(one('adjoin-surface-view')?.shadowRoot?.querySelector('.right .quiet')).includes('L-filter 2.5 mm'));
});
