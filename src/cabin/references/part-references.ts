import type { Cabin, Part, Source } from '../cabin.ts';
import { memberPath } from '../json-path.ts';
import type { Draft, Faults } from '../schema/index.ts';
import type { ReferenceIndex } from './reference-index.ts';
import { checkKnown, entriesOf } from './reference-index.ts';

/** Zones, suppliers, sources, targets and the specimens that stand for a source are known, and shares of the volume do not pass 1. */
export function checkParts(cabin: Draft<Cabin>, index: ReferenceIndex, faults: Faults): void {
  for (const [at, part] of entriesOf(cabin.parts)) {
    const path = `parts[${at}]`;
    checkKnown(faults, 'unknown-zone', part.zone, index.zones, 'the id of a zone', `${path}.zone`);
    const sources = entriesOf(part.sources);
    const ids = new Set(sources.flatMap(([, source]) => (source.id === undefined ? [] : [source.id])));
    checkKnown(faults, 'unknown-source', part.source, ids, 'the id of a source of this part', `${path}.source`);
    checkMaster(part.target?.master, index, `${path}.target.master`, faults);
    checkShares(sources, path, faults);
    for (const [sourceAt, source] of sources) {
      const sourcePath = `${path}.sources[${sourceAt}]`;
      checkKnown(faults, 'unknown-supplier', source.supplier, index.suppliers, 'the id of a supplier', `${sourcePath}.supplier`);
      checkStandsBy(source, sourcePath, index, faults);
    }
  }
}

/** A master is a specimen of kind `master`, recorded in the cabin or under a source. */
export function checkMaster(master: string | undefined, index: ReferenceIndex, path: string, faults: Faults): boolean {
  if (master === undefined) return false;
  const specimen = index.specimenById.get(master);
  if (specimen !== undefined && specimen.kind !== 'master') {
    faults.add('not-a-master', {
      expected: 'a specimen of kind "master"', found: `${JSON.stringify(master)} of kind ${JSON.stringify(specimen.kind)}`,
    }, path);
    return false;
  }
  return checkKnown(faults, 'unknown-master', master, index.masters, 'the id of a master', path);
}

function checkShares(sources: readonly [number, Draft<Source>][], path: string, faults: Faults): void {
  const sum = sources.reduce((total, [, source]) => total + (source.share ?? 0), 0);
  if (sum > 1 + 1e-6) {
    faults.add('shares-over-one', { expected: 'shares of the volume that sum to at most 1', found: `a sum of ${Math.round(sum * 1e6) / 1e6}` }, `${path}.sources`);
  }
}

function checkStandsBy(source: Draft<Source>, sourcePath: string, index: ReferenceIndex, faults: Faults): void {
  const own = new Map(entriesOf(source.specimens).flatMap(([, specimen]) => (specimen.id === undefined ? [] : [[specimen.id, specimen] as const])));
  for (const [stage, id] of Object.entries(source.standsBy ?? {})) {
    if (id === undefined) continue;
    const path = memberPath(`${sourcePath}.standsBy`, stage);
    const specimen = own.get(id);
    if (specimen === undefined) {
      const elsewhere = index.specimenById.has(id);
      if (elsewhere) faults.add('unknown-specimen', {
        expected: 'a specimen of this source', found: `${JSON.stringify(id)} of another source`,
      }, path);
      else checkKnown(faults, 'unknown-specimen', id, own, 'the id of a specimen of this source', path);
      continue;
    }
    if (specimen.kind === 'master' || specimen.kind === 'boundary sample') {
      faults.add('stands-by-kind', {
        expected: 'a plaque, tool part or series part', found: `a ${specimen.kind}`,
        hint: 'Masters and boundary samples never stand for a source.',
      }, path);
    }
    const actual = specimen.exposure?.stage ?? 'new';
    if (actual !== stage) {
      faults.add('stands-by-stage', {
        expected: `a specimen at the stage ${JSON.stringify(stage)}`, found: `one at the stage ${JSON.stringify(actual)}`,
      }, path);
    }
  }
}

/** Whether a part has a source of thread: its outline may be an open line. */
export const isThread = (part: Draft<Part>): boolean => entriesOf(part.sources).some(([, source]) => source.material === 'thread');
