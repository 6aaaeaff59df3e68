import { provideMathjs } from '../rules/mathjs-parser.ts';
import solverAddress from 'highs/runtime?url';
import type { Cabin } from '../cabin/cabin.ts';
import { locateSolver } from '../plan/index.ts';
import { GatheredCabin } from './cabin-pieces.ts';
import { makePlan } from './make-plan.ts';
import type { PlanReply, PlanRequest } from './plan-protocol.ts';

provideMathjs();

// Fetched only once a plan needs it.
locateSolver(() => solverAddress);

let held: Cabin | undefined;
const coming = new GatheredCabin();
/** Least time between two reports of progress, milliseconds. */
const pauseMs = 60;

addEventListener('message', async ({ data }: MessageEvent<PlanRequest>) => {
  if (data.kind === 'gather') return coming.take(data.piece);
  const { task, anew } = data;
  if (anew) held = coming.gathered();
  const answer = (reply: PlanReply): void => postMessage(reply);
  if (held === undefined) return answer({ kind: 'failed', message: 'the worker holds no cabin' });
  let [told, most] = [0, 0];
  const progress = (share: number, doing: string): void => {
    most = Math.max(most, share);
    const now = performance.now();
    if (now - told < pauseMs) return;
    told = now;
    answer({ kind: 'progress', share: most, doing });
  };
  try {
    answer(await makePlan(held, task, { progress, clock: () => performance.now() / 1000 }));
  } catch (fault) {
    answer({ kind: 'failed', message: fault instanceof Error ? fault.message : String(fault) });
  }
});
