import { provideMathjs } from '../rules/mathjs-parser.ts';
import solverAddress from 'highs/runtime?url';
import { locateSolver } from '../plan/index.ts';
import { makePlan } from './make-plan.ts';
import type { PlanReply, PlanRequest, PlanTask } from './plan-protocol.ts';
import { HeldCabins } from './told-cabins.ts';
import { hearLine, tellLine } from './worker-line.ts';

provideMathjs();

// Fetched only once a plan needs it.
locateSolver(() => solverAddress);

const held = new HeldCabins();
/** Least time between two reports of progress, milliseconds. */
const pauseMs = 60;

const make = async (asked: PlanTask, numbers: readonly number[]): Promise<void> => {
  const answer = (reply: PlanReply): void => tellLine(reply);
  let [told, most] = [0, 0];
  const progress = (share: number, doing: string): void => {
    most = Math.max(most, share);
    const now = performance.now();
    if (now - told < pauseMs) return;
    told = now;
    answer({ kind: 'progress', share: most, doing });
  };
  try {
    const [cabin, ...further] = numbers.map((number) => held.of(number));
    const task = asked.kind === 'mix' ? { ...asked, further } : asked;
    answer(await makePlan(cabin, task, { progress, clock: () => performance.now() / 1000 }));
  } catch (fault) {
    answer({ kind: 'failed', message: fault instanceof Error ? fault.message : String(fault) });
  }
};

hearLine<PlanRequest>((request) => {
  if (request.kind === 'make') void make(request.task, request.cabins);
  else held.take(request);
});
