import { formulaLabel } from '../../colour/formula-label.ts';
import { instrumentCorrelation } from '../../readings/instrument-correlation.ts';
import { scalarInstrumentVariance } from '../../readings/instrument-term.ts';
import { measuredDays } from '../../readings/measured-side.ts';
import type { Reading } from '../../readings/reading.ts';
import { glossSamples } from '../../readings/gloss-sample.ts';
import { scalarDifferenceVariance } from '../../readings/scalar-variance.ts';
import { matchCriteria } from '../../readings/stacked-event.ts';
import type { DifferenceFormula } from '../../colour/difference-formula.ts';
import { colourSideOf, colourSideOfMaster } from '../colour-side.ts';
import { causeOfOpenColour, evaluateColour, printedCriterion } from '../colour-evaluation.ts';
import type { ColourQuestion } from '../colour-evaluation.ts';
import { pairColours } from '../colour-pairing.ts';
import { comparisonPhrase } from '../colour-wording.ts';
import { decided } from '../decided.ts';
import type { JudgeContext } from '../judge-context.ts';
import type { CheckResult } from '../judgement.ts';
import type { CauseOfOpen } from '../open-cause.ts';
import type { PartBasis } from '../part-basis.ts';
import { withinBand } from '../scalar-comparison.ts';
import { certainty, figure, percentOfLimit } from '../wording.ts';

/** A part against its recorded master: colour and gloss, each with its own limit; empty where the part has no target. */
export function masterChecks(context: JudgeContext, basis: PartBasis): readonly CheckResult[] {
  const target = basis.part.target;
  if (target === undefined) return [];
  return [masterColour(context, basis), masterGloss(context, basis)].filter((check) => check !== undefined);
}

const masterOf = (context: JudgeContext, basis: PartBasis) => context.index.masters.get(basis.part.target?.master ?? '');

function cautionsOf(context: JudgeContext, basis: PartBasis): readonly string[] {
  const master = masterOf(context, basis);
  if (master === undefined) return [];
  return [
    ...(master.expires !== undefined && master.expires < context.asOf ? [`master ${master.id} expired on ${master.expires}`] : []),
    ...(master.remeasureOn !== undefined && master.remeasureOn < context.asOf ? [`master ${master.id} was due for remeasuring on ${master.remeasureOn}`] : []),
  ];
}

function masterColour(context: JudgeContext, basis: PartBasis): CheckResult {
  const { book } = context;
  const row = basis.materialClass;
  const target = basis.part.target;
  const master = masterOf(context, basis);
  const limit = target?.colourLimit ?? row?.masterColourLimit;
  const formula: DifferenceFormula = book.formula === 'cmc'
    ? { name: 'cmc', l: book.cmc?.l ?? 2, c: book.cmc?.c ?? 1 }
    : { name: book.formula, kL: row?.kL ?? 1 };
  const base = {
    check: 'master' as const, subject: 'colour', standing: book.standing.master, unit: '', formula: formulaLabel(formula), lights: [],
    basis: target?.colourLimit === undefined ? row?.bases?.masterColourLimit ?? row?.basis ?? '' : 'agreed for this part in the cabin',
    cautions: cautionsOf(context, basis),
  };
  const side = colourSideOf(context, basis);
  if (basis.source.surface === 'patterned') {
    return { ...base, verdict: 'not applicable', simple: 'not applicable', sentence: `${side.name}: a patterned surface is judged by eye against its boundary samples.` };
  }
  if (master === undefined || limit === undefined) {
    return { ...base, verdict: 'no data', simple: 'no data', cause: 'missing data', sentence: `${side.name}: no master with a limit on record.` };
  }
  const required = book.lights.filter((light) => light.standing === 'required');
  const { colour } = pairColours(context, colourSideOfMaster(context, basis, master), side, { lights: book.lights });
  if (typeof colour === 'string') {
    return { ...base, verdict: 'no data', simple: 'no data', limit, cause: 'missing data', sentence: `${side.name} against its master: ${colour}.` };
  }
  const question: ColourQuestion = {
    formula, decision: book.decision, stricterDirection: false,
    demands: required.map((light) => ({ light: light.light, standing: 'required', criteria: matchCriteria(formula, limit * light.factor) })),
  };
  const { worst, lights, verdict, simple, within } = evaluateColour(colour, question);
  if (worst === undefined) {
    return { ...base, verdict: 'no data', simple: 'no data', limit, cause: 'missing data', sentence: `${side.name} against its master: no light in common.` };
  }
  const unlike = colour.indicative;
  const wanting = verdict === 'holds' && colour.missing.length > 0;
  const open: CauseOfOpen | undefined = unlike ? { cause: 'conditions' } : wanting ? { cause: 'missing data' } : verdict === 'open' ? causeOfOpenColour(colour, question, book.assumed.maximumSpots) : undefined;
  const shown = unlike || wanting ? 'open' : verdict;
  const phrase = comparisonPhrase({ standard: `its master ${master.id}`, trial: side.name }, worst.light, worst.criterion, formula);
  return {
    ...base, ...open, lights, verdict: shown, simple: unlike || wanting ? 'open' : simple, light: worst.light.light,
    ...printedCriterion(worst.criterion), limitUse: worst.criterion.limitUse,
    uncertainty: worst.criterion.uncertainty, withinProbability: within,
    ...(unlike ? { indicative: true } : {}), ...(colour.missing.length > 0 ? { missingLights: colour.missing } : {}),
    cautions: [...base.cautions, ...colour.cautions],
    sentence: `${phrase}; ${certainty(shown, within, open?.cause, open?.spotsNeeded)}.`,
  };
}

function masterGloss(context: JudgeContext, basis: PartBasis): CheckResult | undefined {
  const { book, names } = context;
  const master = masterOf(context, basis);
  const limit = basis.part.target?.glossLimit ?? basis.materialClass?.masterGlossLimit;
  if (master === undefined || limit === undefined || basis.materialClass?.gloss.kind === 'not applicable') return undefined;
  const references = glossSamples(master.readings, context.index.conditions);
  const own = basis.gloss?.samples ?? [];
  const angle = ([60, 20, 85] as const).find((candidate) => references.some((sample) => sample.angle === candidate) && own.some((sample) => sample.angle === candidate));
  const name = names.get(basis.part.id) ?? basis.part.name;
  const base = {
    check: 'master' as const, subject: 'gloss', standing: book.standing.master, unit: 'GU', lights: [],
    basis: basis.part.target?.glossLimit === undefined ? basis.materialClass?.bases?.masterGlossLimit ?? basis.materialClass?.basis ?? '' : 'agreed for this part in the cabin',
    cautions: cautionsOf(context, basis),
  };
  const reference = references.find((sample) => sample.angle === angle);
  const trial = own.find((sample) => sample.angle === angle);
  if (reference === undefined || trial === undefined || angle === undefined) {
    return { ...base, verdict: 'no data', simple: 'no data', limit, cause: 'missing data', sentence: `${name} against its master: no gloss at an angle that both have.` };
  }
  const assumedSd = basis.materialClass?.glossSd ?? book.assumed.agreementGlossSd;
  const side = (sample: typeof trial) => ({ sd: sample.sd, spots: sample.spots, assumedSd });
  const difference = trial.mean - reference.mean;
  const instrumentOf = (sample: typeof trial) => context.index.instruments.get(sample.instruments[0] ?? '');
  const agreement = (sample: typeof trial): number => instrumentOf(sample)?.agreement?.glossSd ?? book.assumed.agreementGlossSd;
  const days = (readings: readonly Reading[]) => measuredDays(readings.filter((reading) => reading.quantity === 'gloss'));
  const correlation = instrumentCorrelation(
    { instrument: instrumentOf(reference), ...days(master.readings) }, basis.gloss?.measured ?? { instrument: undefined }, { likeSurfaces: true }, book.assumed.correlation,
  );
  const uncertainty = Math.sqrt(scalarDifferenceVariance(
    side(reference), side(trial), book.assumed.priorReadings, scalarInstrumentVariance(agreement(reference), agreement(trial), correlation),
  ));
  const comparison = withinBand(difference, uncertainty, limit);
  const { verdict, simple } = decided(book.decision, comparison);
  const value = Math.abs(difference);
  return {
    ...base, criterion: `${angle}°`, verdict, simple, value, limit, limitUse: value / limit, uncertainty, withinProbability: comparison.within,
    ...(verdict === 'open' ? { cause: 'on the limit' as const } : {}),
    sentence: `${name} is ${figure(value)} GU from its master ${master.id} at ${angle}°, ${figure(limit)} GU allowed (${percentOfLimit(value / limit)} of the limit); `
      + `${certainty(verdict, comparison.within, verdict === 'open' ? 'on the limit' : undefined, undefined)}.`,
  };
}
