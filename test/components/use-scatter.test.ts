import { expect, test } from 'vitest';
import { useScatter } from '../../components/figures/use-scatter.ts';
import type { UsePoint } from '../../components/figures/use-scatter.ts';
import { verdictShares } from '../../components/figures/verdict-shares.ts';
import { paperInk } from '../../components/figures/inks.ts';
import type { SceneElement, SceneNode } from '../../src/report/scene.ts';

const elements = (node: SceneNode): SceneElement[] => (typeof node === 'string' ? [] : [node, ...node.children.flatMap(elements)]);
const point = (more: Partial<UsePoint>): UsePoint => ({ id: 'j', label: 'A / B', before: 1, after: 1, verdict: 'holds', turned: false, ...more });
const draw = (points: readonly UsePoint[]): SceneElement[] => elements(useScatter({ points, across: 'one', up: 'other' }, { width: 520, height: 500 }, paperInk));

test('a joint at the limit of both books lies where the two limits cross, one beyond twice the limit at the edge', () => {
  const drawn = draw([point({ verdict: 'holds' })]);
  const [across, up] = drawn.filter(({ attributes }) => attributes['class'] === 'limit');
  const ring = drawn.find(({ tag }) => tag === 'circle')!;
  expect([ring.attributes['cx'], ring.attributes['cy']]).toEqual([across?.attributes['x1'], up?.attributes['y1']]);
  const field = drawn.find(({ tag }) => tag === 'rect')!.attributes;
  const beyond = draw([point({ before: 0, after: 7 })]).find(({ tag }) => tag === 'circle')!;
  expect([beyond.attributes['cx'], beyond.attributes['cy']]).toEqual([field['x'], field['y']]);
});

test('verdicts are told without hue: a saw clashes, a dashed ring is open, a full mark has turned and lies on top', () => {
  const drawn = draw([point({ id: 'turned', verdict: 'open', turned: true }), point({ id: 'saw', verdict: 'clashes' }), point({ id: 'ring' })]);
  const joints = drawn.filter(({ attributes }) => String(attributes['class']).startsWith('joint'));
  expect(joints.map(({ attributes }) => attributes['data-joint'])).toEqual(['saw', 'ring', 'turned']);
  const marks = joints.map(({ children }) => children.at(-1) as SceneElement);
  expect(marks.map(({ tag }) => tag)).toEqual(['path', 'circle', 'circle']);
  expect(marks.map(({ attributes }) => attributes['stroke-dasharray'] !== undefined)).toEqual([false, false, true]);
  expect(marks.map(({ attributes }) => attributes['fill-opacity'])).toEqual([0.6, 0.6, 1]);
});

test('shares of verdicts are pieces of one line, as long as their share and never too short to be told', () => {
  const pieces = elements(verdictShares({ clashes: 1, accepted: 0, open: 0, holds: 99 }, 100, 12, paperInk)).filter(({ attributes }) => String(attributes['class']).startsWith('verdict-line'));
  expect(pieces.map(({ attributes }) => attributes['class'])).toEqual(['verdict-line clashes', 'verdict-line holds']);
  const holds = elements(pieces[1]!).find(({ tag }) => tag === 'path')!;
  const [from, to] = [...String(holds.attributes['d']).matchAll(/[ML]([\d.]+)/g)].map((found) => Number(found[1]));
  // 98 px less a gap of 3: 9 for each piece at least, 99 of 100 parts of the 77 that are left for what holds.
  expect(to! - from!).toBeCloseTo(9 + 77 * 0.99, 1);
});
