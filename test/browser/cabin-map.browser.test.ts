import { afterEach, beforeEach, expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../components/app/adjoin-workbench.ts';
import type { AdjoinWorkbench } from '../../components/app/adjoin-workbench.ts';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { serialiseCabin } from '../../src/cabin/index.ts';
import { smallCabin } from '../support/small-cabin.ts';
import { deep, faultsOfAccess, frames, mount, until } from '../support/screen.ts';

let workbench: AdjoinWorkbench;
const all = <E extends Element = HTMLElement>(selector: string): E[] => deep<E>(workbench.shadowRoot as ShadowRoot, selector);
const one = <E extends Element = HTMLElement>(selector: string): E | undefined => all<E>(selector)[0];
const map = (): HTMLElement => one('.map') as HTMLElement;
const words = (): string => one('.readout')?.textContent?.replace(/\s+/g, ' ').trim() ?? '';
const option = (name: string): string | null => new URLSearchParams(location.hash.split('?')[1]).get(name);
const cabin = (): Cabin => (one('adjoin-cabin-view') as unknown as { cabin: Cabin }).cabin;
const press = async (keys: string): Promise<void> => { await userEvent.keyboard(keys); await frames(1); };
const radio = (name: string): HTMLButtonElement | undefined => all<HTMLButtonElement>('[role=radio]').find((each) => each.textContent?.trim() === name);
const outlineOf = (id: string) => cabin().parts.find((part) => part.id === id)?.outline;
const faces = (): SVGElement[] => all<SVGElement>('.face');
const face = (id: string): SVGElement => faces().find((each) => each.dataset['part'] === id) as SVGElement;

let address: string;

async function open(document: Cabin): Promise<void> {
  address = URL.createObjectURL(new File([serialiseCabin(document)], 'small.cabin.json'));
  history.replaceState(null, '', `#/cabin?open=${encodeURIComponent(address)}`);
  workbench = await mount<AdjoinWorkbench>('adjoin-workbench', {});
  await until('the wall', () => one('adjoin-strip'));
  await until('the map', () => faces().length > 3);
}

/** Middle of a thing on the screen. */
function middle(thing: Element): readonly [number, number] {
  const { left, top, width, height } = thing.getBoundingClientRect();
  return [left + width / 2, top + height / 2];
}

function pointer(kind: string, [clientX, clientY]: readonly [number, number], more: PointerEventInit = {}): void {
  map().dispatchEvent(new PointerEvent(kind, { clientX, clientY, pointerId: 3, button: 0, bubbles: true, cancelable: true, composed: true, ...more }));
}

async function drag(from: readonly [number, number], to: readonly [number, number]): Promise<void> {
  map().setPointerCapture = () => {};
  pointer('pointerdown', from);
  for (const share of [0.2, 0.6, 1]) pointer('pointermove', [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share]);
  await frames(1);
  pointer('pointerup', to);
  await frames(2);
}

beforeEach(() => {
  sessionStorage.clear();
});

afterEach(() => {
  document.body.replaceChildren();
  history.replaceState(null, '', '#/');
  URL.revokeObjectURL(address);
});

test('keys zoom, move and fit; where one looks stays in the address', async () => {
  await open(smallCabin());
  const before = face('console').getBoundingClientRect().width;
  map().focus();
  await press('++');
  await until('the view in the address', () => option('at'));
  expect(face('console').getBoundingClientRect().width / before).toBeGreaterThan(1.5);
  const [x] = middle(face('console'));
  await press('{Control>}{ArrowRight}{/Control}');
  await until('another view', () => middle(face('console'))[0] < x - 30);
  await press('0');
  await until('the whole', () => option('at') === null);
  expect(face('console').getBoundingClientRect().width).toBeCloseTo(before, 0);
});

test('two fingers drawn apart zoom about their middle, and lifting them neither moves nor chooses anything', async () => {
  await open(smallCabin());
  const [before, [x, y]] = [face('console').getBoundingClientRect().width, middle(face('console'))];
  const fingers = [{ pointerId: 11, pointerType: 'touch' }, { pointerId: 12, pointerType: 'touch' }] as const;
  map().setPointerCapture = () => {};
  pointer('pointerdown', [x - 40, y], fingers[0]);
  pointer('pointerdown', [x + 40, y], fingers[1]);
  // First the one, then the other, until they are three times as far apart.
  for (const far of [60, 90, 120]) pointer('pointermove', [x + far, y], fingers[1]);
  for (const far of [60, 90, 120]) pointer('pointermove', [x - far, y], fingers[0]);
  await frames(2);
  expect(face('console').getBoundingClientRect().width / before).toBeCloseTo(3, 1);
  pointer('pointerup', [x + 120, y], fingers[1]);
  pointer('pointermove', [x - 100, y + 30], fingers[0]);
  pointer('pointerup', [x - 100, y + 30], fingers[0]);
  await until('the view in the address', () => option('at'));
  const [nowX, nowY] = middle(face('console'));
  expect(Math.abs(nowY - y)).toBeLessThan(2);
  expect(Math.abs(nowX - x)).toBeLessThan(90);
  expect(face('console').getBoundingClientRect().width / before).toBeCloseTo(3, 1);
  expect(all('.chosen')).toHaveLength(0);
  expect(location.hash).toContain('#/cabin');
});

test('a drag moves, and does not open or choose anything', async () => {
  await open(smallCabin());
  map().focus();
  await press('++');
  await frames(20);
  const [x, y] = middle(face('dash-lower'));
  const hash = location.hash.split('?')[0];
  await drag([x, y], [x + 60, y + 10]);
  expect(middle(face('dash-lower'))[0]).toBeCloseTo(x + 60, 0);
  expect(location.hash.split('?')[0]).toBe(hash);
  expect(all('.chosen')).toHaveLength(0);
});

test('faces are tinted by verdict with a key, and the choice is in the address', async () => {
  await open(smallCabin());
  await userEvent.selectOptions(one<HTMLSelectElement>('select[aria-label="Faces tinted by"]') as HTMLElement, 'verdict');
  await until('the tint in the address', () => option('tint') === 'verdict');
  await until('the key of the tint', () => all('.legend.tint li').map((item) => item.textContent?.trim()).join() === ['every joint holds', 'at worst open', 'a joint clashes'].join());
  await until('the hatching', () => all('.face .hatch').length > 0);
  expect(await faultsOfAccess(workbench)).toEqual([]);
});

test('a run shows its drift on the map, as a figure and as a table', async () => {
  await open(smallCabin());
  await userEvent.selectOptions(one<HTMLSelectElement>('select[aria-label="Drift along a run"]') as HTMLElement, 'r1');
  await until('the run', () => one('.overlay .run'));
  expect(option('run')).toBe('r1');
  expect(all('.run tbody th').map((head) => head.textContent)).toEqual(['Door left', 'Dash lower', 'Door right']);
});

test('parts picked one after the other by keys show the drift along them, which stays in the address and is kept as a run', async () => {
  await open(smallCabin());
  map().focus();
  await press('p{ArrowRight}{Enter}');
  const first = (await until('the first part', () => one('adjoin-map-foot')?.shadowRoot?.querySelector('b')?.textContent ?? undefined));
  expect(option('path')).toBeNull();
  await press('{ArrowRight}{Shift>}{Enter}{/Shift}');
  await until('the path in the address', () => option('path'));
  const figure = await until('the drift', () => one('.run figcaption'));
  expect(figure.textContent).toContain('along the');
  (figure.querySelector('details') as HTMLDetailsElement).open = true;
  const rows = all('.run tbody tr').map((row) => row.textContent?.replace(/\s+/g, ' ').trim() ?? '');
  expect(rows).toHaveLength(2);
  expect(rows[0]).toMatch(/0\.00$/);
  expect(rows[0]).toContain(first);
  const picked = option('path')?.split(',').map(decodeURIComponent);
  const before = cabin().runs?.length ?? 0;
  all<HTMLButtonElement>('button').find((each) => each.textContent === 'Watch this path')?.click();
  const submit = await until('the form', () => one<HTMLButtonElement>('dialog[open] button[type=submit]') ?? (cabin().runs?.length === before + 1 ? map() : undefined));
  if (submit instanceof HTMLButtonElement) submit.click();
  await until('the run', () => (cabin().runs?.length ?? 0) === before + 1);
  expect(cabin().runs?.at(-1)?.parts).toEqual(picked);
  await press('{Escape}');
});

test('parts without an outline are named in their boxes', async () => {
  await page.viewport(1400, 900);
  const bare = smallCabin();
  await open({ ...bare, parts: bare.parts.map(({ outline: _, ...part }) => part) });
  const names = await until('the names', () => (all('.box-names text').length > 0 ? all('.box-names text') : undefined));
  expect(names).toHaveLength(bare.parts.length);
  expect(names.every((name) => bare.parts.some((part) => part.name.startsWith((name.textContent ?? '').replace('…', ''))))).toBe(true);
});

test('a point of an outline is dragged and moved by keys, each as one step of undo', async () => {
  await open(smallCabin());
  pointer('pointerdown', middle(face('console')));
  pointer('pointerup', middle(face('console')));
  await until('the choice', () => all('.chosen').length === 1);
  radio('Outline')?.click();
  await until('the handles', () => all('.handle').length === 4);
  const [x, y] = middle(all('.handle')[1] as Element);
  await drag([x, y], [x + 40, y]);
  await until('the moved point', () => (outlineOf('console')?.[1]?.[0] ?? 0) > 810);
  const dragged = outlineOf('console');
  map().focus();
  await press('{PageDown}');
  await until('the third point', () => words().includes('point 3 of 4'));
  const [, , third] = dragged ?? [];
  await press('{ArrowDown}{ArrowDown}{ArrowDown}');
  await until('the point moved by keys', () => (outlineOf('console')?.[2]?.[1] ?? 0) > (third?.[1] ?? 0));
  await press('{Insert}');
  await until('one point more', () => outlineOf('console')?.length === 5);
  await press('{Delete}');
  await until('one point less', () => outlineOf('console')?.length === 4);
  for (let step = 0; step < 3; step += 1) await press('{Control>}z{/Control}');
  await until('the outline as dragged', () => JSON.stringify(outlineOf('console')) === JSON.stringify(dragged));
  await press('{Control>}z{/Control}');
  await until('the outline as it was', () => JSON.stringify(outlineOf('console')) === JSON.stringify(smallCabin().parts[4]?.outline));
});

test('an outline is drawn by keys where a part has none', async () => {
  await open({ ...smallCabin(), parts: smallCabin().parts.map(({ outline, ...part }) => (part.id === 'console' || outline === undefined ? part : { ...part, outline })) });
  pointer('pointerdown', middle(face('console')));
  pointer('pointerup', middle(face('console')));
  await until('the choice', () => all('.chosen').length === 1);
  radio('Outline')?.click();
  map().focus();
  await until('the cross', () => one('.draft'));
  for (const keys of [' ', '{Shift>}{ArrowRight}{/Shift} ', '{Shift>}{ArrowDown}{/Shift} ', '{Enter}']) await press(keys);
  await until('the outline', () => outlineOf('console')?.length === 3);
});

test('a joint is drawn from part to part, and joined by keys', async () => {
  const { joints, ...rest } = smallCabin();
  await open({ ...rest, joints: joints.filter(({ id }) => id !== 'j4') });
  radio('Join')?.click();
  await drag(middle(face('console')), middle(face('dash-upper')));
  const dialog = await until('the form', () => one<HTMLDialogElement>('dialog[open]'));
  expect(dialog.textContent).toContain('Join two parts');
  await userEvent.selectOptions(all<HTMLSelectElement>('dialog select').find((each) => each.textContent?.includes('sightline')) as HTMLElement, 'sightline');
  all<HTMLFormElement>('dialog form').at(0)?.requestSubmit();
  await until('the joint', () => cabin().joints.some(({ parts, kind }) => kind === 'sightline' && parts.includes('console') && parts.includes('dash-upper')));
  map().focus();
  await press('{Escape}');
  await press('{ArrowRight}');
  const first = await until('a part that is pointed at', () => words());
  await press('j');
  await until('the first part', () => words().includes('Pick the second part'));
  await press('{ArrowDown}{Enter}');
  await until('the form again', () => one('dialog[open]'));
  expect(first.length).toBeGreaterThan(3);
});

test('the matrix is walked by keys to a joint and back to the map, without fault of access', async () => {
  await open(smallCabin());
  radio('Matrix')?.click();
  const grid = await until('the grid', () => one<SVGElement>('svg[role=grid]'));
  expect(option('show')).toBe('matrix');
  expect(all('[role=gridcell]')).toHaveLength(36);
  grid.focus();
  await press(' ');
  const active = (): Element | undefined => all(`#${grid.getAttribute('aria-activedescendant')}`)[0];
  expect(active()?.getAttribute('aria-label')).toMatch(/^Dash upper and Dash lower: edge, (holds|open|clashes), limit use/);
  await press('{ArrowDown}');
  expect(active()?.getAttribute('aria-label')).toBe('Dash lower itself');
  expect(await faultsOfAccess(workbench)).toEqual([]);
  await press('{ArrowUp}{Enter}');
  await until('the joint', () => location.hash.startsWith('#/joint/j1'));
});

test('the map rests while the matrix is shown, out of the way of keys and of those who listen, and is there again as it was', async () => {
  await open(smallCabin());
  const [kept, before] = [map(), face('console')];
  radio('Matrix')?.click();
  await until('the grid', () => one<SVGElement>('svg[role=grid]'));
  expect(all('.map')).toHaveLength(0);
  expect([kept.isConnected, kept.hasAttribute('tabindex'), kept.getAttribute('aria-hidden')]).toEqual([true, false, 'true']);
  expect(before.checkVisibility({ contentVisibilityAuto: true })).toBe(false);
  radio('Map')?.click();
  await until('the map', () => one('.map'));
  expect(face('console')).toBe(before);
  expect([map().tabIndex, map().hasAttribute('aria-hidden')]).toEqual([0, false]);
  map().focus();
  await press('p{ArrowRight}{Enter}');
  await until('the choice', () => all('.chosen').length === 1);
});

test('on a narrow screen the matrix pushes down what lies below it and does not cover it', async () => {
  await page.viewport(390, 844);
  await open(smallCabin());
  expect(map().getBoundingClientRect().height).toBe(256);
  radio('Matrix')?.click();
  await until('the grid', () => one<SVGElement>('svg[role=grid]'));
  const [matrix, foot, wall] = ['adjoin-matrix', 'adjoin-map-foot', 'adjoin-wall'].map((name) => (one(name) as HTMLElement).getBoundingClientRect());
  expect(all('.how')[0]?.getBoundingClientRect().bottom).toBeLessThanOrEqual(matrix?.bottom ?? 0);
  expect(foot?.top).toBeGreaterThanOrEqual(matrix?.bottom ?? Infinity);
  expect(wall?.top).toBeGreaterThanOrEqual(foot?.bottom ?? Infinity);
  await page.viewport(1400, 900);
});

test('the map keeps its size whatever is pointed at', async () => {
  await page.viewport(1400, 900);
  await open(smallCabin());
  const height = (): number => map().getBoundingClientRect().height;
  const before = height();
  map().focus();
  const heights = new Set<number>();
  for (const key of ['{ArrowRight}', '{ArrowRight}', '{ArrowRight}', 'p{ArrowRight}', '{ArrowDown}']) {
    await press(key);
    heights.add(height());
  }
  expect(words().length).toBeGreaterThan(10);
  expect([...heights]).toEqual([before]);
});
