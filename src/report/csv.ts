import type { CheckResult } from '../harmony/judgement.ts';
import type { ReportInput } from './model.ts';
import type { ReportModel } from './model/report-model.ts';
import { reportModel } from './model.ts';

type Cell = string | number | boolean | undefined;

const columns = [
  'row', 'id', 'standard', 'trial', 'jointVerdict', 'totalProbability', 'check', 'subject', 'standing', 'verdict', 'accepted', 'acceptedUntil', 'light', 'observer', 'formula', 'criterion', 'unit',
  'value', 'least', 'limit', 'limitUse', 'uncertainty', 'withinProbability', 'dL', 'da', 'db', 'dC', 'dH', 'cause', 'spotsNeeded', 'sentence', 'basis',
] as const;
type Row = Partial<Record<(typeof columns)[number], Cell>>;

/**
 * Every check of every joint and part, every light of every check and every run as rows of one table, RFC 4180.
 * `row` says which: `joint check`, `joint light`, `joint criterion`, the same of a `part`, `run`. Numbers in full double precision, decimal point.
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
  return [
    ...model.joints.flatMap(({ id, names, result }) =>
      checks('joint', { id, standard: names[0], trial: names[1], jointVerdict: result.verdict, totalProbability: result.totalProbability }, result.checks)),
    ...model.parts.flatMap((part) => checks('part', { id: part.id, trial: part.name }, part.checks)),
    ...model.runs.map((run): Row => ({
      row: 'run', id: run.id ?? run.parts.join(' > '), verdict: run.verdict, light: run.light, formula: run.formula, criterion: run.criterion, value: run.value, limit: run.limit,
      limitUse: run.limitUse, uncertainty: run.uncertainty, withinProbability: run.withinProbability, cause: run.cause, spotsNeeded: run.spotsNeeded, sentence: run.sentence,
    })),
  ];
}

/**
 * One cell: quoted where it must be. Text that a spreadsheet would run as a formula (beginning with
 * `=`, `+`, `-`, `@`, a tab or a line end, behind blanks as well) gets an apostrophe in front; numbers are left as they are.
 */
export function csvCell(value: Cell): string {
  if (value === undefined) return '';
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '';
  if (typeof value === 'boolean') return String(value);
  const inert = /^[\s\u00a0\ufeff]*[=+\-@\uff1d\uff0b\uff0d\uff20]|^[\t\r\n]/.test(value) ? `'${value}` : value;
  return /[",\r\n;\t]/.test(inert) || inert !== inert.trim() ? `"${inert.replaceAll('"', '""')}"` : inert;
}
