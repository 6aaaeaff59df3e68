import type { Browser } from 'playwright-core';

/** A task of a page's main thread, ms: by the clock, and of the processor, which a busy machine does not stretch as much. */
export interface Task {
  readonly clock: number;
  readonly processor: number;
}

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

/** All tasks of the main threads of pages while something is done, as the browser itself traces them. */
export async function tasksDuring(browser: Browser, work: () => Promise<void>): Promise<readonly Task[]> {
  const session = await browser.newBrowserCDPSession();
  const events: TraceEvent[] = [];
  session.on('Tracing.dataCollected', ({ value }) => { events.push(...value as unknown as TraceEvent[]); });
  await session.send('Tracing.start', { transferMode: 'ReportEvents', traceConfig: { includedCategories: ['disabled-by-default-devtools.timeline'] } });
  await work();
  const ended = new Promise((resolve) => session.once('Tracing.tracingComplete', resolve));
  await session.send('Tracing.end');
  await ended;
  await session.detach();
  const main = new Set(events.filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain').map(({ pid, tid }) => `${pid} ${tid}`));
  return events.filter(({ name, ph, pid, tid }) => name === 'RunTask' && ph === 'X' && main.has(`${pid} ${tid}`))
    .map(({ dur = 0, tdur = dur }) => ({ clock: dur / 1000, processor: tdur / 1000 }));
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
  `tasks over ${longestMs} ms by the clock ${longOnes(tasks.map(({ clock }) => clock))}, of the processor ${longOnes(tasks.map(({ processor }) => processor))}`;
