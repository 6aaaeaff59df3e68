import type { Cabin } from '../../cabin/cabin.ts';
import type { JudgeContext } from '../../harmony/judge-context.ts';
import type { ApportionPlan, PartTolerance } from './apportion-cabin.ts';
import { named } from '../named.ts';
import { perCentText } from './simulate-tolerances.ts';
import { quantileSource } from './statistical-law.ts';

/** What one supplier is to keep. */
export interface ToleranceSheet {
  readonly supplier: string;
  readonly name: string;
  readonly parts: readonly string[];
  readonly sentences: readonly string[];
}

const toleranceSentence = (tolerance: PartTolerance, name: string): string => {
  const colour = tolerance.about === 'no colour' ? 'no colour reading to lay a tolerance about'
    : tolerance.radius === undefined ? 'no joint limits its colour'
      : `within ${tolerance.radius.toFixed(2)} ${tolerance.formula} of ${tolerance.about === 'master' ? 'its master' : 'its present colour'}${tolerance.target === undefined ? '' : ` (L* ${tolerance.target.map((value) => value.toFixed(2)).join(', ')} under D65)`}`;
  return `${name}: ${colour}${tolerance.glossBand === undefined ? '' : `; gloss within ${tolerance.glossBand.toFixed(2)} GU`}.`;
};

/** A sheet for each supplier. */
export function toleranceSheets(plan: Pick<ApportionPlan, 'parts'>, cabin: Cabin, context: JudgeContext): readonly ToleranceSheet[] {
  const suppliers = [...new Set(plan.parts.map((part) => part.supplier))];
  return suppliers.map((supplier) => {
    const own = plan.parts.filter((part) => part.supplier === supplier);
    return {
      supplier, name: cabin.suppliers.find((each) => each.id === supplier)?.name ?? supplier, parts: own.map(({ id }) => id),
      sentences: own.map((part) => toleranceSentence(part, context.names.get(part.id) ?? part.id)),
    };
  });
}

/** The plan in whole sentences. */
export function apportionWords(plan: Omit<ApportionPlan, 'sheets' | 'words'>, cabin: Cabin, context: JudgeContext): readonly string[] {
  const name = (part: string): string => context.names.get(part) ?? part;
  const joint = (id: string): string => {
    const own = cabin.joints.find((each) => each.id === id);
    return own === undefined ? id : `${name(own.parts[0])} to ${name(own.parts[1])}`;
  };
  if (cabin.parts.length === 0) return ['The cabin has no parts: there is nothing to apportion.'];
  const radii = plan.parts.flatMap(({ radius }) => (radius === undefined ? [] : [radius])).sort((a, b) => a - b);
  if (radii.length === 0 && plan.targetsClash.length === 0) return ['No joint is judged by numbers: nothing limits the tolerances of the parts.'];
  const { simulated, confirmed } = plan;
  const nearest = plan.reckoned?.[0];
  return [
    ...(radii.length === 0 ? [] : [`${plan.law === undefined ? 'Any two parts in tolerance hold at their joint' : `Parts of which ${perCentText(plan.law.inTolerance)} are in tolerance hold at their joint in at least ${perCentText(plan.law.confidence)} of the cabins`}: the smallest radius is ${radii[0].toFixed(2)}, the median ${radii[Math.floor((radii.length - 1) / 2)].toFixed(2)}, the largest ${radii[radii.length - 1].toFixed(2)}.`]),
    ...(plan.bottlenecks.length === 0 ? [] : [`The tightest joints are ${named(plan.bottlenecks.slice(0, 3).map(joint))}.`]),
    ...(plan.targetsClash.length === 0 ? [] : [`The targets themselves are outside the limits at ${named(plan.targetsClash.map(joint))}: no tolerance can make ${plan.targetsClash.length === 1 ? 'it' : 'them'} hold, and ${plan.targetsClash.length === 1 ? 'it is' : 'they are'} left out. Mend the targets first.`]),
    ...(confirmed === undefined ? [
      ...(nearest === undefined || plan.law === undefined ? [] : [`Reckoned over all its lights and limits together, the joint nearest to what is allowed, ${joint(nearest.joint)}, is outside in ${perCentText(Number(nearest.share.toPrecision(3)))} of the cabins; ${perCentText(1 - plan.law.confidence)} is allowed to each, less the error of reckoning.`]),
      'Parts are taken to be normal about their targets and independent of one another.',
      ...(plan.law === undefined ? [] : [`The edge of a tolerance lies ${plan.law.radiusSds.toFixed(3)} standard deviations from the target in colour and ${plan.law.bandSds.toFixed(3)} in gloss: ${quantileSource}.`]),
    ]
      : [confirmed.worstExcess <= 1e-3 ? `A search on the boundaries of the tolerances found no pair outside the limits of ${confirmed.joints} joints.` : `A search on the boundaries of the tolerances still finds a pair ${confirmed.worstExcess.toFixed(3)} outside a limit.`]),
    `Of ${simulated.draws} cabins drawn (${simulated.law}), ${simulated.clashes === 0 ? 'none has' : `${simulated.clashes} ${simulated.clashes === 1 ? 'has' : 'have'}`} a joint outside its limits.${simulated.joints[0] === undefined || plan.law === undefined ? '' : ` The joint that is so most often, ${joint(simulated.joints[0].joint)}, is outside in ${perCentText(simulated.joints[0].share)}, a count that is good to ${perCentText(Number(Math.sqrt(Math.max(simulated.joints[0].share, 1 - plan.law.confidence) / simulated.draws).toPrecision(1)))}.`}`,
    'Tolerances are of true colours: what measuring adds comes on top.',
  ];
}
