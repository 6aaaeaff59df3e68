import { partNames } from '../../harmony/names.ts';
import type { PlanModel } from '../model/plan-model.ts';
import type { SetDifference } from './chosen-set.ts';

/** Names of parts, sources and suppliers as sentences call them. */
export interface PlanNames {
  readonly part: (id: string) => string;
  /** "Knee panel of Orvandel Mouldings", with the source's id where the supplier offers several. */
  readonly source: (part: string, source: string) => string;
  readonly supplier: (id: string) => string;
  readonly joint: (id: string) => string;
  readonly money: (amount: number) => string;
}

export function planNames({ cabin, judge, currency }: Pick<PlanModel, 'cabin' | 'judge' | 'currency'>): PlanNames {
  const names = partNames(cabin.parts);
  const part = (id: string): string => names.get(id) ?? id;
  const supplier = (id: string): string => judge.context.index.suppliers.get(id)?.name ?? id;
  const source = (id: string, wanted: string): string => {
    const sources = judge.context.index.parts.get(id)?.sources ?? [];
    const own = sources.find((each) => each.id === wanted);
    if (own === undefined) return `${part(id)} of ${wanted}`;
    return sources.some((each) => each !== own && each.supplier === own.supplier) ? `${part(id)} of ${supplier(own.supplier)} (${wanted})` : `${part(id)} of ${supplier(own.supplier)}`;
  };
  const joint = (id: string): string => {
    const own = judge.context.index.joints.get(id);
    return own === undefined ? id : `${part(own.parts[0])} and ${part(own.parts[1])}`;
  };
  return { part, supplier, source, joint, money: (amount) => [grouped(amount), currency].filter(Boolean).join('\u00a0') };
}

/** A whole number with its thousands set apart by spaces that do not break. */
export function grouped(amount: number): string {
  const digits = String(Math.abs(Math.round(amount)));
  const parts: string[] = [];
  for (let end = digits.length; end > 0; end -= 3) parts.unshift(digits.slice(Math.max(0, end - 3), end));
  return `${Math.round(amount) < 0 ? '-' : ''}${parts.join('\u00a0')}`;
}

const rounded = (value: number): string => String(Number(value.toFixed(2)));

/** "1.2 more clashes, 0.3 less over-use and 4 500 EUR more": what differs, the first thing that counts first; empty where nothing does. */
export function differenceInWords({ clashes, overUse, cost, leadWeeks }: SetDifference, names: PlanNames): string {
  const said: string[] = [];
  if (Math.abs(clashes) >= 0.005) said.push(`${rounded(Math.abs(clashes))} ${clashes > 0 ? 'more' : 'fewer'} ${Math.abs(clashes) === 1 ? 'clash' : 'clashes'}${Number.isInteger(Number(clashes.toFixed(2))) ? '' : ' to be expected'}`);
  if (Math.abs(overUse) >= 0.005) said.push(`${rounded(Math.abs(overUse))} ${overUse > 0 ? 'more' : 'less'} over-use`);
  if (Math.abs(cost) >= 0.5) said.push(`${names.money(Math.abs(cost))} ${cost > 0 ? 'more' : 'less'}`);
  if (leadWeeks !== 0) said.push(`${Math.abs(leadWeeks)} ${Math.abs(leadWeeks) === 1 ? 'week' : 'weeks'} ${leadWeeks > 0 ? 'longer' : 'sooner'}`);
  return said.length < 2 ? said.join('') : `${said.slice(0, -1).join(', ')} and ${said[said.length - 1]}`;
}
