import { afterAll, describe, expect, test, vi } from 'vitest';
import type { Cabin } from '../../src/cabin/cabin.ts';
import { parseCabin } from '../../src/cabin/index.ts';
import { chooseSources, freeMix, swapsFrom, withPicks } from '../../src/plan/index.ts';
import { defaultBook } from '../../src/rules/default-book.ts';
import { PlanBridge } from '../../src/workers/plan-bridge.ts';
import type { PlanProgress } from '../../src/workers/plan-protocol.ts';
import { plannedCabin } from '../plan/support/planned-cabin.ts';

const bridge = new PlanBridge();
afterAll(() => bridge.end());

const cabin = { ...plannedCabin(7, { parts: 6, sources: 3, scatter: 0.25 }), ruleBook: 'ciede2000' };
const planned = async <R extends { readonly kind: string }>(reply: Promise<R>): Promise<Extract<R, { kind: 'planned' }>> => {
  const got = await reply;
  expect(got.kind).toBe('planned');
  return got as Extract<R, { kind: 'planned' }>;
};

describe('plans in a worker', () => {
  test('the sources chosen are those that the core chooses, with progress that never falls', async () => {
    const told: PlanProgress[] = [];
    const options = { best: 2, front: 10 };
    const { plan } = await planned(bridge.make(cabin, { kind: 'choose', options }, { progress: (progress) => told.push(progress) }));
    const own = await chooseSources(cabin, defaultBook, options);
    expect(plan.sets.map(({ picks }) => picks)).toEqual(own.sets.map(({ picks }) => picks));
    expect(plan.front?.sets.length).toBe(own.front?.sets.length);
    expect(plan.proved).toBe(true);
    for (let index = 1; index < told.length; index += 1) expect(told[index]!.share).toBeGreaterThanOrEqual(told[index - 1]!.share);
    expect(told.every(({ share, doing }) => share >= 0 && share <= 1 && doing !== '')).toBe(true);
  });

  test('single swaps from a point of the front are those of a cabin that stands by it', async () => {
    const { plan } = await planned(bridge.make(cabin, { kind: 'choose', options: { front: 10 } }));
    const point = plan.front!.sets.at(-1)!;
    const { plan: swaps } = await planned(bridge.make(cabin, { kind: 'swaps', picks: point.picks, options: {} }));
    expect(swaps).toEqual(await swapsFrom(withPicks(cabin, point.picks), defaultBook, point.picks));
    expect(swaps.length).toBe(cabin.parts.length * 2);
  });

  test('the solver runs in the worker: what may be mixed freely', async () => {
    const { plan } = await planned(bridge.make(cabin, { kind: 'mix', options: {} }));
    expect(plan.largest.proved).toBe(true);
    expect(plan.largest.kept.map(({ part }) => part).sort()).toEqual(cabin.parts.map(({ id }) => id).sort());
  });

  test('further colourways are mixed there as here, and are known when they are asked for again', async () => {
    const others = [8, 9].map((seed): Cabin => ({ ...plannedCabin(seed, { parts: 6, sources: 3, scatter: 0.25 }), id: `other-${seed}`, ruleBook: 'ciede2000' }));
    const { plan } = await planned(bridge.make(cabin, { kind: 'mix', options: {}, further: others }));
    expect(plan).toEqual(await freeMix([cabin, ...others], others.map(() => defaultBook).concat(defaultBook), {}));
    const posted = vi.spyOn(Worker.prototype, 'postMessage');
    await planned(bridge.make(cabin, { kind: 'mix', options: {}, further: others }));
    expect(posted).toHaveBeenCalledTimes(1);
    posted.mockRestore();
  });

  test('terms that name what is not there are refused with what was expected', async () => {
    const reply = await bridge.make(cabin, { kind: 'choose', options: { without: ['nobody'] } });
    expect(reply.kind).toBe('refused');
    expect(reply.kind === 'refused' && reply.issues.map(({ code }) => code)).toEqual(['unknown-supplier']);
  });

  test('a plan can be stopped while it is made and before its turn, and the next one is made', async () => {
    const { value: large } = parseCabin(await (await fetch('/demo-data/shuttle-slate.cabin.json')).text(), 'shuttle');
    const [controller, waiting] = [new AbortController(), new AbortController()];
    const running = bridge.make(large!, { kind: 'mend', options: {} }, { signal: controller.signal, progress: () => controller.abort(new DOMException('enough', 'AbortError')) });
    const never = bridge.make(large!, { kind: 'mend', options: {} }, { signal: waiting.signal });
    waiting.abort(new DOMException('never', 'AbortError'));
    await expect(running).rejects.toThrow('enough');
    await expect(never).rejects.toThrow('never');
    const { plan } = await planned(bridge.make(cabin, { kind: 'apportion', options: { draws: 50 } }));
    expect(plan.simulated.draws).toBe(50);
  });
});
