import { components } from '../colour/components.ts';
import { difference } from '../colour/difference.ts';
import { differenceWords } from '../colour/difference-words.ts';
import { formulaLabel } from '../colour/formula-label.ts';
import type { DifferenceFormula } from '../colour/difference-formula.ts';
import type { Specimen } from '../cabin/cabin.ts';
import type { JudgedLight } from '../readings/colour-sample.ts';
import { glossSamples } from '../readings/gloss-sample.ts';
import type { GlossAngle, ObserverDegrees, Reading } from '../readings/reading.ts';
import { groupColourReadings, isColourReading } from '../readings/reading-groups.ts';
import { pickSharedGroup, unlikeText } from '../readings/shared-group.ts';
import type { JudgeContext } from './judge-context.ts';
import { figure, listed, percentOfLimit } from './wording.ts';

/** Drift under one light. */
export interface DriftUnderLight {
  readonly light: string;
  readonly observer: ObserverDegrees;
  readonly value: number;
  readonly difference: ReturnType<typeof components>;
  readonly words: readonly string[];
}

/** A master against an earlier state of itself: the issue before it, or its own first readings. Differences are now minus then. */
export interface MasterDrift {
  readonly since:
    | { readonly kind: 'parent'; readonly master: string; readonly issue?: string }
    | { readonly kind: 'first readings'; readonly from: string; readonly to: string };
  readonly formula: string;
  readonly lights: readonly DriftUnderLight[];
  /** Largest value over the lights, and the share of the strictest limit against this master that it takes. */
  readonly worst?: { readonly light: string; readonly value: number; readonly limitShare?: number };
  /** Change in GU by angle. */
  readonly gloss: readonly { readonly angle: GlossAngle; readonly change: number }[];
  /** Why the colours cannot be compared. */
  readonly notCompared?: string;
}

/** What drift is told in: the formula, and the strictest limit that a part is held to the master by. */
export interface DriftBasis {
  readonly formula: DifferenceFormula;
  readonly limit: number | undefined;
}

/**
 * Drift of a master against its parent, and of its last readings against its first where it was measured on several days in one class of geometry.
 * Lights are those that the rule book requires.
 */
export function masterDrifts(context: JudgeContext, master: Specimen, { formula, limit }: DriftBasis): MasterDrift[] {
  const parent = context.index.masters.get(master.parentMaster ?? '');
  const found: MasterDrift[] = [];
  if (parent !== undefined) {
    found.push({
      since: { kind: 'parent', master: parent.id, ...(parent.issue === undefined ? {} : { issue: parent.issue }) },
      ...driftBetween(context, parent.readings, master.readings, formula, limit),
    });
  }
  const dated = master.readings.filter(isColourReading).flatMap(({ measuredAt }) => (measuredAt === undefined ? [] : [measuredAt.slice(0, 10)]));
  const days = [...new Set(dated)].sort();
  const [from, to] = [days[0], days[days.length - 1]];
  if (days.length > 1) {
    const on = (day: string): Reading[] => master.readings.filter(({ measuredAt }) => measuredAt?.startsWith(day));
    const drift = driftBetween(context, on(from), on(to), formula, limit);
    // Two instruments or geometries on two days are no drift of the master.
    if (drift.notCompared === undefined) found.push({ since: { kind: 'first readings', from, to }, ...drift });
  }
  return found;
}

function driftBetween(
  context: JudgeContext, before: readonly Reading[], after: readonly Reading[], formula: DifferenceFormula, limit: number | undefined,
): Omit<MasterDrift, 'since'> {
  const { index, book } = context;
  const choice = pickSharedGroup(groupColourReadings(before, index.conditions).groups, groupColourReadings(after, index.conditions).groups, book.geometryOrder);
  const glossBefore = glossSamples(before, index.conditions);
  const gloss = glossSamples(after, index.conditions).flatMap(({ angle, mean }) => {
    const old = glossBefore.find((sample) => sample.angle === angle);
    return old === undefined ? [] : [{ angle, change: mean - old.mean }];
  });
  const base = { formula: formulaLabel(formula), gloss };
  if (choice.kind !== 'shared') {
    const reason = choice.kind === 'unlike' ? unlikeText(choice) : 'there is no colour reading of one of them';
    return { ...base, lights: [], notCompared: reason };
  }
  const judged = book.lights.filter(({ standing }) => standing === 'required').flatMap(({ light: name }): JudgedLight[] => {
    const light = context.light(name);
    return light === undefined ? [] : [{ name, light, observer: book.observer }];
  });
  const [old, now] = [context.sample(choice.first, judged), context.sample(choice.second, judged)];
  const lights = judged.flatMap(({ name, observer }, at): DriftUnderLight[] => {
    const [p, q] = [old?.means[at], now?.means[at]];
    return p === undefined || q === undefined ? []
      : [{ light: name, observer, value: difference(formula, p, q), difference: components(p, q), words: differenceWords(p, q) }];
  });
  const worst = lights.reduce<DriftUnderLight | undefined>((best, light) => (best === undefined || light.value > best.value ? light : best), undefined);
  return {
    ...base, lights,
    ...(worst === undefined ? { notCompared: 'they have no light in common' }
      : { worst: { light: worst.light, value: worst.value, ...(limit === undefined ? {} : { limitShare: worst.value / limit }) } }),
  };
}

/** One plain sentence on the drift of a master. */
export function driftSentence({ since, formula, worst, lights, notCompared }: MasterDrift): string {
  const before = since.kind === 'parent' ? `its parent ${since.master}${since.issue === undefined ? '' : `, issue ${since.issue}`}` : `its first readings of ${since.from}`;
  if (worst === undefined) return `It cannot be compared with ${before}: ${notCompared ?? 'no data'}.`;
  const words = lights.find(({ light }) => light === worst.light)?.words ?? [];
  return `Against ${before} it is ${words.length === 0 ? 'of another colour' : listed(words)} by ${figure(worst.value)} ${formula} under ${worst.light}`
    + `${worst.limitShare === undefined ? '' : `, ${percentOfLimit(worst.limitShare)} of the strictest limit held to it`}.`;
}
