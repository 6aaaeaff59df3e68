import type { Cabin } from '../cabin/cabin.ts';
import type { ApportionPlan } from '../plan/index.ts';
import { csvCell } from './csv.ts';

const columns = [
  'supplier', 'part', 'id', 'partNumber', 'formula', 'radius', 'about', 'L', 'a', 'b', 'halfAxis1', 'halfAxis2', 'halfAxis3', 'glossBand', 'metric', 'heldBy', 'rule',
] as const;

/**
 * The tolerances of one supplier, or of all, as a table by RFC 4180: radius in units of the formula about the target (CIELAB under D65), half
 * axes in CIELAB units, longest first, gloss band plus or minus in GU, the metric row by row. Empty where no joint limits a part.
 */
export function toleranceCsv(cabin: Cabin, plan: ApportionPlan, supplier?: string): string {
  const parts = new Map(cabin.parts.map((part) => [part.id, part]));
  const rows = plan.parts.filter((one) => supplier === undefined || one.supplier === supplier).map((one) => [
    cabin.suppliers.find(({ id }) => id === one.supplier)?.name ?? one.supplier, parts.get(one.id)?.name ?? one.id, one.id, parts.get(one.id)?.partNumber, one.formula, one.radius, one.about,
    ...(one.target ?? [undefined, undefined, undefined]), one.halfAxes[0], one.halfAxes[1], one.halfAxes[2], one.glossBand, one.radius === undefined ? undefined : one.metric?.join(' '), one.heldBy.join(' '), plan.rule,
  ]);
  return [columns, ...rows].map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('');
}
