import type { LitElement } from 'lit';
import { afterEach, describe, expect, test } from 'vitest';
import '../../components/app/adjoin-faults.ts';
import '../../components/app/adjoin-header.ts';
import '../../components/app/adjoin-start.ts';
import '../../components/views/cabin/adjoin-cabin-view.ts';
import '../../components/views/joint/adjoin-joint-view.ts';
import { findLight, lightGroups, sweepLights } from '../../components/model/light-groups.ts';
import { partColours } from '../../components/model/part-colours.ts';
import { jointPath } from '../../src/cabin/index.ts';
import type { JointPaths } from '../../src/workers/session-protocol.ts';
import { madeUpCabin, madeUpJudgement } from '../support/hand-made-judgement.ts';
import { deep, faultsOfAccess, mount, setScheme } from '../support/screen.ts';

const light = findLight('D65');
const paths: JointPaths = new Map(madeUpCabin.joints.flatMap((joint) => {
  const path = jointPath(madeUpCabin, joint);
  return path === undefined ? [] : [[joint.id, path] as const];
}));
const colours = light === undefined ? new Map() : partColours(madeUpJudgement, light, 'srgb');
const open = { file: 'small.cabin.json', judging: false, cabin: madeUpCabin, judgement: madeUpJudgement, paths, issues: [] };
const linkTo = (id: string): string => `#/joint/${id}`;

const joint = (id: string): object => ({
  cabin: madeUpCabin, judgement: madeUpJudgement, joint: madeUpJudgement.joints.find((one) => one.id === id), listed: madeUpJudgement.joints,
  light: 'D65', gamut: 'srgb', back: '#/cabin', linkTo,
});

const screens: readonly (readonly [name: string, tag: string, properties: object, expected: string])[] = [
  ['the start', 'adjoin-start', {}, 'clash, and why'],
  ['the head', 'adjoin-header', { open, groups: lightGroups(madeUpCabin, madeUpJudgement), light: 'D65', sweep: sweepLights(madeUpJudgement) }, 'Small cabin for tests'],
  ['the cabin', 'adjoin-cabin-view', { cabin: madeUpCabin, judgement: madeUpJudgement, colours, paths, light: 'D65', filter: {}, linkTo }, '2 hold, 2 clash (1 accepted), 2 open.'],
  ['a filter that nothing passes', 'adjoin-cabin-view', { cabin: madeUpCabin, judgement: madeUpJudgement, colours, paths, light: 'D65', filter: { search: 'zzz' }, linkTo }, 'No joint passes this filter.'],
  ['a joint that holds', 'adjoin-joint-view', joint('j1'), 'Dash lower is 0.38 from Dash upper'],
  ['an accepted clash with decision and booth record', 'adjoin-joint-view', joint('j2'), 'clashes, accepted until 2031-06-30'],
  ['an open joint', 'adjoin-joint-view', joint('j3'), '18 spots on each side would decide it'],
  ['a joint without data', 'adjoin-joint-view', joint('j6'), 'CIELAB under D65 only'],
];

/** Text as it is read: what stands in one element joins, elements are apart. */
function text(root: ParentNode): string {
  return [...root.childNodes].map((node) => {
    if (node.nodeType === Node.TEXT_NODE) return node.textContent ?? '';
    if (!(node instanceof Element) || node.tagName === 'STYLE') return '';
    return ` ${node.shadowRoot ? text(node.shadowRoot) : text(node)} `;
  }).join('');
}
const flat = (content: string): string => content.replace(/\s+/g, ' ');

afterEach(() => {
  delete document.documentElement.dataset['theme'];
});

describe.each(screens)('%s', (_name, tag, properties, expected) => {
  test('renders', async () => {
    const element = await mount<LitElement>(tag, properties as Partial<LitElement>);
    const words = flat(text(element.shadowRoot as ShadowRoot));
    expect(words).toContain(expected);
  });

  test.each(['light', 'dark'] as const)('has no fault of access in %s ink', async (scheme) => {
    setScheme(scheme);
    const element = await mount<LitElement>(tag, properties as Partial<LitElement>);
    expect(await faultsOfAccess(element)).toEqual([]);
  });

  test('has no style attribute that a strict policy would block', async () => {
    const element = await mount<LitElement>(tag, properties as Partial<LitElement>);
    expect(deep(element.shadowRoot as ShadowRoot, '[style]')).toEqual([]);
  });
});

test('the list of faults names place, line, column, what was found and what was expected', async () => {
  const issue = { code: 'unknown-part', severity: 'error', path: 'joints[0].parts[1]', line: 12, column: 7, found: '"z"', expected: 'the id of a part', hint: 'Add the part.' } as const;
  const element = await mount<LitElement>('adjoin-faults', { refusal: { file: 'bad.cabin.json', issues: [issue] }, kept: 'Shuttle' } as Partial<LitElement>);
  const words = flat(text(element.shadowRoot as ShadowRoot));
  for (const part of ['bad.cabin.json was not opened', '1 fault in the file', 'Shuttle', 'joints[0].parts[1]', 'line 12, column 7', 'unknown part', '"z"', 'the id of a part', 'Add the part.']) {
    expect(words).toContain(part);
  }
  expect(await faultsOfAccess(element)).toEqual([]);
});

test('samples are painted in their computed colour, and alike in light and dark ink', async () => {
  const fills: string[][] = [];
  for (const scheme of ['light', 'dark'] as const) {
    setScheme(scheme);
    const element = await mount<LitElement>('adjoin-cabin-view', screens[2]?.[2] as Partial<LitElement>);
    fills.push(deep<SVGElement>(element.shadowRoot as ShadowRoot, '.face .sample').map((face) => getComputedStyle(face).fill));
  }
  expect(fills[0]?.length).toBe(6);
  expect(fills[0]).toEqual(fills[1]);
  expect(fills[0]?.[0]).toMatch(/^(color\(srgb|rgb)/);
});

test('what is pointed at on the wall is lit on the map', async () => {
  const element = await mount<LitElement>('adjoin-cabin-view', screens[2]?.[2] as Partial<LitElement>);
  const root = element.shadowRoot as ShadowRoot;
  expect(deep(root, '.halo')).toHaveLength(0);
  deep(root, 'adjoin-strip')[1]?.dispatchEvent(new PointerEvent('pointerover', { bubbles: true, composed: true }));
  await element.updateComplete;
  await new Promise((resolve) => setTimeout(resolve, 50));
  expect(deep(root, '.halo')).toHaveLength(1);
  expect(deep(root, '.readout')[0]?.textContent).toContain('Door left');
});

test('the wall has one tab stop and the arrow keys move along it', async () => {
  const element = await mount<LitElement>('adjoin-cabin-view', screens[2]?.[2] as Partial<LitElement>);
  const links = (): HTMLAnchorElement[] => deep<HTMLAnchorElement>(element.shadowRoot as ShadowRoot, 'adjoin-strip').flatMap((strip) => [...(strip.shadowRoot?.querySelectorAll('a') ?? [])]);
  expect(links().filter((link) => link.tabIndex === 0)).toHaveLength(1);
  links()[0]?.focus();
  const press = (key: string): boolean => deepActive()?.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, composed: true, cancelable: true })) ?? false;
  press('ArrowDown');
  expect(deepActive()).toBe(links()[1]);
  press('End');
  expect(deepActive()).toBe(links().at(-1));
  press('Home');
  expect(deepActive()).toBe(links()[0]);
});

function deepActive(): Element | null {
  let active = document.activeElement;
  while (active?.shadowRoot?.activeElement) active = active.shadowRoot.activeElement;
  return active;
}
