import type { CheckResult } from '../../harmony/judgement.ts';
import type { ComparedPart, ComparedSource } from './compared-sources.ts';
import type { ProposedChange } from './proposed-changes.ts';
import type { ReportDecision, ReportJoint, ReportPart } from './report-model.ts';
import { listed, percentOfLimit } from '../../harmony/wording.ts';

/** What is to be done about a clash, and by whom: reasoned from the masters of both sides, the other sources on record, the proposals and the decisions. */
export interface NextStep {
  readonly joint: string;
  /** Parts whose suppliers are to act. */
  readonly act: readonly { readonly part: string; readonly supplier: string; readonly because: 'off its master' | 'inside its master' | 'open against its master' | 'no master speaks of it' }[];
  /** The first names who acts; the others what is at hand. */
  readonly sentences: readonly string[];
}

interface Known {
  readonly parts: readonly ReportPart[];
  readonly sources: readonly ComparedPart[];
  readonly proposals: readonly ProposedChange[];
  readonly decisions: readonly ReportDecision[];
}

/** For every clash without a decision in force, in the order given. */
export function nextSteps(joints: readonly ReportJoint[], { parts, sources, proposals, decisions }: Known): readonly NextStep[] {
  const partOf = new Map(parts.map((part) => [part.id, part]));
  const choices = new Map(sources.map((part) => [part.part, part]));
  return joints.filter(({ result }) => result.verdict === 'clashes' && !result.accepted).map((entry): NextStep => {
    const sides = [entry.result.standard, entry.result.trial].flatMap((id) => partOf.get(id) ?? []);
    const quantity = entry.leading?.check === 'gloss' ? 'gloss' : entry.leading?.check === 'texture' ? 'texture' : 'colour';
    const stands = sides.map((part) => ({ part, master: masterOf(part, quantity) }));
    const off = stands.filter(({ master }) => master?.verdict === 'clashes');
    const acting = off.length > 0 ? off : stands;
    const mended = proposals.filter(({ joint, verdict }) => joint === entry.id && verdict === 'holds');
    const fallen = decisions.filter(({ joint, status }) => joint === entry.id && (status === 'expired' || status === 'void'));
    return {
      joint: entry.id,
      act: acting.map(({ part, master }) => ({ part: part.id, supplier: part.supplier, because: because(master) })),
      sentences: [
        who(stands, entry),
        ...sides.flatMap((part) => otherSource(choices.get(part.id))),
        ...(mended.length === 0 ? [] : [`A change on record mends it${mended[0].limitUse === undefined ? '' : `, at ${percentOfLimit(mended[0].limitUse)} of the limit`}.`]),
        ...(fallen.length === 0 ? [] : [`The decision that accepted it ${fallen[0].status === 'expired' ? `expired on ${fallen[0].decision.expires}` : 'is void'}.`]),
      ],
    };
  });
}

interface Stand {
  readonly part: ReportPart;
  readonly master: CheckResult | undefined;
}

const masterOf = ({ checks }: ReportPart, quantity: string): CheckResult | undefined =>
  checks.find(({ check, subject, verdict }) => check === 'master' && subject === quantity && (verdict === 'holds' || verdict === 'clashes' || verdict === 'open'));

const because = (master: CheckResult | undefined): NextStep['act'][number]['because'] =>
  (master === undefined ? 'no master speaks of it' : master.verdict === 'clashes' ? 'off its master' : master.verdict === 'holds' ? 'inside its master' : 'open against its master');

function who(stands: readonly Stand[], { leading }: ReportJoint): string {
  const off = stands.filter(({ master }) => master?.verdict === 'clashes');
  const suppliers = [...new Set(stands.map(({ part }) => part.supplier))];
  if (off.length > 0) {
    return `${listed(off.map(({ part, master }) => `${part.name} is off its own master (${percentOfLimit(master?.limitUse ?? 0)} of that limit)`))}: ${listed([...new Set(off.map(({ part }) => part.supplier))])} ${off.length > 1 && new Set(off.map(({ part }) => part.supplier)).size > 1 ? 'bring them' : 'brings it'} back first.`;
  }
  const agree = suppliers.length === 1 ? `${suppliers[0]}, who supplies both, moves one of them` : `${listed(suppliers)} agree which side moves`;
  if (stands.every(({ master }) => master?.verdict === 'holds')) {
    const uses = stands.map(({ master }) => percentOfLimit(master?.limitUse ?? 0));
    return leading?.check === 'near-miss'
      ? `Both sides are inside their masters (${listed(uses)}): the targets themselves stand too close, which colour and trim decide with ${listed(suppliers)}.`
      : `Both sides are inside their masters (${listed(uses)}), which point apart: ${agree}, or a target is changed.`;
  }
  const silent = stands.filter(({ master }) => master === undefined);
  return silent.length === stands.length ? `No master speaks of it: ${agree}.` : `No side is known to be off its master: ${agree}.`;
}

/** The other source that leaves the fewest clashes at the joints of the part, where it leaves fewer than the chosen one. */
function otherSource(choice: ComparedPart | undefined): readonly string[] {
  const chosen = choice?.sources.find((source) => source.chosen);
  if (choice === undefined || chosen === undefined) return [];
  const rank = (first: ComparedSource, second: ComparedSource): number => first.clashes - second.clashes || first.open - second.open || (first.worstUse ?? 0) - (second.worstUse ?? 0);
  const [best] = choice.sources.filter((source) => !source.chosen && source.clashes < chosen.clashes).sort(rank);
  if (best === undefined) return [];
  const left = best.clashes === 0 ? 'none clashes' : `${best.clashes} ${best.clashes === 1 ? 'clashes' : 'clash'}`;
  return [`${choice.name} from ${best.supplier} (${best.status}) instead: of its ${choice.joints} ${choice.joints === 1 ? 'joint' : 'joints'} ${left}${best.open > 0 ? `, ${best.open} open` : ''}.`];
}
