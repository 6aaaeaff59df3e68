import type { Cabin } from '../cabin.ts';
import type { Reading } from '../../readings/reading.ts';
import type { Draft, Faults } from '../schema/index.ts';
import { wavelengthFault } from '../shapes/wavelengths.ts';
import { checkMaster } from './part-references.ts';
import type { PlacedSpecimen, ReferenceIndex } from './reference-index.ts';
import { checkKnown, entriesOf, placedTiles } from './reference-index.ts';

/** Readings name known conditions, files, lights and masters, and spectra that are averaged together have the same wavelengths. */
export function checkReadings(cabin: Draft<Cabin>, index: ReferenceIndex, faults: Faults): void {
  const withoutGeometry = new Set<string>();
  for (const placed of [...index.specimens, ...placedTiles(cabin)]) {
    for (const [at, reading] of entriesOf(placed.specimen.readings)) {
      const path = `${placed.path}.readings[${at}]`;
      if (checkKnown(faults, 'unknown-conditions', reading.conditions, index.conditions, 'the id of conditions', `${path}.conditions`)) {
        checkInstrumentKind(reading, index, path, faults);
        const isColour = reading.quantity === 'spectrum' || reading.quantity === 'cielab' || reading.quantity === 'difference';
        const name = reading.conditions ?? '';
        if (isColour && index.conditions.get(name)?.geometry === undefined) withoutGeometry.add(name);
      }
      checkKnown(faults, 'unknown-file', reading.file, index.files, 'the id of a file', `${path}.file`);
      if (reading.quantity === 'cielab' || reading.quantity === 'difference') {
        checkKnown(faults, 'unknown-light', reading.light, index.lights, 'the name of a light', `${path}.light`);
      }
      if (reading.quantity === 'difference' && checkMaster(reading.master, index, `${path}.master`, faults)) {
        checkAbsolute(reading.master ?? '', placed, index, `${path}.master`, faults);
      }
    }
    checkEqualSpectra(placed, faults);
  }
  for (const [at, conditions] of entriesOf(cabin.conditions)) {
    if (conditions.id === undefined || !withoutGeometry.delete(conditions.id)) continue;
    faults.add('no-geometry', {
      severity: 'warning', expected: 'a geometry, since colour was read under these conditions', found: 'nothing',
      hint: 'Without it these readings may not be compared with any others.',
    }, `conditions[${at}]`);
  }
}

const kindsFor: Readonly<Record<Reading['quantity'], readonly string[]>> = {
  spectrum: ['spectrophotometer'],
  cielab: ['spectrophotometer', 'colorimeter'],
  difference: ['spectrophotometer', 'colorimeter'],
  gloss: ['glossmeter', 'spectrophotometer'],
  texture: ['areal profiler'],
};

function checkInstrumentKind(reading: Draft<Reading>, index: ReferenceIndex, path: string, faults: Faults): void {
  const conditions = index.conditions.get(reading.conditions ?? '');
  const instrument = index.instruments.get(conditions?.instrument ?? '');
  if (instrument?.kind === undefined || reading.quantity === undefined) return;
  const kinds = kindsFor[reading.quantity];
  if (!kinds.includes(instrument.kind)) {
    faults.add('instrument-kind', {
      severity: 'warning', expected: `a ${kinds.join(' or ')} for ${reading.quantity}`, found: `a ${instrument.kind}`,
    }, `${path}.conditions`);
  }
}

function checkAbsolute(master: string, placed: PlacedSpecimen, index: ReferenceIndex, path: string, faults: Faults): void {
  if (master === placed.specimen.id) {
    faults.add('difference-to-itself', { expected: 'another specimen', found: JSON.stringify(master) }, path);
    return;
  }
  const readings = entriesOf(index.masters.get(master)?.readings);
  if (readings.some(([, reading]) => reading.quantity === 'spectrum' || reading.quantity === 'cielab')) return;
  faults.add('master-without-values', {
    expected: 'a master with spectra or CIELAB readings', found: JSON.stringify(master),
    hint: 'Without absolute values of the master a difference to it gives no colour.',
  }, path);
}

function checkEqualSpectra({ specimen, path }: PlacedSpecimen, faults: Faults): void {
  const first = new Map<string, { text: string; at: number }>();
  for (const [at, reading] of entriesOf(specimen.readings)) {
    if (reading.quantity !== 'spectrum' || reading.values === undefined || reading.conditions === undefined) continue;
    const { startNm = Number.NaN, stepNm = Number.NaN } = reading;
    if (wavelengthFault(startNm, stepNm, reading.values.length) !== undefined) continue;
    const text = `${reading.values.length} values from ${startNm} nm in steps of ${stepNm} nm`;
    const other = first.get(reading.conditions);
    if (other === undefined) first.set(reading.conditions, { text, at });
    else if (other.text !== text) {
      faults.add('unequal-spectra', {
        expected: `${other.text}, as in readings[${other.at}]`, found: text,
        hint: 'Spectra of one specimen under the same conditions are averaged, so their wavelengths must be the same.',
      }, `${path}.readings[${at}].values`);
    }
  }
}
