import type { Domains, PickProblem } from './pick-problem.ts';

/** More subsets than this are left to a mixed-integer program. */
export const mostSubsets = 4096;

/** Whether suppliers tie the choices together: a cap on their number, or a set-up that some may be spared. */
export function suppliersMatter(problem: PickProblem, domains: Domains): boolean {
  const { forced, optional } = suppliersInPlay(problem, domains);
  if (problem.maxSuppliers !== undefined && forced.length + optional.length > problem.maxSuppliers) return true;
  return optional.some((supplier) => problem.setups[supplier] > 0);
}

/** Suppliers that every choice needs, and those that some choice does without. */
export function suppliersInPlay(problem: PickProblem, domains: Domains): { readonly forced: readonly number[]; readonly optional: readonly number[] } {
  const seen = new Set<number>();
  const forced = new Set<number>();
  domains.forEach((domain, index) => {
    const lists = domain.map((label) => problem.variables[index].suppliers[label]);
    for (const supplier of lists.flat()) seen.add(supplier);
    for (const supplier of lists[0] ?? []) if (lists.every((list) => list.includes(supplier))) forced.add(supplier);
  });
  const ascending = (a: number, b: number): number => a - b;
  return { forced: [...forced].sort(ascending), optional: [...seen].filter((supplier) => !forced.has(supplier)).sort(ascending) };
}

/**
 * Sets of suppliers that a choice may be made from, larger ones first: every set that holds the forced ones and keeps to the cap.
 * Sets that differ only in suppliers without a set-up are not told apart: only the largest of them that the cap allows are given.
 * Undefined where there are too many.
 */
export function supplierSubsets(problem: PickProblem, domains: Domains): readonly (readonly number[])[] | undefined {
  const { forced, optional } = suppliersInPlay(problem, domains);
  const room = Math.min(optional.length, (problem.maxSuppliers ?? Infinity) - forced.length);
  if (room < 0) return [];
  const free = optional.filter((supplier) => problem.setups[supplier] === 0);
  const costly = optional.filter((supplier) => problem.setups[supplier] > 0);
  const sets: (readonly number[])[] = [];
  for (let taken = Math.min(room, costly.length); taken >= 0; taken--) {
    const rest = Math.min(room - taken, free.length);
    const count = choose(costly.length, taken) * choose(free.length, rest);
    if (sets.length + count > mostSubsets) return undefined;
    for (const paid of combinations(costly, taken)) for (const unpaid of combinations(free, rest)) sets.push([...forced, ...paid, ...unpaid]);
  }
  return sets.sort((a, b) => b.length - a.length);
}

function choose(n: number, k: number): number {
  let count = 1;
  for (let i = 0; i < k; i++) count = (count * (n - i)) / (i + 1);
  return Math.round(count);
}

function combinations(items: readonly number[], size: number): number[][] {
  if (size === 0) return [[]];
  return items.flatMap((item, index) => combinations(items.slice(index + 1), size - 1).map((rest) => [item, ...rest]));
}

/** The alternatives that a set of suppliers can serve; undefined where one variable has none left. */
export function servedBy(problem: PickProblem, domains: Domains, suppliers: readonly number[]): Domains | undefined {
  const allowed = new Set(suppliers);
  const served = domains.map((domain, index) =>
    domain.filter((label) => problem.variables[index].suppliers[label].every((supplier) => allowed.has(supplier))));
  return served.some((domain) => domain.length === 0) ? undefined : served;
}
