import { afterEach, expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import '../../components/views/cabin/adjoin-cabin-view.ts';
import type { AdjoinCabinView } from '../../components/views/cabin/adjoin-cabin-view.ts';
import type { AdjoinStrip } from '../../components/views/cabin/adjoin-strip.ts';
import type { JointResult } from '../../src/harmony/judgement.ts';
import { madeUpCabin, madeUpJudgement } from '../support/hand-made-judgement.ts';
import { deep, faultsOfAccess, frames, mount, until } from '../support/screen.ts';

const count = 3000;
const [pattern] = madeUpCabin.joints;
const [judged] = madeUpJudgement.joints;
const name = (place: number): string => `joint-${String(place).padStart(4, '0')}`;
const cabin = { ...madeUpCabin, joints: Array.from({ length: count }, (_, place) => ({ ...pattern as NonNullable<typeof pattern>, id: name(place) })) };
/** All alike, so that the wall has them in the order of their names. */
const joints = cabin.joints.map(({ id }): JointResult => ({ ...judged as JointResult, id }));

let view: AdjoinCabinView;
const wall = (): HTMLElement => view.shadowRoot?.querySelector('adjoin-wall') as HTMLElement;
const items = (): HTMLElement[] => [...wall().shadowRoot?.querySelectorAll<HTMLElement>('ol > li') ?? []];
const stripOf = (item: Element): AdjoinStrip => item.querySelector('adjoin-strip') as AdjoinStrip;
const focused = (): string | undefined => items().map(stripOf).find((strip) => strip.matches(':focus-within'))?.result.id;

async function open(): Promise<void> {
  await page.viewport(1440, 900);
  view = await mount<AdjoinCabinView>('adjoin-cabin-view', { cabin, judgement: { ...madeUpJudgement, joints }, linkTo: (id) => `#/joint/${id}` });
  (view.parentElement as HTMLElement).style.height = '800px';
  await until('the strips', () => items().length > 4);
  await frames(4);
}

/** The strip that is seen at a height of the wall. */
function seenAt(px: number): string | undefined {
  const box = wall().getBoundingClientRect();
  const item = items().find((one) => {
    const { top, bottom } = one.getBoundingClientRect();
    return top <= box.top + px && bottom > box.top + px;
  });
  return item === undefined ? undefined : stripOf(item).result.id;
}

/** Whether the whole strip of a joint is seen. */
function inSight(joint: string): boolean {
  const item = items().find((one) => stripOf(one).result.id === joint);
  const [frame, box] = [wall().getBoundingClientRect(), item?.getBoundingClientRect()];
  return box !== undefined && box.top >= frame.top - 1 && box.bottom <= frame.bottom + 1;
}

afterEach(() => document.body.replaceChildren());

test('of thousands of strips those about what is seen are rendered, each with its place and their number for those who cannot see', async () => {
  await open();
  expect(items().length).toBeLessThan(40);
  expect(items()[0]?.getAttribute('aria-posinset')).toBe('1');
  expect(items()[0]?.getAttribute('aria-setsize')).toBe(String(count));
  expect(wall().scrollHeight).toBeGreaterThan(count * 80);
  expect(await faultsOfAccess(view)).toEqual([]);
});

test('the keys reach the last strip and the first, and every one on the way', async () => {
  await open();
  stripOf(items()[0] as HTMLElement).focus();
  await until('the focus', () => focused() === name(0));
  await userEvent.keyboard('{ArrowDown}');
  await until('the second', () => focused() === name(1));
  await userEvent.keyboard('{End}');
  await until('the last', () => focused() === name(count - 1));
  expect(items().find((item) => stripOf(item).matches(':focus-within'))?.getAttribute('aria-posinset')).toBe(String(count));
  await until('the last in sight', () => inSight(name(count - 1)));
  await userEvent.keyboard('{ArrowUp}{ArrowUp}');
  await until('the third from the end', () => focused() === name(count - 3));
  for (let step = 0; step < 20; step += 1) await userEvent.keyboard('{PageUp}');
  await until('160 before', () => focused() === name(count - 3 - 160));
  expect(items().length).toBeLessThan(60);
  await userEvent.keyboard('{Home}');
  await until('the first', () => focused() === name(0) && wall().scrollTop < 200);
});

test('wherever one scrolls there are strips, and the strip with the focus keeps it', async () => {
  await open();
  stripOf(items()[2] as HTMLElement).focus();
  await until('the focus', () => focused() === name(2));
  for (const share of [0.5, 0.999, 0.2]) {
    wall().scrollTop = share * wall().scrollHeight;
    const place = await until('a strip in the middle', () => seenAt(400));
    expect(Math.abs(Number(place.slice(6)) / count - share)).toBeLessThan(0.02);
    expect(focused()).toBe(name(2));
    expect(items().length).toBeLessThan(60);
  }
  await userEvent.keyboard('{ArrowDown}');
  await until('the next one', () => focused() === name(3) && seenAt(400) !== undefined && wall().scrollTop < 1500);
});

test('a joint that is pointed at elsewhere is brought into sight', async () => {
  await open();
  view.pointed = name(1700);
  await until('its strip', () => inSight(name(1700)));
});

test('paper gets the worst of them and says how many there are', async () => {
  await open();
  dispatchEvent(new Event('beforeprint'));
  await until('the strips for paper', () => items().length === 200);
  expect(deep(view.shadowRoot as ShadowRoot, '.printed')[0]?.textContent).toContain('200 of 3000 joints');
  dispatchEvent(new Event('afterprint'));
  await until('fewer again', () => items().length < 60);
});
