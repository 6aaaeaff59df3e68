import type { Cabin } from '../cabin/cabin.ts';
import type { PublishedCheck } from '../colour/index.ts';
import type { Ageing } from '../harmony/compare/index.ts';
import type { JudgedCabin, JudgeOptions } from '../harmony/judge.ts';
import type { RuleBook } from '../rules/rule-book.ts';
import type { ReportInput } from './model.ts';
import type { InputFile } from './model/report-model.ts';
import { agedStages, ageingOf, compareCabins, compareStages } from '../harmony/compare/index.ts';
import { judgeCabin } from '../harmony/judge.ts';
import { cabinSeries, hasLots } from '../series/index.ts';
import { comparedSources } from './model/compared-sources.ts';
import { proposedChanges } from './model/proposed-changes.ts';

export interface ReportAsked extends JudgeOptions {
  readonly files: readonly InputFile[];
  readonly validation: readonly PublishedCheck[];
  /** What the cabin is compared with: another cabin, another stage, or both. */
  readonly against?: { readonly cabin?: Cabin; readonly stage?: string };
}

/**
 * Judges a cabin and all that its report sets beside it: the cabin or stage that it is compared with, by the same rule book and on the same
 * day, every exposure that specimens of it were brought to, every source that a part may have, every change that was proposed and the lots of its parts.
 */
export async function prepareReport(cabin: Cabin, ruleBook: RuleBook, { files, validation, against, ...options }: ReportAsked): Promise<ReportInput> {
  const judged = judgeCabin(cabin, ruleBook, options);
  const { judgement } = judged;
  const series = hasLots(cabin) ? await cabinSeries(cabin, ruleBook, { stage: judgement.stage, asOf: judgement.asOf, mostPairsOfLots }) : undefined;
  const input: ReportInput = {
    cabin, ruleBook, judgement, files, validation, ageing: ageingStages(judged, ruleBook), sources: comparedSources(judged), proposals: proposedChanges(judged),
    ...(series === undefined || series.parts.length === 0 ? {} : { series }),
  };
  if (against === undefined) return input;
  const other = against.cabin ?? cabin;
  const before = judgeCabin(other, ruleBook, { stage: against.stage ?? judgement.stage, asOf: options.asOf ?? other.asOf });
  return { ...input, comparison: against.cabin === undefined ? compareStages(before, judged) : compareCabins({ cabin: other, judgement: before.judgement }, { cabin, judgement }) };
}

/** So that a report of a large series is written in seconds; the verb `series` and the view look at all of them. Assumption, no source. */
const mostPairsOfLots = 6000;

function ageingStages(judged: JudgedCabin, ruleBook: RuleBook): readonly Ageing[] {
  const { cabin } = judged.context;
  const { stage, asOf } = judged.judgement;
  const at = (other: string): JudgedCabin => (other === stage ? judged : judgeCabin(cabin, ruleBook, { stage: other, asOf }));
  const stages = agedStages(cabin).filter((other) => stage === 'new' || other === stage);
  return stages.map((other) => ageingOf(at('new'), at(other)));
}
