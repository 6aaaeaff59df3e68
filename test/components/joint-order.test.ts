import fc from 'fast-check';
import { expect, test } from 'vitest';
import { JointOrder } from '../../components/model/joint-order.ts';
import type { JointResult } from '../../src/harmony/judgement.ts';
import { madeUpJudgement } from '../support/hand-made-judgement.ts';

const [pattern] = madeUpJudgement.joints;
const verdicts = ['holds', 'open', 'clashes'] as const;
const result = (id: string, [verdict, accepted, use, probability]: readonly [number, boolean, number, number]): JointResult =>
  ({ ...(pattern as JointResult), id, verdict: verdicts[verdict] ?? 'open', accepted, limitUse: use / 10, totalProbability: probability / 10 });

const judged = fc.tuple(fc.integer({ min: 0, max: 2 }), fc.boolean(), fc.integer({ min: 0, max: 30 }), fc.integer({ min: 0, max: 10 }));

/** The order as the reader is told of it, by the plainest sort. */
function plain(joints: readonly JointResult[]): string[] {
  const rank = ({ verdict, accepted }: JointResult): number => ({ clashes: accepted ? 1 : 0, open: 2, holds: 3 })[verdict];
  const key = (joint: JointResult): string => [rank(joint), String(1000 - 10 * (joint.limitUse ?? 0)).padStart(5, '0'), String(10 * joint.totalProbability).padStart(3, '0'), joint.id].join(' ');
  return joints.map((joint) => [key(joint), joint.id] as const).sort(([first], [second]) => (first < second ? -1 : 1)).map(([, id]) => id);
}

test('however joints are judged anew, added and taken away, the order is that of sorting them all', () => {
  fc.assert(fc.property(
    fc.array(judged, { minLength: 8, maxLength: 40 }),
    fc.array(fc.oneof(
      fc.record({ kind: fc.constant('judge' as const), place: fc.nat(), as: judged }),
      fc.record({ kind: fc.constant('add' as const), as: judged }),
      fc.record({ kind: fc.constant('remove' as const), place: fc.nat() }),
    ), { maxLength: 12 }),
    (first, steps) => {
      const order = new JointOrder();
      let joints = first.map((each, place) => result(`j${String(place).padStart(3, '0')}`, each));
      expect(order.of(joints).map(({ id }) => id)).toEqual(plain(joints));
      steps.forEach((step, count) => {
        if (step.kind === 'add') joints = [...joints, result(`k${String(count).padStart(3, '0')}`, step.as)];
        else {
          const place = step.place % joints.length;
          joints = step.kind === 'remove' ? joints.toSpliced(place, joints.length > 1 ? 1 : 0) : joints.with(place, result(joints[place]?.id ?? '', step.as));
        }
        expect(order.of(joints).map(({ id }) => id)).toEqual(plain(joints));
      });
    },
  ));
});

test('the same joints give the same list', () => {
  const order = new JointOrder();
  expect(order.of(madeUpJudgement.joints)).toBe(order.of(madeUpJudgement.joints));
});
