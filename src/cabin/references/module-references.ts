import type { Cabin } from '../cabin.ts';
import type { Draft, Faults } from '../schema/index.ts';
import { nearestName } from '../schema/index.ts';
import { entriesOf } from './reference-index.ts';

/** Modules have no register of their own: one face alone is likely misspelt, and faces without a common supplier cannot be bought together. */
export function checkModules(cabin: Draft<Cabin>, faults: Faults): void {
  const modules = new Map<string, { path: string; suppliers: Set<string> }[]>();
  for (const [at, part] of entriesOf(cabin.parts)) {
    if (part.module === undefined) continue;
    const suppliers = new Set(entriesOf(part.sources).flatMap(([, source]) => (source.supplier === undefined ? [] : [source.supplier])));
    modules.set(part.module, [...(modules.get(part.module) ?? []), { path: `parts[${at}].module`, suppliers }]);
  }
  for (const [module, faces] of modules) {
    const [first] = faces;
    if (first === undefined) continue;
    if (faces.length === 1) {
      const nearest = nearestName(module, [...modules.keys()].filter((other) => other !== module));
      faults.add('module-of-one', {
        severity: 'warning', expected: 'a module of two faces or more', found: `${JSON.stringify(module)} with one`,
        ...(nearest === undefined ? {} : { hint: `Did you mean ${JSON.stringify(nearest)}?` }),
      }, first.path);
    } else if (![...first.suppliers].some((supplier) => faces.every((face) => face.suppliers.has(supplier)))) {
      faults.add('module-without-supplier', {
        severity: 'warning', expected: 'a supplier that has a source for every face of the module', found: `none for ${JSON.stringify(module)}`,
      }, first.path);
    }
  }
}
