import type { Cabin, Specimen } from '../cabin/cabin.ts';
import type { Conditions, Instrument, Reading } from '../readings/reading.ts';
import type { ReadingCollector } from './reading-collector.ts';
import { collectReadings, defined } from './reading-collector.ts';
import type { FoundConditions, FoundData, ReadingRecord, ReadingSet } from './reading-set.ts';

/** Every reading of a cabin, its masters' included, with the lights it carries; ids stand for names. */
export function cabinReadings(cabin: Cabin, about: Pick<ReadingSet, 'file' | 'sha256'> = {}): ReadingSet {
  const collector = collectReadings();
  const context: Context = {
    collector,
    conditions: new Map(cabin.conditions.map((conditions) => [conditions.id, conditions])),
    instruments: new Map(cabin.instruments.map((instrument) => [instrument.id, instrument])),
    row: 0,
  };
  for (const part of cabin.parts) {
    for (const source of part.sources) {
      for (const specimen of source.specimens) addSpecimen(specimen, { part: part.id, source: source.id, supplier: source.supplier }, context);
    }
  }
  for (const master of cabin.masters ?? []) addSpecimen(master, {}, context);
  for (const light of cabin.lights ?? []) collector.addLight(light);
  return collector.finish({ reader: 'json', ...about });
}

interface Context {
  readonly collector: ReadingCollector;
  readonly conditions: ReadonlyMap<string, Conditions>;
  readonly instruments: ReadonlyMap<string, Instrument>;
  row: number;
}

function addSpecimen(specimen: Specimen, owner: Pick<ReadingRecord, 'part' | 'source' | 'supplier'>, context: Context): void {
  for (const reading of specimen.readings) {
    context.row += 1;
    context.collector.add(defined({
      ...owner, specimen: specimen.id, kind: specimen.kind, lot: specimen.lot?.id, stage: specimen.exposure?.stage,
      spot: reading.spot, colour: reading.colour, rotationDeg: reading.rotationDeg, averagedFrom: reading.averagedFrom, measuredAt: reading.measuredAt,
      conditions: context.collector.conditions(foundConditions(reading.conditions, context)), data: foundData(reading), row: context.row,
    }));
  }
}

function foundConditions(id: string, { conditions, instruments }: Context): FoundConditions {
  const own = conditions.get(id);
  const instrument = instruments.get(own?.instrument ?? '');
  return defined({
    instrument: instrument?.name ?? own?.instrument, serial: instrument?.serial, calibratedOn: instrument?.calibratedOn,
    geometry: own?.geometry, apertureMm: own?.apertureMm, uv: own?.uv, aspecularDeg: own?.aspecularDeg, backing: own?.backing, temperatureC: own?.temperatureC,
  });
}

function foundData(reading: Reading): FoundData {
  switch (reading.quantity) {
    case 'spectrum': return defined({ quantity: 'spectrum', startNm: reading.startNm, stepNm: reading.stepNm, values: reading.values, bandpassCorrected: reading.bandpassCorrected });
    case 'cielab': return { quantity: 'cielab', lab: reading.lab, light: reading.light, observer: reading.observer };
    case 'difference': return { quantity: 'difference', difference: reading.difference, light: reading.light, observer: reading.observer, master: reading.master };
    case 'gloss': return defined({ quantity: 'gloss', angle: reading.angle, gloss: reading.gloss, haze: reading.haze, direction: reading.direction });
    case 'texture': return defined({ quantity: 'texture', parameters: reading.parameters, visible: reading.visible });
  }
}
