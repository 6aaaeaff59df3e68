import { formulaLabel } from '../../colour/formula-label.ts';
import type { DifferenceFormula } from '../../colour/difference-formula.ts';
import type { ReadingGroup } from '../../readings/reading-groups.ts';
import { matchCriteria } from '../../readings/stacked-event.ts';
import { colourSideOf, colourSideOfMaster } from '../colour-side.ts';
import { causeOfOpenColour, evaluateColour, printedCriterion } from '../colour-evaluation.ts';
import type { ColourQuestion } from '../colour-evaluation.ts';
import type { ColourPair } from '../colour-pair.ts';
import { pairColours } from '../colour-pairing.ts';
import { comparisonPhrase } from '../colour-wording.ts';
import type { JudgeContext } from '../judge-context.ts';
import type { CheckResult } from '../judgement.ts';
import type { CauseOfOpen } from '../open-cause.ts';
import { causeAgainstMaster } from '../open-cause.ts';
import type { PartBasis } from '../part-basis.ts';
import { certainty } from '../wording.ts';
import { masterCautions, masterOf, masterPhrase } from './held-to.ts';

function masterFormula({ book }: JudgeContext, { materialClass }: PartBasis): DifferenceFormula {
  return book.formula === 'cmc'
    ? { name: 'cmc', l: book.cmc?.l ?? 2, c: book.cmc?.c ?? 1 }
    : { name: book.formula, kL: materialClass?.kL ?? 1 };
}

/** Limit on the colour of a part against its master: the part's own, else that of its material's class. */
const limitOf = ({ part, materialClass }: PartBasis): number | undefined => part.target?.colourLimit ?? materialClass?.masterColourLimit;

/** A part and its master made ready to be compared, with the question put to them; a sentence where a side has no data. */
export interface MasterColourQuestion {
  readonly pair: ColourPair | string;
  readonly question: ColourQuestion;
  /** The group that each was read in, the master's first. */
  readonly groups?: readonly [ReadingGroup, ReadingGroup];
}

/** The colour question of a part against its master; undefined where it has no master or no limit, or is a print. */
export function masterColourQuestion(context: JudgeContext, basis: PartBasis): MasterColourQuestion | undefined {
  const { book } = context;
  const master = masterOf(context, basis);
  const limit = limitOf(basis);
  if (master === undefined || limit === undefined || basis.source.surface === 'patterned') return undefined;
  const formula = masterFormula(context, basis);
  const { colour, groups } = pairColours(context, colourSideOfMaster(context, basis, master), colourSideOf(context, basis), { lights: book.lights });
  return {
    pair: colour, ...(groups === undefined ? {} : { groups }),
    question: {
      formula, decision: book.decision, stricterDirection: false,
      demands: book.lights.filter((light) => light.standing === 'required')
        .map((light) => ({ light: light.light, standing: 'required', criteria: matchCriteria(formula, limit * light.factor) })),
    },
  };
}

/** Colour of a part against its recorded master. */
export function masterColour(context: JudgeContext, basis: PartBasis): CheckResult {
  const { book } = context;
  const row = basis.materialClass;
  const target = basis.part.target;
  const master = masterOf(context, basis);
  const limit = limitOf(basis);
  const formula = masterFormula(context, basis);
  const base = {
    check: 'master' as const, subject: 'colour', standing: book.standing.master, unit: '', formula: formulaLabel(formula), lights: [],
    basis: target?.colourLimit === undefined ? row?.bases?.masterColourLimit ?? row?.basis ?? '' : 'agreed for this part in the cabin',
    cautions: masterCautions(context, basis),
  };
  const name = context.names.get(basis.part.id) ?? basis.part.name;
  if (basis.source.surface === 'patterned') {
    return { ...base, verdict: 'not applicable', simple: 'not applicable', sentence: `${name}: a patterned surface is judged by eye against its boundary samples.` };
  }
  const asked = masterColourQuestion(context, basis);
  if (master === undefined || limit === undefined || asked === undefined) {
    return { ...base, verdict: 'no data', simple: 'no data', cause: 'missing data', sentence: `${name}: no master with a limit on record.` };
  }
  const { pair, question } = asked;
  const none = { ...base, verdict: 'no data' as const, simple: 'no data' as const, limit, cause: 'missing data' as const };
  if (typeof pair === 'string') return { ...none, sentence: `${name} against ${masterPhrase(master)}: ${pair}.` };
  const { worst, lights, verdict, simple, within } = evaluateColour(pair, question);
  if (worst === undefined) return { ...none, sentence: `${name} against ${masterPhrase(master)}: no light in common.` };
  const unlike = pair.indicative;
  const wanting = verdict === 'holds' && pair.missing.length > 0;
  const open: ReturnType<typeof causeAgainstMaster> | CauseOfOpen | undefined = unlike ? { cause: 'conditions' } : wanting ? { cause: 'missing data' }
    : verdict === 'open' ? causeAgainstMaster((grows) => causeOfOpenColour(pair, question, book.assumed.maximumSpots, grows)) : undefined;
  const shown = unlike || wanting ? 'open' : verdict;
  const phrase = comparisonPhrase({ standard: masterPhrase(master), trial: name }, worst.light, worst.criterion, formula);
  return {
    ...base, ...open, lights, verdict: shown, simple: unlike || wanting ? 'open' : simple, light: worst.light.light,
    ...printedCriterion(worst.criterion), limitUse: worst.criterion.limitUse,
    uncertainty: worst.criterion.uncertainty, withinProbability: within,
    ...(unlike ? { indicative: true } : {}), ...(pair.missing.length > 0 ? { missingLights: pair.missing } : {}),
    cautions: [...base.cautions, ...pair.cautions],
    sentence: `${phrase}; ${certainty(shown, within, open, 'part')}.`,
  };
}
