import { expect, test } from 'vitest';
import { page, userEvent } from 'vitest/browser';
import type { AdjoinStrip } from '../../components/views/cabin/adjoin-strip.ts';
import { bigCabin } from '../bench/big-cabin.ts';
import { frames, until } from '../support/screen.ts';
import { all, eachWithWorkbench, one, openByDrop } from '../support/whole-workbench.ts';

eachWithWorkbench();

const strips = (): AdjoinStrip[] => all<AdjoinStrip>('adjoin-strip');
const focused = (): string | undefined => strips().find((strip) => strip.matches(':focus-within'))?.result.id;
const scrolled = (): number => one('adjoin-wall')?.scrollTop ?? 0;

async function open(): Promise<void> {
  await page.viewport(1440, 900);
  await openByDrop(bigCabin({ parts: 60, joints: 140, seed: 3 }));
  await until('the strips', () => strips().length > 4);
  await frames(4);
}

test('coming back from a joint far down the wall, one is where one was, with the focus on its strip', async () => {
  await open();
  strips()[0]?.focus();
  await userEvent.keyboard('{End}');
  await until('the end of the wall', () => scrolled() > 5000 && focused() !== undefined);
  await userEvent.keyboard('{PageUp}{PageUp}{ArrowUp}');
  await frames(6);
  const [joint, place] = [focused(), scrolled()];
  await userEvent.keyboard('{Enter}');
  await until('the joint', () => one('adjoin-joint-view') && location.hash.includes(`/joint/${joint}`));
  history.back();
  await until('the wall', () => one('adjoin-wall'));
  await until('the focus on the strip', () => focused() === joint);
  expect(Math.abs(scrolled() - place)).toBeLessThan(3);
});

test('from a joint that was opened by its address the way to the cabin leads to its strip', async () => {
  await open();
  const last = await until('the order', () => (one('adjoin-wall') as unknown as { joints: { id: string }[] }).joints.at(-20)?.id);
  location.hash = `#/joint/${last}`;
  await until('the joint', () => one('adjoin-joint-view'));
  location.hash = '#/cabin';
  await until('the focus on the strip', () => focused() === last);
  await until('the strip in sight', () => {
    const [frame, box] = [one('adjoin-wall')?.getBoundingClientRect(), strips().find(({ result }) => result.id === last)?.getBoundingClientRect()];
    return frame !== undefined && box !== undefined && box.top >= frame.top && box.bottom <= frame.bottom + 1;
  });
});
