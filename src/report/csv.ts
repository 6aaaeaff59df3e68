import type { Ageing, CabinComparison } from '../harmony/compare/index.ts';
import type { CheckResult, PartAppearance } from '../harmony/judgement.ts';
import type { CsvValue } from '../formats/csv-cell.ts';
import type { ReportInput } from './model.ts';
import type { ReportModel } from './model/report-model.ts';
import { csvCell } from '../formats/csv-cell.ts';
import { reportModel } from './model.ts';
import { changeWord } from './sections/change-table.ts';
import { seriesColumns, seriesRows } from './series-rows.ts';

export { csvCell };

const columns = [
  'row', 'id', 'standard', 'trial', 'jointVerdict', 'totalProbability', 'check', 'subject', 'standing', 'verdict', 'accepted', 'acceptedUntil', 'light', 'observer', 'formula', 'criterion', 'unit',
  'value', 'least', 'limit', 'limitUse', 'uncertainty', 'withinProbability', 'dL', 'da', 'db', 'dC', 'dH', 'cause', 'spotsNeeded', 'sentence', 'basis',
  'change', 'beyondUncertainty', 'jointVerdictBefore', 'verdictBefore', 'lightBefore', 'valueBefore', 'limitBefore', 'limitUseBefore', 'valueChange', 'stageBefore', 'stage', 'grade', 'gradeValue',
  'source', 'supplier', 'chosen', 'L', 'a', 'b', 'gloss20', 'gloss60', 'gloss85', 'saUm', 'salMm', 'str', 'clashes', 'open', 'holds', 'piecePrice', 'currency', 'leadWeeks', ...seriesColumns,
] as const;
type Row = Partial<Record<(typeof columns)[number], CsvValue>>;

/**
 * Every check of every joint and part, every light of every check and every run as rows of one table, RFC 4180.
 * `row` says which: `joint check`, `joint light`, `joint criterion`, the same of a `part`, `run`, `compared joint` and `compared check` (before and
 * now), `aged part`, `aged joint` and `aged check`, `part` for what it looks like under D65, `source` the same of each source of a part that
 * has several, `next step` for who is to act on a clash, `proposal`, and for parts with lots `lot`, `trend`, `forecast` and `set`. Numbers in full double precision, decimal point.
 */
export function reportCsv(input: ReportInput): string {
  const model = reportModel(input);
  return [columns, ...rowsOf(model).map((row) => columns.map((column) => row[column]))]
    .map((cells) => `${cells.map(csvCell).join(',')}\r\n`)
    .join('');
}

function rowsOf(model: ReportModel): Row[] {
  const checks = (kind: string, base: Row, results: readonly CheckResult[]): Row[] => results.flatMap((check) => {
    const { check: name, subject, standing, verdict, formula, unit, basis } = check;
    const common: Row = { ...base, check: name, subject, standing, formula, unit, observer: model.observer };
    return [
      {
        ...common, row: `${kind} check`, verdict, criterion: check.criterion, accepted: check.accepted, acceptedUntil: check.acceptedUntil, light: check.light, value: check.value, limit: check.limit,
        limitUse: check.limitUse, uncertainty: check.uncertainty, withinProbability: check.withinProbability, cause: check.cause, spotsNeeded: check.spotsNeeded, sentence: check.sentence, basis,
      },
      ...check.lights.map((light): Row => ({
        ...common, row: `${kind} light`, standing: light.standing, observer: light.observer, light: light.light, value: light.value, limit: light.limit, limitUse: light.limitUse,
        uncertainty: light.uncertainty, withinProbability: light.withinProbability, ...light.difference,
      })),
      ...check.lights.flatMap((light) => light.criteria.map((criterion): Row => ({
        ...common, row: `${kind} criterion`, standing: light.standing, observer: light.observer, light: light.light, criterion: criterion.name, value: criterion.value,
        least: criterion.min, limit: criterion.max, limitUse: criterion.limitUse, uncertainty: criterion.uncertainty, withinProbability: criterion.withinProbability,
      }))),
    ];
  });
  const names = new Map(model.parts.map((part) => [part.id, part.name]));
  return [
    ...model.joints.flatMap(({ id, names: [standard, trial], result }) =>
      checks('joint', { id, standard, trial, jointVerdict: result.verdict, totalProbability: result.totalProbability }, result.checks)),
    ...model.parts.flatMap((part) => checks('part', { id: part.id, trial: part.name }, part.checks)),
    ...model.parts.map(({ id, name, source, supplier, appearance, sample }): Row => ({
      row: 'part', id, trial: name, source, supplier, light: sample?.light, observer: sample?.observer, L: sample?.lab[0], a: sample?.lab[1], b: sample?.lab[2], ...surfaceCells(appearance),
    })),
    ...model.sources.flatMap(({ part, name, sources }) => sources.map(({ source, supplier, chosen, status, appearance, sample, clashes, accepted, open, holds, worstUse, piecePrice, currency, leadWeeks }): Row => ({
      row: 'source', id: part, trial: name, source, supplier, chosen, subject: status, light: sample?.light, observer: sample?.observer, L: sample?.lab[0], a: sample?.lab[1], b: sample?.lab[2], ...surfaceCells(appearance), clashes, accepted, open, holds, limitUse: worstUse, piecePrice, currency, leadWeeks,
    }))),
    ...model.nextSteps.flatMap(({ joint, act, sentences }) => act.map(({ part, supplier, because }): Row => ({ row: 'next step', id: joint, subject: part, trial: names.get(part), supplier, cause: because, sentence: sentences.join(' ') }))),
    ...model.proposals.map(({ joint, proposal, verdict, limitUse, sentence }): Row => ({ row: 'proposal', id: joint, subject: proposal.id, verdict, limitUse, sentence })),
    ...model.runs.map((run): Row => ({
      row: 'run', id: run.id ?? run.parts.join(' > '), verdict: run.verdict, light: run.light, formula: run.formula, criterion: run.criterion, value: run.value, limit: run.limit,
      limitUse: run.limitUse, uncertainty: run.uncertainty, withinProbability: run.withinProbability, cause: run.cause, spotsNeeded: run.spotsNeeded, sentence: run.sentence,
    })),
    ...(model.comparison === undefined ? [] : comparedRows('compared', model.comparison)),
    ...model.ageing.flatMap((stage) => [...agedRows(stage), ...comparedRows('aged', stage.comparison)]),
    ...seriesRows(model.series, model.observer, (id) => names.get(id) ?? id),
  ];
}

/** Gloss by angle and texture, the cells that there are. */
function surfaceCells(appearance: PartAppearance | undefined): Row {
  const gloss = (angle: number): number | undefined => appearance?.gloss.find((one) => one.angle === angle)?.mean;
  const { saUm, salMm, str } = appearance?.texture ?? {};
  return { gloss20: gloss(20), gloss60: gloss(60), gloss85: gloss(85), saUm, salMm, str };
}

/** Joints that are not as they were, and each of their checks. */
function comparedRows(kind: string, { before, after, joints }: CabinComparison): Row[] {
  const stages = { stageBefore: before.stage, stage: after.stage };
  return joints.filter((joint) => joint.kind !== 'same').flatMap((joint) => {
    const base: Row = { ...stages, id: joint.id, standard: joint.names[0], trial: joint.names[1], change: changeWord(joint), jointVerdict: joint.after?.verdict, jointVerdictBefore: joint.before?.verdict };
    return [
      {
        ...base, row: `${kind} joint`, accepted: joint.after?.accepted, limitUse: joint.after?.limitUse, limitUseBefore: joint.before?.limitUse, valueChange: joint.limitUseChange,
        totalProbability: joint.after?.totalProbability, sentence: joint.sentence,
      },
      ...joint.checks.map(({ check, before: then, after: now, change, beyondUncertainty }): Row => ({
        ...base, beyondUncertainty, row: `${kind} check`, check, verdict: now?.verdict, verdictBefore: then?.verdict, light: now?.light, lightBefore: then?.light, formula: now?.formula ?? then?.formula,
        criterion: now?.criterion, unit: now?.unit ?? then?.unit, value: now?.value, valueBefore: then?.value, limit: now?.limit, limitBefore: then?.limit, limitUse: now?.limitUse,
        limitUseBefore: then?.limitUse, valueChange: change, uncertainty: now?.uncertainty, withinProbability: now?.withinProbability, cause: now?.cause,
      })),
    ];
  });
}

const agedRows = (stage: Ageing): Row[] => stage.parts.flatMap((part): Row[] => {
  const base: Row = { id: part.part, trial: part.name, stageBefore: stage.from, stage: stage.to, row: 'aged part' };
  return [
    { ...base, check: 'colour', light: 'D65', observer: 10, formula: 'CIE 1976', value: part.cie76, ...part.difference, grade: part.greyScale.grade, gradeValue: part.greyScale.value, sentence: part.sentence, basis: stage.wanted.basis },
    ...part.gloss.map(({ angle, from, to, change }): Row => ({ ...base, check: 'gloss', subject: `${angle}°`, unit: 'GU', value: to, valueBefore: from, valueChange: change })),
    ...(part.texture === undefined ? [] : [{ ...base, check: 'texture', criterion: 'Sa', unit: 'µm', value: part.texture.to, valueBefore: part.texture.from, valueChange: part.texture.change }]),
  ];
});
