import type { Cabin, Source } from '../cabin/cabin.ts';
import { sourceOf } from '../cabin/source-of.ts';
import type { ChoicePlan, ChosenSet } from '../plan/index.ts';
import { costLines } from '../plan/model/cost-lines.ts';
import type { CostTerms } from '../plan/model/source-cost.ts';
import { csvCell } from './csv.ts';

const columns = [
  'part', 'id', 'partNumber', 'zone', 'module', 'supplier', 'source', 'material', 'status', 'changed', 'from', 'leadWeeks', 'volume',
  'priceStated', 'freightStated', 'dutyShare', 'currencyStated', 'rate', 'landedPiece', 'pieces', 'tool', 'setup', 'cost', 'currency', 'instead',
] as const;

/**
 * The sources of a chosen set as a list to order by, RFC 4180, a row a part in the document's order: prices as stated and as reckoned, money of one
 * year in the plan's currency, and the sentence on what each part's other sources would do. Set-ups that a supplier asks once stand in rows of their own.
 */
export function pickListCsv(cabin: Cabin, plan: ChoicePlan, set: ChosenSet, terms: CostTerms = {}): string {
  const supplier = (id: string): string => cabin.suppliers.find((one) => one.id === id)?.name ?? id;
  const named = (source: Source): string => `${supplier(source.supplier)} (${source.id})`;
  const rows = cabin.parts.map((part) => {
    const [now, source] = [sourceOf(part), sourceOf(part, set.picks[part.id])];
    const cost = costLines(cabin, source, plan.volume, terms);
    const others = plan.notPicked.filter((one) => one.part === part.id && one.source !== source.id).map(({ sentence }) => sentence);
    return [
      part.name, part.id, part.partNumber, part.zone, part.module, supplier(source.supplier), source.id, source.material, source.status, now.id === source.id ? 'no' : 'yes', now.id === source.id ? undefined : named(now),
      source.leadWeeks, plan.volume, cost.priceStated, source.freightPerPiece, source.dutyShare, source.currency, cost.rate, cost.landedPiece, cost.pieces, cost.tool, cost.setup, cost.total, plan.currency, others.join(' '),
    ];
  });
  const once = set.suppliers.flatMap((id) => {
    const setup = cabin.suppliers.find((one) => one.id === id)?.setupCost ?? 0;
    return setup === 0 ? [] : [columns.map((column) => ({ part: 'set-up of the supplier, once', supplier: supplier(id), setup, cost: setup, currency: plan.currency } as Readonly<Record<string, string | number>>)[column])];
  });
  return [columns, ...rows, ...once].map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join('');
}
