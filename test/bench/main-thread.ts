import type { Browser } from 'playwright-core';

/**
 * A task of a page's main thread, ms: by the clock; of that without what it stood waiting until the browser's other threads had painted the frame
 * before, which is long on a machine whose processor paints; and of the processor, which a busy machine does not stretch as much.
 */
export interface Task {
  readonly clock: number;
  readonly own: number;
  readonly processor: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** All tasks of the main threads of pages while something is done, as the browser itself traces them. */
export async function tasksDuring(browser: Browser, work: () => Promise<void>): Promise<readonly Task[]> {
  const session = await browser.newBrowserCDPSession();
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => { events.push(...value as unknown as TraceEvent[]); });
  await session.send('Tracing.start', { transferMode: 'ReportEvents', traceConfig: { includedCategories: ['disabled-by-default-devtools.timeline', 'cc'] } });
  await work();
  const ended = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.end');
  await ended;
  await session.detach();
  const main = new Set(events.filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain').map(({ pid, tid }) => `${pid} ${tid}`));
  const ofPages = events.filter(({ ph, pid, tid }) => ph === 'X' && main.has(`${pid} ${tid}`));
  const waits = ofPages.filter(({ name }) => name === 'LayerTreeHost::WaitForCommitCompletion');
  return ofPages.filter(({ name }) => name === 'RunTask').map(({ pid, ts, dur = 0, tdur = dur }) => {
    const waited = waits.reduce((sum, wait) => sum + (wait.pid === pid && wait.ts >= ts && wait.ts < ts + dur ? wait.dur ?? 0 : 0), 0);
    return { clock: dur / 1000, own: (dur - waited) / 1000, processor: tdur / 1000 };
  });
}

/** Longest task that a page may have, ms, so that it follows the hand. */
export const longestMs = 50;

/** How many of some tasks are longer than that, and the longest of them. */
export function longOnes(of: readonly number[]): string {
  const long = of.filter((ms) => ms > longestMs).sort((a, b) => b - a).map((ms) => ms.toFixed(0));
  return long.length === 0 ? '-' : `${long.length}: ${long.slice(0, 6).join(' ')}`;
}

/** What is said of the tasks of something: those over 50 ms. */
export const taskWords = (tasks: readonly Task[]): string =>
  `tasks over ${longestMs} ms by the clock ${longOnes(tasks.map(({ clock }) => clock))}, without waiting for painting ${longOnes(tasks.map(({ own }) => own))}, of the processor ${longOnes(tasks.map(({ processor }) => processor))}`;
