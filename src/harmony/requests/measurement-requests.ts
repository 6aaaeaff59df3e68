import type { Cabin } from '../../cabin/cabin.ts';
import type { JudgeContext } from '../judge-context.ts';
import type { JudgedJoint } from '../judge-joint.ts';
import { counts } from '../judge-joint.ts';
import type { CheckResult, JointResult, MeasurementRequest, PartResult } from '../judgement.ts';
import type { PartBasis } from '../part-basis.ts';
import { colourRequests } from './colour-requests.ts';
import { partRequests } from './part-requests.ts';
import { surfaceRequests } from './surface-requests.ts';

/**
 * Readings that would decide the open joints and the open checks of parts, the likeliest to decide first; ties in the order of the
 * document, joints before parts.
 */
export function measurementRequests(
  context: JudgeContext, joints: readonly JudgedJoint[], parts: readonly PartResult[], bases: ReadonlyMap<string, PartBasis>,
): readonly MeasurementRequest[] {
  const requests: MeasurementRequest[] = [];
  for (const judged of joints) if (judged.result.verdict === 'open') for (const request of ofJoint(context, judged)) requests.push(request);
  for (const part of parts) if (part.checks.some(wanting)) for (const request of ofPart(context, part, bases)) requests.push(request);
  // Sorted by place and with the chances in one row: there are thousands of requests, and they are sorted again after every edit.
  const chances = new Float64Array(requests.length);
  requests.forEach(({ chance }, place) => { chances[place] = chance ?? 0; });
  const hopeful = [...chances.keys()].filter((place) => chances[place] > 0).sort((first, second) => chances[second] - chances[first]);
  const sorted = hopeful.map((place) => requests[place]);
  requests.forEach((request, place) => {
    if (!(chances[place] > 0)) sorted.push(request);
  });
  return sorted;
}

const wanting = (check: CheckResult): boolean => counts(check) && (check.verdict === 'open' || check.verdict === 'no data');

/** The requests of what was judged before are those of before, as long as the suppliers have the same names. */
const asked = new WeakMap<JointResult | PartResult, { readonly suppliers: Cabin['suppliers']; readonly requests: readonly MeasurementRequest[] }>();

function remembered({ cabin: { suppliers } }: JudgeContext, result: JointResult | PartResult, make: () => readonly MeasurementRequest[]): readonly MeasurementRequest[] {
  const known = asked.get(result);
  if (known !== undefined && known.suppliers === suppliers) return known.requests;
  const requests = make();
  asked.set(result, { suppliers, requests });
  return requests;
}

const ofJoint = (context: JudgeContext, judged: JudgedJoint): readonly MeasurementRequest[] =>
  remembered(context, judged.result, () => judged.result.checks.filter(wanting).flatMap((check) => {
    if (check.check === 'colour' || check.check === 'near-miss') return colourRequests(context, judged, check);
    return check.check === 'gloss' || check.check === 'texture' ? surfaceRequests(context, judged, check) : [];
  }));

const ofPart = (context: JudgeContext, part: PartResult, bases: ReadonlyMap<string, PartBasis>): readonly MeasurementRequest[] =>
  remembered(context, part, () => {
    const basis = bases.get(part.id);
    return basis === undefined ? [] : part.checks.filter(wanting).flatMap((check) => partRequests(context, basis, check));
  });
