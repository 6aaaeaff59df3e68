import type { Decision, Intent, Joint, Proposal, ProposedShift, VisualRecord } from '../cabin.ts';
import { checkNames, jointKinds, visualResults } from '../cabin.ts';
import type { Schema } from '../schema/index.ts';
import { date, list, name, number, object, oneOf, optional, refine, remark, required, tuple } from '../schema/index.ts';
import { mapPoints } from './map-points.ts';

const surfaceIntent = oneOf(['match', 'contrast', 'free'] as const);
const intentShape = object<Intent>('an intent', {
  colour: optional(oneOf(['match', 'tone-step', 'contrast', 'free'] as const)),
  gloss: optional(surfaceIntent),
  texture: optional(surfaceIntent),
});

const decisionShape = refine(
  object<Decision>('a decision', {
    id: required(name('the id of the decision')),
    check: required(oneOf(checkNames)),
    reason: required(remark()),
    role: required(name('the role that decided')),
    date: required(date()),
    expires: required(date()),
    value: required(number({ min: 0, max: 1e6 })),
    light: optional(name('the name of a light')),
    criterion: optional(name('the name of a criterion')),
  }),
  ({ date: agreed, expires }, faults) => {
    if (expires >= agreed) return;
    faults.path.push('expires');
    faults.add('expires-before-date', { expected: `a day not before ${agreed}`, found: expires });
    faults.path.pop();
  },
);

const observers = object<VisualRecord['observers']>('the observers', {
  count: required(number({ min: 1, max: 1000, whole: true })),
  roles: required(list(name('a role'), { max: 100, items: 'roles' })),
});

const rating = refine(
  object<NonNullable<VisualRecord['rating']>>('a rating', {
    scale: required(oneOf(['ISO 3668', 'ISO 105-A02'] as const)),
    grade: required(number({ min: 0, max: 5 })),
  }),
  ({ scale, grade }, faults) => {
    if (scale !== 'ISO 105-A02' || (grade >= 1 && Number.isInteger(grade * 2))) return;
    faults.path.push('grade');
    faults.add('out-of-range', { expected: 'a grade of the grey scale: 1, 1.5 and so on up to 5', found: String(grade) });
    faults.path.pop();
  },
);

const visualRecordShape = object<VisualRecord>('a visual record', {
  date: required(date()),
  light: required(name('the name of a light')),
  illuminanceLx: optional(number({ above: 0, max: 200_000, unit: 'lx' })),
  observers: required(observers),
  result: required(oneOf(visualResults)),
  rating: optional(rating),
  note: optional(remark()),
});

const partId = name('the id of a part');
const gap = number({ min: 0, max: 1000, unit: 'mm' });
const viewingDistance = number({ above: 0, max: 100_000, unit: 'mm' });
const colourShift = number({ min: -50, max: 50 });

export const proposedShiftShape = object<ProposedShift>('a shift of a part', {
  part: required(partId),
  dL: optional(colourShift),
  da: optional(colourShift),
  db: optional(colourShift),
  dGloss: optional(number({ min: -100, max: 100, unit: 'GU' })),
});

/** At most one shift a side. */
export const proposedShifts = list(proposedShiftShape, { min: 1, max: 2, items: 'shifts' });

const proposalShape = refine(
  object<Proposal>('a proposal', {
    id: required(name('the id of the proposal')),
    date: required(date()),
    shifts: optional(proposedShifts),
    gapMm: optional(gap),
    viewMm: optional(viewingDistance),
    note: optional(remark()),
  }),
  ({ shifts, gapMm, viewMm }, faults) => {
    const changed = shifts?.some(({ dL, da, db, dGloss }) => [dL, da, db, dGloss].some((value) => value !== undefined));
    if (changed === true || gapMm !== undefined || viewMm !== undefined) return;
    faults.add('nothing-proposed', { expected: 'a shift, a gap or a viewing distance', found: 'nothing' });
  },
);

const length = number({ min: 0, max: 100_000, unit: 'mm' });

export const jointShape: Schema<Joint> = object<Joint>('a joint', {
  id: required(name('the id of the joint')),
  parts: required(tuple<readonly [string, string]>('the ids of two parts', partId, partId)),
  kind: required(oneOf(jointKinds)),
  gapMm: optional(gap),
  stepMm: optional(number({ min: -1000, max: 1000, unit: 'mm' })),
  lengthMm: optional(length),
  viewMm: optional(viewingDistance),
  tiltDeg: optional(number({ min: -180, max: 180, unit: 'degrees' })),
  weight: optional(number({ min: 0, max: 1000 })),
  reference: optional(partId),
  intent: optional(intentShape),
  path: optional(mapPoints()),
  visualRecords: optional(list(visualRecordShape, { max: 1000, items: 'visual records' })),
  decisions: optional(list(decisionShape, { max: 1000, items: 'decisions' })),
  proposals: optional(list(proposalShape, { max: 1000, items: 'proposals' })),
  note: optional(remark()),
});
